package foilwright.head;

import foilwright.anatomy.PartSide;
import foilwright.units.Length;
import java.util.Objects;

/**
 * Where the part is worn.
 *
 * @param fromCentre distance of a side part from the centre line along the surface, 5 to 60 mm;
 *     without meaning for a centre part or none
 */
public record PartSetting(PartSide side, Length fromCentre) {
  public static final Length USUAL_FROM_CENTRE = Length.ofMillimetres(30);
  public static final Length LEAST_FROM_CENTRE = Length.ofMillimetres(5);
  public static final Length MOST_FROM_CENTRE = Length.ofMillimetres(60);
  public static final PartSetting NONE = of(PartSide.NONE);

  public PartSetting {
    Objects.requireNonNull(side);
    if (fromCentre.compareTo(LEAST_FROM_CENTRE) < 0 || fromCentre.compareTo(MOST_FROM_CENTRE) > 0) {
      throw new IllegalArgumentException(
          "a part at "
              + fromCentre
              + " from the centre line is outside "
              + LEAST_FROM_CENTRE
              + " to "
              + MOST_FROM_CENTRE);
    }
  }

  /** A part at the usual distance from the centre line. */
  public static PartSetting of(PartSide side) {
    return new PartSetting(side, USUAL_FROM_CENTRE);
  }
}
