package foilwright.sheet;

import java.util.List;

/**
 * What the map sheet says in words beside the drawing.
 *
 * @param title name of the plan
 * @param subtitle for whom and on which settings, in one line; may be empty
 * @param totals in the order in which they stand, such as foils, minutes as a range, grams, share
 * @param cautions whole sentences, each its own paragraph
 */
public record MapNotes(String title, String subtitle, List<Total> totals, List<String> cautions) {

  /**
   * One figure of the whole plan.
   *
   * @param value with its unit; an estimate as a range
   */
  public record Total(String label, String value) {}

  public MapNotes {
    totals = List.copyOf(totals);
    cautions = List.copyOf(cautions);
    if (title.isBlank()) {
      throw new IllegalArgumentException("a map needs a title");
    }
  }
}
