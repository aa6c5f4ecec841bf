package foilwright.cli;

import foilwright.app.Plan;
import foilwright.app.PlanFiles;
import foilwright.app.PlanOutcome;
import foilwright.app.PlanRequest;
import foilwright.app.Planning;
import foilwright.app.SheetFile;
import foilwright.app.VisitEntry;
import foilwright.app.Workspace;
import foilwright.head.Head;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import picocli.CommandLine.ParseResult;

/** What every command that plans does: plan, print, draw, write. */
final class PlanningRun {
  /** Draws the command's sheets of a plan. */
  interface Drawing {
    List<SheetFile> sheets(Plan plan, boolean pictures);
  }

  /** Tells the plan in the command's words. */
  interface Telling {
    void print(Plan plan, Measures measures, PrintStream out);
  }

  private PlanningRun() {}

  /**
   * Runs a command.
   *
   * @param whenMeasured is given the head as soon as it is known, so that drawing it can begin
   * @return an exit code
   */
  static int run(
      ParseResult options,
      Terminal terminal,
      Consumer<Head> whenMeasured,
      Telling telling,
      Drawing drawing)
      throws IOException {
    PlanRequest request = PlanOptions.request(options, terminal);
    Optional<LocalTime> hour = PlanOptions.hour(options);
    Optional<String> calendar = Options.find(options, "--ics");
    if (calendar.isPresent() && hour.isEmpty()) {
      throw new UsageException(
          "--ics needs the hour of the visit: add --at, such as --at 09:30, and --on for the day");
    }
    Path folder = Options.outFolder(options);
    try (Progress progress = Progress.start(terminal.err())) {
      PlanOutcome outcome =
          Planning.plan(Workspace.in(terminal.folder()), request, progress, whenMeasured);
      if (outcome.plan().isEmpty()) {
        Problems.print(outcome.problems(), terminal.err());
        return outcome.unreachable() ? Exit.FAILURE : Exit.PROBLEMS;
      }
      Plan plan = outcome.plan().get();
      if (options.hasMatchedOption("--json")) {
        terminal.out().writeBytes(PlanFiles.json(plan));
      } else if (options.hasMatchedOption("--csv")) {
        terminal.out().writeBytes(PlanFiles.csv(plan));
      } else {
        Measures measures = new Measures(options.hasMatchedOption("--inches"));
        telling.print(plan, measures, terminal.out());
      }
      progress.accept("drawing");
      Options.write(drawing.sheets(plan, options.hasMatchedOption("--png")), folder, terminal);
      if (calendar.isPresent()) {
        if (plan.times().map(t -> t.visits().isEmpty()).orElse(true)) {
          terminal.err().println("There is no visit to write into " + calendar.get() + ".");
          return Exit.PROBLEMS;
        }
        Options.writeFile(
            calendar.get(),
            VisitEntry.calendar(plan, PlanOptions.day(options, terminal).atTime(hour.get())),
            terminal);
      }
      return plan.hasErrors() ? Exit.PROBLEMS : Exit.DONE;
    }
  }
}
