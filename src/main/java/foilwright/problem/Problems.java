package foilwright.problem;

import java.util.ArrayList;
import java.util.List;

/**
 * Collects problems in the order in which they are found; confined to one calculation, not shared.
 */
public final class Problems {
  private final List<Problem> found = new ArrayList<>();

  public void add(Problem problem) {
    found.add(problem);
  }

  public void addAll(List<Problem> problems) {
    found.addAll(problems);
  }

  public boolean hasErrors() {
    return found.stream().anyMatch(p -> p.severity() == Severity.ERROR);
  }

  public List<Problem> toList() {
    return List.copyOf(found);
  }
}
