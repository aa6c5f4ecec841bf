package foilwright.service.schedule;

import foilwright.units.Minutes;
import java.util.Objects;

/**
 * Why foils cannot be done in one way: in the schedule whose largest excess over a window is least,
 * which foil is first over its time.
 *
 * @param foil its index in working order, from 0
 * @param by how long it would be over its window
 * @param foils how many foils would be over their windows
 * @param most the largest excess of any foil: no schedule has a smaller one
 * @param proven false when the search for a schedule was broken off at its limit
 */
public record OverTime(int foil, Minutes by, int foils, Minutes most, boolean proven) {
  public OverTime {
    Objects.requireNonNull(most);
    if (foil < 0 || foils < 1 || by.compareTo(Minutes.ZERO) <= 0) {
      throw new IllegalArgumentException("foil " + foil + " is not over time by " + by);
    }
  }
}
