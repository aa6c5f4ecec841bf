package foilwright.app;

import foilwright.service.schedule.OrderSearch;
import java.util.List;
import java.util.Objects;

/**
 * How the foils of a plan are to be worked.
 *
 * @param wayOut how they come out; when {@link WayOut#BEST} the plan chooses
 * @param hands pairs of hands, 1 to 4
 * @param aims what a search for a better working order looks for, the most important first; empty
 *     to keep the pattern's own order
 */
public record Working(WayOut wayOut, int hands, List<OrderSearch.Aim> aims) {
  public static final int MOST_HANDS = 4;

  /** One pair of hands, out as the plan finds best, in the pattern's own order. */
  public static final Working USUAL = new Working(WayOut.BEST, 1, List.of());

  public Working {
    Objects.requireNonNull(wayOut);
    aims = List.copyOf(aims);
    if (hands < 1 || hands > MOST_HANDS) {
      throw new IllegalArgumentException(hands + " pairs of hands are outside 1 to " + MOST_HANDS);
    }
  }
}
