package foilwright.cli;

import foilwright.app.Plan;
import foilwright.app.Sheets;
import java.io.IOException;
import java.io.PrintStream;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code plan PATTERN}: a pattern on a guest in a house, told in short and drawn. */
final class PlanCommand implements Command {
  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("plan");
    spec.usageMessage()
        .description(
            "Plans a pattern on a guest: how many foils, how long, what to mix, and a map.");
    PlanOptions.add(spec);
    spec.addOption(
        Options.flag("--full", "Tell sections, zones and where every foil goes as well."));
    spec.addOption(
        Options.text(
            "--save-as", "FILE", "With --within or --at-most: keep what is left as a pattern."));
    return spec;
  }

  @Override
  public int run(ParseResult options, Terminal terminal) throws IOException {
    Optional<String> keep = Options.find(options, "--save-as");
    if (keep.isPresent()
        && !options.hasMatchedOption("--within")
        && !options.hasMatchedOption("--at-most")) {
      throw new UsageException("--save-as keeps what --within or --at-most left; add one of them.");
    }
    AtomicReference<Sheets.MapInProgress> map = new AtomicReference<>();
    AtomicReference<Plan> planned = new AtomicReference<>();
    int code =
        PlanningRun.run(
            options,
            terminal,
            head -> map.set(Sheets.beginMap(head)),
            (plan, measures, out) -> tell(plan, measures, options, out),
            (plan, pictures) -> {
              planned.set(plan);
              return map.get().finish(plan, pictures);
            });
    if (keep.isPresent() && planned.get() != null && planned.get().trimmed().isPresent()) {
      Options.savePattern(keep.get(), planned.get().trimmed().get().pattern(), terminal);
    }
    return code;
  }

  private static void tell(Plan plan, Measures measures, ParseResult options, PrintStream out) {
    ShortAnswer.print(plan, measures, out);
    if (options.hasMatchedOption("--full")) {
      PlanDetails.print(plan, measures, out);
    }
    PlanNotes.print(plan, out);
  }
}
