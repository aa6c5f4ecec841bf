package foilwright.cli;

import foilwright.app.LookOutcome;
import foilwright.app.LookRequest;
import foilwright.app.LookedPlan;
import foilwright.app.Looking;
import foilwright.app.PlanFiles;
import foilwright.app.Sheets;
import foilwright.app.Workspace;
import java.io.IOException;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code look PATTERN}: what will be seen of a pattern on a guest, drawn and in figures. */
final class LookCommand implements Command {
  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("look");
    spec.usageMessage()
        .description("Shows how the hair will look: pictures from five sides, and figures.");
    spec.addPositional(
        PositionalParamSpec.builder()
            .index("0")
            .required(true)
            .paramLabel("PATTERN")
            .type(String.class)
            .description("A pattern: its name as in 'foilwright patterns', or its file.")
            .build());
    LookOptions.all().forEach(spec::addOption);
    return spec;
  }

  @Override
  public int run(ParseResult options, Terminal terminal) throws IOException {
    LookRequest request = LookOptions.request(options.matchedPositionalValue(0, ""), options);
    Path folder = Options.outFolder(options);
    try (Progress progress = Progress.start(terminal.err())) {
      LookOutcome outcome = Looking.look(Workspace.in(terminal.folder()), request, progress);
      if (outcome.looked().isEmpty()) {
        Problems.print(outcome.problems(), terminal.err());
        return outcome.unreachable() ? Exit.FAILURE : Exit.PROBLEMS;
      }
      LookedPlan looked = outcome.looked().get();
      if (options.hasMatchedOption("--json")) {
        terminal.out().writeBytes(PlanFiles.json(looked));
      } else {
        LookText.print(looked, terminal.out());
        Problems.print(outcome.problems(), terminal.out());
      }
      progress.accept("drawing the sheet");
      Options.write(Sheets.look(looked, options.hasMatchedOption("--png")), folder, terminal);
      return looked.plan().hasErrors() ? Exit.PROBLEMS : Exit.DONE;
    }
  }
}
