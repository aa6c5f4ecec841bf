package foilwright.document;

import foilwright.problem.Problem;
import foilwright.problem.Severity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Collects the problems of one reading with their places. */
final class ProblemLog {
  private final List<LocatedProblem> found = new ArrayList<>();

  void error(String code, String path, Place place, String message, String cure) {
    found.add(new LocatedProblem(Problem.error(code, path, message, cure), place));
  }

  void add(LocatedProblem problem) {
    found.add(problem);
  }

  boolean hasErrors() {
    return found.stream().anyMatch(p -> p.problem().severity() == Severity.ERROR);
  }

  /** Paths of the errors so far. */
  List<String> errorPaths() {
    return found.stream()
        .map(LocatedProblem::problem)
        .filter(p -> p.severity() == Severity.ERROR)
        .map(Problem::path)
        .toList();
  }

  /** In the order of the document; those at one place in the order in which they were found. */
  List<LocatedProblem> toList() {
    return found.stream().sorted(Comparator.comparing(LocatedProblem::place)).toList();
  }
}
