package foilwright.cli;

import foilwright.app.FoundProblem;
import foilwright.app.Plan;
import foilwright.problem.Severity;
import java.io.PrintStream;
import java.util.Locale;

/** What every telling of a plan begins with: whose it is, and what may stop the work. */
final class PlanHeading {
  private PlanHeading() {}

  static void print(Plan plan, PrintStream out) {
    out.println(plan.pattern().title());
    out.println(
        plan.guest().number().orElse("no guest named")
            + ", "
            + plan.house().name()
            + ", pace "
            + plan.house().pace().name());
    out.println();
    for (FoundProblem problem : plan.problems()) {
      if (problem.problem().severity() != Severity.NOTE) {
        out.printf(Locale.ROOT, "%-11s %s%n", "Look first", problem.problem().message());
      }
    }
  }
}
