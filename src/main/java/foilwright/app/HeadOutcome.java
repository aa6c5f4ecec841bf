package foilwright.app;

import foilwright.head.Head;
import java.util.List;
import java.util.Optional;

/**
 * What looking at a head gave.
 *
 * @param name short, of letters, figures and hyphens, for files: the guest's number or the kind
 * @param head absent when the guest could not be read or the tapes contradict each other
 * @param problems all of them
 * @param unreachable whether the guest's document does not exist or cannot be read
 */
public record HeadOutcome(
    String name, Optional<Head> head, List<FoundProblem> problems, boolean unreachable) {
  public HeadOutcome {
    problems = List.copyOf(problems);
  }

  public boolean hasErrors() {
    return problems.stream().anyMatch(FoundProblem::isError);
  }
}
