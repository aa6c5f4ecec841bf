package foilwright.cli;

import foilwright.app.Plan;
import foilwright.app.PlanFiles;
import foilwright.app.PlanOutcome;
import foilwright.app.PlanRequest;
import foilwright.app.Planning;
import foilwright.app.Sheets;
import foilwright.app.Workspace;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicReference;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code plan PATTERN}: a pattern on a guest in a house, told and drawn. */
final class PlanCommand implements Command {
  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("plan");
    spec.usageMessage()
        .description("Plans a pattern on a guest: where each foil goes, how long it takes, a map.");
    spec.addPositional(
        PositionalParamSpec.builder()
            .index("0")
            .required(true)
            .paramLabel("PATTERN")
            .type(String.class)
            .description("A pattern: its name as in 'foilwright patterns', or its file.")
            .build());
    spec.addOption(
        Options.text("--guest", "GUEST", "Whose head and hair: a guest's number, or a file."));
    spec.addOption(Options.text("--house", "HOUSE", "Paces, products and foils: a name or file."));
    spec.addOption(Options.text("--pace", "NAME", "One of the house's paces; else its first."));
    spec.addOption(Options.part());
    spec.addOption(Options.out());
    spec.addOption(Options.flag("--png", "Draw the map as a picture (PNG) too."));
    spec.addOption(Options.inches());
    spec.addOption(Options.flag("--json", "Print the whole plan as JSON."));
    spec.addOption(Options.flag("--csv", "Print a table with a row for each foil."));
    return spec;
  }

  @Override
  public int run(ParseResult options, Terminal terminal) throws IOException {
    if (options.hasMatchedOption("--json") && options.hasMatchedOption("--csv")) {
      throw new UsageException("Choose one of --json and --csv.");
    }
    PlanRequest request =
        new PlanRequest(
            options.matchedPositionalValue(0, ""),
            Options.find(options, "--guest"),
            Options.find(options, "--house"),
            Options.find(options, "--pace"),
            Options.findPart(options));
    AtomicReference<Sheets.MapInProgress> map = new AtomicReference<>();
    Path folder = Options.outFolder(options);
    try (Progress progress = Progress.start(terminal.err())) {
      PlanOutcome outcome =
          Planning.plan(
              Workspace.in(terminal.folder()),
              request,
              progress,
              head -> map.set(Sheets.beginMap(head)));
      if (outcome.plan().isEmpty()) {
        Problems.print(outcome.problems(), terminal.err());
        return outcome.unreachable() ? Exit.FAILURE : Exit.PROBLEMS;
      }
      Plan plan = outcome.plan().get();
      print(plan, options, terminal.out());
      progress.accept("drawing the map");
      Options.write(map.get().finish(plan, options.hasMatchedOption("--png")), folder, terminal);
      return plan.hasErrors() ? Exit.PROBLEMS : Exit.DONE;
    }
  }

  private static void print(Plan plan, ParseResult options, PrintStream out) {
    if (options.hasMatchedOption("--json")) {
      out.writeBytes(PlanFiles.json(plan));
    } else if (options.hasMatchedOption("--csv")) {
      out.writeBytes(PlanFiles.csv(plan));
    } else {
      PlanText.print(plan, new Measures(options.hasMatchedOption("--inches")), out);
    }
  }
}
