package foilwright.app;

import foilwright.service.marking.MarkedAttempt;
import foilwright.service.marking.Trend;
import java.util.List;

/**
 * What marking gave.
 *
 * @param marked every attempt that could be read
 * @param trends what they have in common
 * @param sheets the drawn files; the empty table when nothing was measured
 * @param problems of the attempts
 * @param unreachable whether a file does not exist or cannot be read
 */
public record MarkOutcome(
    List<MarkedAttempt> marked,
    List<Trend> trends,
    List<SheetFile> sheets,
    List<FoundProblem> problems,
    boolean unreachable) {
  public MarkOutcome {
    marked = List.copyOf(marked);
    trends = List.copyOf(trends);
    sheets = List.copyOf(sheets);
    problems = List.copyOf(problems);
  }
}
