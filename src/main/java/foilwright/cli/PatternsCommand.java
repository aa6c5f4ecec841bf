package foilwright.cli;

import foilwright.app.ListedPattern;
import foilwright.app.PatternLibrary;
import foilwright.app.Workspace;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code patterns}: lists what can be planned by name, one line each. */
final class PatternsCommand implements Command {
  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("patterns");
    spec.usageMessage()
        .description("Lists the patterns that can be planned by name: shipped ones and your own.");
    return spec;
  }

  @Override
  public int run(ParseResult options, Terminal terminal) {
    List<ListedPattern> patterns = PatternLibrary.list(Workspace.in(terminal.folder()));
    int width = patterns.stream().mapToInt(p -> p.name().length()).max().orElse(0);
    for (ListedPattern pattern : patterns) {
      terminal
          .out()
          .println(
              String.format(
                  Locale.ROOT,
                  "%-" + width + "s  %-7s  %s",
                  pattern.name(),
                  pattern.own() ? "own" : "shipped",
                  words(pattern)));
    }
    return Exit.DONE;
  }

  private static String words(ListedPattern pattern) {
    return pattern
        .title()
        .map(
            title ->
                title
                    + ", "
                    + pattern.sections()
                    + (pattern.sections() == 1 ? " section" : " sections")
                    + (pattern.summary().isEmpty() ? "" : ": " + pattern.summary()))
        .orElse("has a problem; check it by its name");
  }
}
