package foilwright.service;

import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.Objects;

/**
 * What the house keeps on file of one product that goes into foils; the maker's sheet decides.
 *
 * @param name plain, such as {@code powder lightener, entry 1}
 * @param kind what it does
 * @param ratio product to developer by weight
 * @param developerStrength hydrogen peroxide of the developer, weight over volume; 0 to 12 %
 * @param window how long it may stay
 * @param bowlLife how long a mixed bowl stays good, more than 0
 * @param film mixed weight that stays on a foil whatever it holds
 * @param perGramOfHair mixed grams taken up by one gram of hair, beside the film
 * @param makersSheetOnFile whether the maker's sheet is on file
 */
public record ProductEntry(
    String name,
    ProductKind kind,
    MixRatio ratio,
    Share developerStrength,
    TimeWindow window,
    Minutes bowlLife,
    Mass film,
    double perGramOfHair,
    boolean makersSheetOnFile) {
  /** The EU limit for hair products (Regulation (EC) 1223/2009, Annex III, entry 12). */
  public static final Share MOST_STRENGTH = Share.ofPercent(12);

  /** Film and take-up that fit the trade's 1.1, 2.9 and 6.2 g for a small, middle and long foil. */
  public static final Mass USUAL_FILM = Mass.ofGrams(0.9);

  public static final double USUAL_PER_GRAM_OF_HAIR = 1.2;

  public ProductEntry {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(ratio);
    Objects.requireNonNull(window);
    if (name.isBlank()) {
      throw new IllegalArgumentException("a product entry needs a name");
    }
    if (developerStrength.toFraction() < 0
        || developerStrength.toFraction() > MOST_STRENGTH.toFraction() + 1e-9) {
      throw new IllegalArgumentException(
          "a developer of " + developerStrength + " is outside 0 % to " + MOST_STRENGTH);
    }
    if (bowlLife.compareTo(Minutes.ZERO) <= 0) {
      throw new IllegalArgumentException("a bowl life of " + bowlLife + " must be more than 0 min");
    }
    if (film.compareTo(Mass.ZERO) < 0 || !(perGramOfHair >= 0) || !Double.isFinite(perGramOfHair)) {
      throw new IllegalArgumentException(
          "a film of " + film + " and a take-up of " + perGramOfHair + " must be 0 or more");
    }
  }
}
