package foilwright.document;

import foilwright.units.Length;

/**
 * What a hand with a comb can do; a slice outside is placed all the same and reported.
 *
 * @param thinnestSlice that a comb can part and hold, 0.2 to 10 mm
 * @param thickestSlice that a foil still closes over, more than the thinnest, at most 60 mm
 */
public record HandAllowances(Length thinnestSlice, Length thickestSlice) {
  /** Common practice: 1 to 20 mm. */
  public static final HandAllowances USUAL =
      new HandAllowances(Length.ofMillimetres(1), Length.ofMillimetres(20));

  public HandAllowances {
    double thin = thinnestSlice.toMillimetres();
    double thick = thickestSlice.toMillimetres();
    if (!(thin >= 0.2 && thin <= 10 && thick > thin && thick <= 60)) {
      throw new IllegalArgumentException(
          "slices from "
              + thinnestSlice
              + " to "
              + thickestSlice
              + ": the thinnest must lie within 0.2 to 10 mm, the thickest above it and up to 60"
              + " mm");
    }
  }
}
