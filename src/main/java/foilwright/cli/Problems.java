package foilwright.cli;

import foilwright.app.FoundProblem;
import java.io.PrintStream;
import java.util.List;

/** Problems as text for a terminal. */
final class Problems {
  private Problems() {}

  static void print(List<FoundProblem> problems, PrintStream to) {
    problems.forEach(problem -> print(problem, to));
  }

  private static void print(FoundProblem found, PrintStream to) {
    StringBuilder head = new StringBuilder(word(found));
    if (!found.document().isEmpty()) {
      head.append(" in ").append(found.document());
    }
    if (found.line() > 0) {
      head.append(", line ").append(found.line()).append(", column ").append(found.column());
    }
    if (!found.problem().path().isEmpty()) {
      head.append(" (").append(found.problem().path()).append(')');
    }
    to.println(head.append(": ").append(found.problem().message()));
    to.println("    cure: " + found.problem().cure());
  }

  private static String word(FoundProblem found) {
    return switch (found.problem().severity()) {
      case ERROR -> "problem";
      case WARNING -> "caution";
      case NOTE -> "note";
    };
  }
}
