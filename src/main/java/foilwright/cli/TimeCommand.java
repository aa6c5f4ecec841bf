package foilwright.cli;

import foilwright.app.Sheets;
import java.io.IOException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code time PATTERN}: the timeline sheet of a plan and its figures in words. */
final class TimeCommand implements Command {
  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("time");
    spec.usageMessage()
        .description(
            "Puts a plan on the clock: when each foil goes in and must be out, bowls, checks, free gap.");
    PlanOptions.add(spec);
    return spec;
  }

  @Override
  public int run(ParseResult options, Terminal terminal) throws IOException {
    return PlanningRun.run(
        options,
        terminal,
        head -> {},
        (plan, measures, out) -> {
          TimesText.print(plan, measures, PlanOptions.hour(options), out);
          PlanNotes.print(plan, out);
        },
        (plan, pictures) -> Sheets.timeline(plan, PlanOptions.hour(options), pictures));
  }
}
