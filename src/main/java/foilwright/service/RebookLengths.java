package foilwright.service;

import foilwright.units.Length;

/**
 * How much regrowth a house likes to see before it foils again.
 *
 * @param from the least, more than 0
 * @param to the most, at least {@code from}
 */
public record RebookLengths(Length from, Length to) {
  /** 15 to 30 mm, common practice: about 6 to 12 weeks of growth. */
  public static final RebookLengths USUAL =
      new RebookLengths(Length.ofMillimetres(15), Length.ofMillimetres(30));

  public RebookLengths {
    if (from.compareTo(Length.ZERO) <= 0 || to.compareTo(from) < 0) {
      throw new IllegalArgumentException(
          "regrowth from " + from + " to " + to + " must be more than 0 mm and in rising order");
    }
  }
}
