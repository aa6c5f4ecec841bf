package foilwright.service.mix;

import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.util.Objects;

/**
 * What one foil takes out of a bowl, and when.
 *
 * @param number the foil's number on the map, 1 or more
 * @param slot mix slot, such as {@code A}
 * @param mixed weight, 0 or more
 * @param begin when its placing begins: a bowl for it is mixed by then
 * @param end when it is in; not before {@code begin}
 */
public record FoilMix(int number, String slot, Mass mixed, Minutes begin, Minutes end) {
  public FoilMix {
    Objects.requireNonNull(slot);
    if (number < 1
        || mixed.compareTo(Mass.ZERO) < 0
        || begin.compareTo(Minutes.ZERO) < 0
        || end.compareTo(begin) < 0) {
      throw new IllegalArgumentException(
          "foil " + number + " cannot take " + mixed + " from " + begin + " to " + end);
    }
  }
}
