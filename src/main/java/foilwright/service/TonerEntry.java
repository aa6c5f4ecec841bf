package foilwright.service;

import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What the house keeps on file of one toner.
 *
 * @param name plain, such as {@code toner, entry 1}
 * @param shades the shades mixed together, with their parts; at least one
 * @param ratio toner to developer by weight
 * @param developerStrength hydrogen peroxide of the developer, 0 to 12 %
 * @param window how long it may stay
 * @param base mixed weight whatever the hair, 0 or more
 * @param perGramOfHair mixed grams for one gram of lightened hair, beside the base; 0 or more
 * @param saturation how far it has taken after some time, times rising; at least one
 */
public record TonerEntry(
    String name,
    List<ShadePart> shades,
    MixRatio ratio,
    Share developerStrength,
    TimeWindow window,
    Mass base,
    double perGramOfHair,
    List<Saturation> saturation) {
  /** Common practice: enough to cover the lengths of the lightened hair at the basin. */
  public static final Mass USUAL_BASE = Mass.ofGrams(20);

  public static final double USUAL_PER_GRAM_OF_HAIR = 1.0;
  public static final Mass MOST_BASE = Mass.ofGrams(500);
  public static final double MOST_PER_GRAM = 20;

  /** Common practice. */
  public static final List<Saturation> USUAL_SATURATION =
      List.of(
          new Saturation(Minutes.ofMinutes(5), "sheer"),
          new Saturation(Minutes.ofMinutes(15), "usual"),
          new Saturation(Minutes.ofMinutes(20), "saturated"));

  /** How far the toner has taken at a time, in words. */
  public record Saturation(Minutes at, String words) {
    public Saturation {
      if (at.compareTo(Minutes.ZERO) < 0 || words.isBlank()) {
        throw new IllegalArgumentException(
            "saturation at " + at + " needs a time of 0 or more and words");
      }
    }
  }

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
    saturation = List.copyOf(saturation);
    Objects.requireNonNull(ratio);
    Objects.requireNonNull(window);
    if (name.isBlank() || shades.isEmpty()) {
      throw new IllegalArgumentException("a toner needs a name and at least one shade");
    }
    if (base.compareTo(Mass.ZERO) < 0
        || base.compareTo(MOST_BASE) > 0
        || !(perGramOfHair >= 0 && perGramOfHair <= MOST_PER_GRAM)) {
      throw new IllegalArgumentException(
          "a toner's base of " + base + " and " + perGramOfHair + " g per gram must be 0 or more");
    }
    if (saturation.isEmpty()) {
      throw new IllegalArgumentException("a toner needs at least one step of saturation");
    }
    for (int i = 1; i < saturation.size(); i++) {
      if (saturation.get(i).at().compareTo(saturation.get(i - 1).at()) <= 0) {
        throw new IllegalArgumentException(
            "saturation must go by rising times: "
                + saturation.get(i - 1).at()
                + ", then "
                + saturation.get(i).at());
      }
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

  /** An entry with the usual amounts and steps of saturation. */
  public TonerEntry(
      String name,
      List<ShadePart> shades,
      MixRatio ratio,
      Share developerStrength,
      TimeWindow window) {
    this(
        name,
        shades,
        ratio,
        developerStrength,
        window,
        USUAL_BASE,
        USUAL_PER_GRAM_OF_HAIR,
        USUAL_SATURATION);
  }

  /** Words for how far it has taken after a time; empty before the first step. */
  public Optional<String> saturationAfter(Minutes time) {
    return saturation.stream()
        .filter(step -> step.at().compareTo(time) <= 0)
        .reduce((first, second) -> second)
        .map(Saturation::words);
  }
}
