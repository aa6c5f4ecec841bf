package foilwright.app;

import java.util.List;
import java.util.Optional;

/**
 * What came of looking at a plan.
 *
 * @param looked absent when there is no plan
 * @param problems of the plan
 * @param unreachable whether a document could not be found or read at all
 */
public record LookOutcome(
    Optional<LookedPlan> looked, List<FoundProblem> problems, boolean unreachable) {
  public LookOutcome {
    problems = List.copyOf(problems);
  }
}
