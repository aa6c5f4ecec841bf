package foilwright.cli;

import foilwright.app.Sheets;
import java.io.IOException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code mix PATTERN}: the mix sheet of a plan and its figures in words. */
final class MixCommand implements Command {
  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("mix");
    spec.usageMessage()
        .description("Weighs a plan: bowls and when to mix them, developer, toner, foil to cut.");
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
          MixText.print(plan, measures, out);
          PlanNotes.print(plan, out);
        },
        (plan, pictures) -> Sheets.mix(plan, PlanOptions.hour(options), pictures));
  }
}
