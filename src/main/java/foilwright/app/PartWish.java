package foilwright.app;

import foilwright.anatomy.PartSide;
import foilwright.units.Length;
import java.util.Objects;
import java.util.Optional;

/**
 * Where a part is to be worn in the place of the guest's own.
 *
 * @param fromCentre of a side part, from the centre line along the surface; as the guest wears it
 *     on that side, or as is usual, when absent
 */
public record PartWish(PartSide side, Optional<Length> fromCentre) {
  public PartWish {
    Objects.requireNonNull(side);
  }

  public static PartWish on(PartSide side) {
    return new PartWish(side, Optional.empty());
  }
}
