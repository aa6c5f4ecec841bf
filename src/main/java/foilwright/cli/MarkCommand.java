package foilwright.cli;

import foilwright.app.FoundProblem;
import foilwright.app.MarkOutcome;
import foilwright.app.MarkRequest;
import foilwright.app.Marks;
import foilwright.app.PaperSize;
import foilwright.app.Plan;
import foilwright.app.PlanOutcome;
import foilwright.app.Planning;
import foilwright.app.SheetFormat;
import foilwright.app.Workspace;
import foilwright.service.marking.MarkedAttempt;
import foilwright.service.marking.Score;
import foilwright.service.marking.Trend;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Locale;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code mark PATTERN}: practice work beside the plan, one attempt or a class. */
final class MarkCommand implements Command {
  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("mark");
    spec.usageMessage()
        .description(
            "Marks practice work against a plan: error and tolerance of every measured value, and"
                + " what several attempts have in common. Without measured work it draws the"
                + " sheet to measure with.");
    PlanOptions.addPlan(spec);
    spec.addOption(
        Options.texts("--measured", "FILE", "Measured work, an attempt document; may come again."));
    spec.addOption(
        Options.texts(
            "--value", "VALUE", "One measured value, such as \"3 slice 7 mm\"; may come again."));
    spec.addOption(Options.paper());
    spec.addOption(Options.format());
    spec.addOption(Options.grey());
    spec.addOption(Options.out());
    return spec;
  }

  @Override
  public int run(ParseResult options, Terminal terminal) throws IOException {
    MarkRequest request =
        new MarkRequest(
            Options.all(options, "--measured"),
            Options.all(options, "--value"),
            Options.findPaper(options).orElse(PaperSize.A4),
            Options.findFormat(options).orElse(SheetFormat.SVG),
            options.hasMatchedOption("--grey"));
    Path folder = Options.outFolder(options);
    Workspace workspace = Workspace.in(terminal.folder());
    try (Progress progress = Progress.start(terminal.err())) {
      PlanOutcome outcome =
          Planning.plan(workspace, PlanOptions.request(options, terminal), progress);
      if (outcome.plan().isEmpty()) {
        Problems.print(outcome.problems(), terminal.err());
        return outcome.unreachable() ? Exit.FAILURE : Exit.PROBLEMS;
      }
      Plan plan = outcome.plan().get();
      progress.accept("marking");
      MarkOutcome marked;
      try {
        marked = Marks.mark(workspace, plan, request);
      } catch (IllegalArgumentException e) {
        throw new UsageException("--value: " + e.getMessage());
      }
      Problems.print(marked.problems(), terminal.err());
      if (marked.problems().stream().anyMatch(FoundProblem::isError)) {
        return marked.unreachable() ? Exit.FAILURE : Exit.PROBLEMS;
      }
      print(marked, terminal.out());
      Options.write(marked.sheets(), folder, terminal);
      return Exit.DONE;
    }
  }

  private static void print(MarkOutcome marked, PrintStream out) {
    for (MarkedAttempt attempt : marked.marked()) {
      out.println(
          attempt.attempt().learner()
              + ": "
              + attempt.within()
              + " of "
              + attempt.scores().size()
              + " values pass");
      for (Score score : attempt.scores()) {
        if (!score.isWithin()) {
          out.println("  " + words(score));
        }
      }
    }
    if (marked.marked().size() > 1) {
      out.println();
      out.println("All " + marked.marked().size() + " attempts together");
      for (Trend trend : marked.trends()) {
        out.println("  " + trend.words());
      }
    }
  }

  private static String words(Score score) {
    String where = score.foil().isPresent() ? "foil " + score.foil().getAsInt() + ": " : "";
    return String.format(
        Locale.ROOT,
        "%s%s %.1f, planned %.1f, off by %+.1f %s (passes: %.1f)",
        where,
        score.criterion().words(),
        score.measured(),
        score.planned(),
        score.error(),
        score.criterion().unit(),
        score.allowed());
  }
}
