package foilwright.service.marking;

import java.util.OptionalInt;

/**
 * One measured value beside the planned one. All numbers are in the criterion's unit.
 *
 * @param foil absent for what is counted over the head
 * @param allowed what passes either way
 */
public record Score(
    OptionalInt foil, Criterion criterion, double planned, double measured, double allowed) {

  /** More than 0 where the work is more than planned. */
  public double error() {
    return measured - planned;
  }

  /** Whether the error passes; a value on the limit does. */
  public boolean isWithin() {
    return Math.abs(error()) <= allowed + 1e-9;
  }
}
