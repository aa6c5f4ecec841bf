package foilwright.cli;

import foilwright.app.DrawRequest;
import foilwright.app.Drawings;
import foilwright.app.PaperSize;
import foilwright.app.Plan;
import foilwright.app.PlanOutcome;
import foilwright.app.Planning;
import foilwright.app.SheetFormat;
import foilwright.app.SheetKind;
import foilwright.app.Workspace;
import foilwright.problem.Severity;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code draw PATTERN}: sheets of a plan, each on its own or bound as a book. */
final class DrawCommand implements Command {
  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("draw");
    spec.usageMessage()
        .description("Draws sheets to work with, teach with and hand out: " + sheetNames() + ".");
    PlanOptions.addPlan(spec);
    spec.addOption(
        Options.text("--sheets", "NAMES", "Which sheets, with commas between; else map."));
    spec.addOption(Options.flag("--all", "Every sheet, as one PDF with page numbers."));
    spec.addOption(Options.paper());
    spec.addOption(Options.format());
    spec.addOption(Options.inches());
    spec.addOption(Options.flag("--left-handed", "Steps in the order of a left-handed person."));
    spec.addOption(Options.grey());
    spec.addOption(Options.out());
    return spec;
  }

  private static String sheetNames() {
    return Arrays.stream(SheetKind.values())
        .map(SheetKind::words)
        .collect(Collectors.joining(", "));
  }

  @Override
  public int run(ParseResult options, Terminal terminal) throws IOException {
    DrawRequest request = request(options, terminal);
    Path folder = Options.outFolder(options);
    try (Progress progress = Progress.start(terminal.err())) {
      PlanOutcome outcome =
          Planning.plan(
              Workspace.in(terminal.folder()), PlanOptions.request(options, terminal), progress);
      Problems.print(
          outcome.problems().stream().filter(p -> p.problem().severity() != Severity.NOTE).toList(),
          terminal.err());
      if (outcome.plan().isEmpty()) {
        return outcome.unreachable() ? Exit.FAILURE : Exit.PROBLEMS;
      }
      Plan plan = outcome.plan().get();
      progress.accept("drawing");
      Options.write(Drawings.draw(plan, request), folder, terminal);
      return plan.hasErrors() ? Exit.PROBLEMS : Exit.DONE;
    }
  }

  private static DrawRequest request(ParseResult options, Terminal terminal) {
    boolean all = options.hasMatchedOption("--all");
    if (all && options.hasMatchedOption("--sheets")) {
      throw new UsageException("Choose one of --all and --sheets.");
    }
    SheetFormat format =
        Options.findFormat(options).orElse(all ? SheetFormat.PDF : SheetFormat.SVG);
    if (all && format != SheetFormat.PDF) {
      throw new UsageException("--all makes one PDF; leave --format out, or name --sheets.");
    }
    return new DrawRequest(
        all ? List.of(SheetKind.values()) : kinds(options),
        all,
        Options.findPaper(options).orElse(PaperSize.A4),
        format,
        options.hasMatchedOption("--inches"),
        options.hasMatchedOption("--left-handed"),
        options.hasMatchedOption("--grey"),
        PlanOptions.hour(options),
        Optional.of(terminal.today()));
  }

  private static List<SheetKind> kinds(ParseResult options) {
    List<SheetKind> kinds = new ArrayList<>();
    for (String word :
        Options.find(options, "--sheets").orElse(SheetKind.MAP.words()).split(",", -1)) {
      SheetKind kind =
          SheetKind.find(word.strip())
              .orElseThrow(
                  () ->
                      new UsageException(
                          "\""
                              + word.strip()
                              + "\" is not a sheet; write --sheets with some of: "
                              + sheetNames()));
      if (!kinds.contains(kind)) {
        kinds.add(kind);
      }
    }
    return kinds;
  }
}
