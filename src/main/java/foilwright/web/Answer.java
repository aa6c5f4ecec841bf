package foilwright.web;

import foilwright.app.Mark;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * How much of a page is sent: all of it, or those parts only that differ from what the page that
 * asks shows already.
 *
 * @param marks of the parts that the page shows, by their names; empty for a whole page
 * @param large name of the view that the page shows large
 * @param first whether the parts are put in place one by one as the answer to a change, rather than
 *     fetched afterwards
 */
public record Answer(Map<String, String> marks, String large, boolean first) {
  static final String USUAL_LARGE = "view-back";

  /** All of the page. */
  static final Answer WHOLE = new Answer(Map.of(), USUAL_LARGE, false);

  public Answer {
    marks = Map.copyOf(marks);
  }

  /**
   * What a page says that it shows.
   *
   * @param have names and marks, a colon between and blanks around each pair; what is no such pair
   *     is passed over
   */
  static Answer of(String have, String large, boolean first) {
    Map<String, String> marks = new HashMap<>();
    for (String pair : have.split(" ", -1)) {
      int colon = pair.indexOf(':');
      if (colon > 0) {
        marks.put(pair.substring(0, colon), pair.substring(colon + 1));
      }
    }
    return new Answer(marks, large.isEmpty() ? USUAL_LARGE : large, first);
  }

  /** This, or the whole page where the page that asks is not made of just these parts. */
  Answer forParts(Set<String> parts) {
    return marks.keySet().equals(parts) ? this : new Answer(Map.of(), large, false);
  }

  boolean isPatch() {
    return first && !marks.isEmpty();
  }

  /** A part; it is sent unless the page shows just this already. */
  Part part(String id, String html) {
    String mark = Mark.of(html);
    return new Part(html, mark, !mark.equals(marks.get(id)));
  }

  /**
   * One part of a page.
   *
   * @param mark the same for the same part and, but for chance, for no other
   */
  public record Part(String html, String mark, boolean isSent) {}
}
