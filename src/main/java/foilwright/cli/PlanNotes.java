package foilwright.cli;

import foilwright.app.FoundProblem;
import foilwright.app.Plan;
import foilwright.service.Caution;
import foilwright.service.SafetyQuestion;
import java.io.PrintStream;
import java.util.Comparator;
import java.util.List;

/** Cautions, what is on file, and what to look at, under every plan that is told. */
final class PlanNotes {
  private PlanNotes() {}

  static void print(Plan plan, PrintStream out) {
    out.println();
    out.println("Before anything is mixed");
    for (Caution caution : Caution.values()) {
      out.println("  - " + caution.text());
    }
    out.println();
    out.println("On file for " + plan.guest().number().orElse("this guest"));
    for (SafetyQuestion question : SafetyQuestion.values()) {
      out.println("  " + question.words() + ": " + plan.guest().tests().words(question));
    }
    List<FoundProblem> problems = plan.problems();
    if (!problems.isEmpty()) {
      out.println();
      out.println("To look at");
      Problems.print(
          problems.stream()
              .sorted(Comparator.comparing((FoundProblem found) -> found.problem().severity()))
              .toList(),
          out);
    }
  }
}
