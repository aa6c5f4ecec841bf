package foilwright.service;

import foilwright.units.Share;
import java.util.List;
import java.util.Objects;

/**
 * What the house keeps on file of one toner.
 *
 * @param name plain, such as {@code toner, entry 1}
 * @param shades the shades mixed together, with their parts; at least one
 * @param ratio toner to developer by weight
 * @param developerStrength hydrogen peroxide of the developer, 0 to 12 %
 * @param window how long it may stay
 */
public record TonerEntry(
    String name,
    List<ShadePart> shades,
    MixRatio ratio,
    Share developerStrength,
    TimeWindow window) {

  /** Parts by weight of one shade, more than 0. */
  public record ShadePart(String shade, double parts) {
    public ShadePart {
      if (shade.isBlank() || !(parts > 0) || !Double.isFinite(parts)) {
        throw new IllegalArgumentException(
            "the shade \"" + shade + "\" needs a name and parts above 0, not " + parts);
      }
    }
  }

  public TonerEntry {
    shades = List.copyOf(shades);
    Objects.requireNonNull(ratio);
    Objects.requireNonNull(window);
    if (name.isBlank() || shades.isEmpty()) {
      throw new IllegalArgumentException("a toner needs a name and at least one shade");
    }
    if (developerStrength.toFraction() < 0
        || developerStrength.toFraction() > ProductEntry.MOST_STRENGTH.toFraction() + 1e-9) {
      throw new IllegalArgumentException(
          "a developer of "
              + developerStrength
              + " is outside 0 % to "
              + ProductEntry.MOST_STRENGTH);
    }
  }
}
