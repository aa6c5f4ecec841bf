package foilwright.head;

import foilwright.units.Length;
import java.util.Objects;
import java.util.Optional;

/**
 * What a tape measured, each value optional.
 *
 * @param around the largest circumference, over the brow point and the most prominent point at the
 *     back; a pulled tape bridges hollows
 * @param frontToBack from the front hairline at the centre over the apex to the nape hairline at
 *     the centre
 * @param earToEar from one preauricular point over the apex to the other
 * @param frontHairlineHeight from the brow line up to the front hairline at the centre
 * @param napeDepth from the most prominent point at the back down to the nape hairline at the
 *     centre
 */
public record TapeMeasurements(
    Optional<Length> around,
    Optional<Length> frontToBack,
    Optional<Length> earToEar,
    Optional<Length> frontHairlineHeight,
    Optional<Length> napeDepth) {
  /** No measurement at all: the default head. */
  public static final TapeMeasurements NONE =
      new TapeMeasurements(
          Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

  public TapeMeasurements {
    requirePositive("around", around);
    requirePositive("front to back", frontToBack);
    requirePositive("ear to ear", earToEar);
    requirePositive("front hairline height", frontHairlineHeight);
    requirePositive("nape depth", napeDepth);
  }

  private static void requirePositive(String name, Optional<Length> value) {
    Objects.requireNonNull(value);
    if (value.isPresent() && value.get().compareTo(Length.ZERO) <= 0) {
      throw new IllegalArgumentException(name + " must be more than 0 mm, not " + value.get());
    }
  }

  public TapeMeasurements withAround(Length value) {
    return new TapeMeasurements(
        Optional.of(value), frontToBack, earToEar, frontHairlineHeight, napeDepth);
  }

  public TapeMeasurements withFrontToBack(Length value) {
    return new TapeMeasurements(
        around, Optional.of(value), earToEar, frontHairlineHeight, napeDepth);
  }

  public TapeMeasurements withEarToEar(Length value) {
    return new TapeMeasurements(
        around, frontToBack, Optional.of(value), frontHairlineHeight, napeDepth);
  }

  public TapeMeasurements withFrontHairlineHeight(Length value) {
    return new TapeMeasurements(around, frontToBack, earToEar, Optional.of(value), napeDepth);
  }

  public TapeMeasurements withNapeDepth(Length value) {
    return new TapeMeasurements(
        around, frontToBack, earToEar, frontHairlineHeight, Optional.of(value));
  }
}
