package foilwright.service.schedule;

import foilwright.units.Minutes;
import java.util.Objects;

/**
 * One thing that one pair of hands does without a break.
 *
 * @param work what
 * @param foil which foil it is for, from 0 in working order
 * @param hands which pair of hands, from 0
 * @param start minutes from the moment the hands begin
 * @param end not before {@code start}
 */
public record Action(Work work, int foil, int hands, Minutes start, Minutes end) {
  /** What hands do for a foil. */
  public enum Work {
    /** Setting the section or mixing a fresh bowl, right before placing. */
    BEFORE,
    PLACE,
    REMOVE
  }

  public Action {
    Objects.requireNonNull(work);
    if (foil < 0 || hands < 0 || start.compareTo(Minutes.ZERO) < 0 || end.compareTo(start) < 0) {
      throw new IllegalArgumentException(
          "foil " + foil + " cannot be worked from " + start + " to " + end);
    }
  }
}
