package foilwright.cli;

import foilwright.app.LookComparison;
import foilwright.app.LookOutcome;
import foilwright.app.LookedPlan;
import foilwright.app.Looking;
import foilwright.app.PlanFiles;
import foilwright.app.Sheets;
import foilwright.app.Workspace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code compare A B}: what will be seen of two patterns on one guest, side by side. */
final class CompareCommand implements Command {
  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("compare");
    spec.usageMessage().description("Sets two patterns on one guest side by side.");
    for (String which : List.of("first", "second")) {
      spec.addPositional(
          PositionalParamSpec.builder()
              .index(which.equals("first") ? "0" : "1")
              .required(true)
              .paramLabel("PATTERN")
              .type(String.class)
              .description("The " + which + " pattern: its name, or its file.")
              .build());
    }
    LookOptions.all().forEach(spec::addOption);
    return spec;
  }

  @Override
  public int run(ParseResult options, Terminal terminal) throws IOException {
    Path folder = Options.outFolder(options);
    try (Progress progress = Progress.start(terminal.err())) {
      List<LookedPlan> both = new ArrayList<>();
      for (int i = 0; i < 2; i++) {
        LookOutcome outcome =
            Looking.look(
                Workspace.in(terminal.folder()),
                LookOptions.request(options.matchedPositionalValue(i, ""), options),
                progress);
        if (outcome.looked().isEmpty()) {
          Problems.print(outcome.problems(), terminal.err());
          return outcome.unreachable() ? Exit.FAILURE : Exit.PROBLEMS;
        }
        both.add(outcome.looked().get());
      }
      LookComparison comparison = LookComparison.of(both.get(0), both.get(1));
      if (options.hasMatchedOption("--json")) {
        terminal.out().writeBytes(PlanFiles.json(comparison));
      } else {
        LookText.print(comparison, terminal.out());
      }
      progress.accept("drawing the sheet");
      Options.write(
          Sheets.compare(comparison, options.hasMatchedOption("--png")), folder, terminal);
      return Exit.DONE;
    }
  }
}
