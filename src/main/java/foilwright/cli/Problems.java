package foilwright.cli;

import foilwright.app.FoundProblem;
import foilwright.problem.Severity;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;

/** Problems as text for a terminal. */
final class Problems {
  private Problems() {}

  static void print(List<FoundProblem> problems, PrintStream to) {
    problems.forEach(problem -> print(problem, to));
  }

  /** Such as {@code 1 problem, 2 cautions}. */
  static String count(List<FoundProblem> problems) {
    List<String> words = new ArrayList<>();
    for (Severity severity : Severity.values()) {
      long count = problems.stream().filter(p -> p.problem().severity() == severity).count();
      if (count > 0) {
        words.add(count + " " + word(severity) + (count == 1 ? "" : "s"));
      }
    }
    return String.join(", ", words);
  }

  private static void print(FoundProblem found, PrintStream to) {
    StringBuilder head = new StringBuilder(word(found.problem().severity()));
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

  private static String word(Severity severity) {
    return switch (severity) {
      case ERROR -> "problem";
      case WARNING -> "caution";
      case NOTE -> "note";
    };
  }
}
