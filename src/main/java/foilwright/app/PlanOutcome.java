package foilwright.app;

import java.util.List;
import java.util.Optional;

/**
 * What planning gave.
 *
 * @param plan absent when a document could not be read or the head could not be measured
 * @param problems all of them; the plan's own when there is one
 * @param unreachable whether a document does not exist or cannot be read
 */
public record PlanOutcome(Optional<Plan> plan, List<FoundProblem> problems, boolean unreachable) {
  public PlanOutcome {
    problems = List.copyOf(problems);
  }
}
