package foilwright.cli;

import foilwright.app.Plan;
import java.io.PrintStream;

/** What every telling of a plan begins with. */
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
  }
}
