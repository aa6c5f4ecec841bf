package foilwright.service.marking;

import foilwright.units.Angle;
import foilwright.units.Length;
import java.util.Objects;
import java.util.Optional;

/**
 * What was measured at one foil of practice work; what was not measured is absent.
 *
 * @param foil its number in the plan, from 1
 * @param straight how far its parting wanders from a straight line
 * @param slice thickness of its slice
 * @param background between the slice before and its own
 * @param angle of its parting, 0 level, 90 deg upright
 */
public record Measured(
    int foil,
    Optional<Length> straight,
    Optional<Length> slice,
    Optional<Length> background,
    Optional<Angle> angle) {
  public Measured {
    if (foil < 1) {
      throw new IllegalArgumentException("foils are numbered from 1, not " + foil);
    }
    Objects.requireNonNull(straight);
    Objects.requireNonNull(slice);
    Objects.requireNonNull(background);
    Objects.requireNonNull(angle);
  }

  /** Nothing measured yet. */
  public static Measured at(int foil) {
    return new Measured(
        foil, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** The value of one criterion in its unit; empty where it was not measured at this foil. */
  public Optional<Double> in(Criterion criterion) {
    return switch (criterion) {
      case STRAIGHT -> straight.map(Length::toMillimetres);
      case SLICE -> slice.map(Length::toMillimetres);
      case BACKGROUND -> background.map(Length::toMillimetres);
      case ANGLE -> angle.map(Angle::toDegrees);
      case FOILS_BETWEEN_SIDES -> Optional.empty();
    };
  }

  /** The same with one more value of its own kind. */
  public Measured with(Criterion criterion, String value) {
    return switch (criterion) {
      case STRAIGHT ->
          new Measured(foil, Optional.of(Length.parse(value)), slice, background, angle);
      case SLICE ->
          new Measured(foil, straight, Optional.of(Length.parse(value)), background, angle);
      case BACKGROUND ->
          new Measured(foil, straight, slice, Optional.of(Length.parse(value)), angle);
      case ANGLE ->
          new Measured(foil, straight, slice, background, Optional.of(Angle.parse(value)));
      case FOILS_BETWEEN_SIDES ->
          throw new IllegalArgumentException("foils are counted for a head, not at a foil");
    };
  }
}
