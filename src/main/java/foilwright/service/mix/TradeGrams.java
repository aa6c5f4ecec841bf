package foilwright.service.mix;

import foilwright.placement.PlacedFoil;
import foilwright.units.Length;
import foilwright.units.Mass;

/**
 * Mixed grams per foil that the trade reckons with: common practice, no source. Which foil counts
 * as what is a rule of this program.
 */
public enum TradeGrams {
  /** Hair treated over at most 50 mm. */
  REGROWTH("regrowth only", 1, 1.5),
  MID("mid lengths", 2, 3.5),
  /** Hair treated over more than 300 mm, or a slice taken whole. */
  LONG_OR_SOLID("long or solid", 4, 6);

  private static final Length MOST_REGROWTH = Length.ofMillimetres(50);
  private static final Length MOST_MID = Length.ofMillimetres(300);

  private final String words;
  private final double leastGrams;
  private final double mostGrams;

  TradeGrams(String words, double leastGrams, double mostGrams) {
    this.words = words;
    this.leastGrams = leastGrams;
    this.mostGrams = mostGrams;
  }

  /** What a foil counts as. */
  public static TradeGrams of(PlacedFoil foil) {
    return of(FoilSheets.treated(foil), foil.pickedShare().toFraction() > 1 - 1e-9);
  }

  /**
   * What a foil counts as.
   *
   * @param treated length of hair that carries product
   * @param solid whether the slice is taken whole
   */
  static TradeGrams of(Length treated, boolean solid) {
    if (treated.compareTo(MOST_REGROWTH) <= 0) {
      return REGROWTH;
    }
    return solid || treated.compareTo(MOST_MID) > 0 ? LONG_OR_SOLID : MID;
  }

  /** The words used on sheets. */
  public String words() {
    return words;
  }

  public Mass least() {
    return Mass.ofGrams(leastGrams);
  }

  public Mass most() {
    return Mass.ofGrams(mostGrams);
  }

  public boolean holds(Mass mixed) {
    return mixed.compareTo(least()) >= 0 && mixed.compareTo(most()) <= 0;
  }
}
