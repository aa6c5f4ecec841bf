package foilwright.service.schedule;

import foilwright.service.TimeWindow;
import foilwright.units.Minutes;
import java.util.Objects;

/**
 * One foil as the clocks see it.
 *
 * @param number the foil's number on the map, 1 or more
 * @param slot mix slot, such as {@code A}
 * @param before what the same hands do right before it, such as setting a section or mixing a fresh
 *     bowl; 0 or more
 * @param placing from the parting to the closed foil, more than 0
 * @param removal to take it out, 0 or more
 * @param window least and most exposure
 */
public record FoilTask(
    int number, String slot, Minutes before, Minutes placing, Minutes removal, TimeWindow window) {
  public FoilTask {
    Objects.requireNonNull(slot);
    Objects.requireNonNull(window);
    if (number < 1) {
      throw new IllegalArgumentException("a foil's number starts at 1, not " + number);
    }
    if (before.compareTo(Minutes.ZERO) < 0
        || placing.compareTo(Minutes.ZERO) <= 0
        || removal.compareTo(Minutes.ZERO) < 0) {
      throw new IllegalArgumentException(
          "foil "
              + number
              + ": before "
              + before
              + " and removal "
              + removal
              + " must be 0 or more, placing "
              + placing
              + " more than 0");
    }
  }
}
