package foilwright.cli;

import foilwright.app.Check;
import foilwright.app.CheckedDocument;
import foilwright.app.DocumentKind;
import foilwright.app.Workspace;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code check FILE...}: reads documents and says what is wrong, all of it at once. */
final class CheckCommand implements Command {
  @Override
  public CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("check");
    spec.usageMessage()
        .description(
            "Reads patterns, guests and houses and says what is wrong, all of it at once.");
    spec.addPositional(
        PositionalParamSpec.builder()
            .index("0..*")
            .arity("1..*")
            .required(true)
            .paramLabel("FILE")
            .type(String[].class)
            .description("A document: its file, or the name of a shipped one.")
            .build());
    return spec;
  }

  @Override
  public int run(ParseResult options, Terminal terminal) {
    Workspace workspace = Workspace.in(terminal.folder());
    int worst = Exit.DONE;
    try (Progress progress = Progress.start(terminal.err())) {
      for (String named : options.matchedPositionalValue(0, new String[0])) {
        progress.accept("checking " + named);
        CheckedDocument checked = Check.check(workspace, named);
        terminal.out().println(named + ": " + summary(checked));
        Problems.print(checked.problems(), terminal.out());
        worst = Math.max(worst, code(checked));
      }
    }
    return worst;
  }

  private static int code(CheckedDocument checked) {
    if (checked.unreachable()) {
      return Exit.FAILURE;
    }
    return checked.hasErrors() ? Exit.PROBLEMS : Exit.DONE;
  }

  private static String summary(CheckedDocument checked) {
    List<String> words = new ArrayList<>();
    words.add(checked.kind().map(DocumentKind::words).orElse("not usable"));
    checked.title().ifPresent(words::add);
    checked.foils().ifPresent(foils -> words.add(foils + " foils on a usual head"));
    words.add(checked.problems().isEmpty() ? "nothing wrong" : Problems.count(checked.problems()));
    return String.join(", ", words);
  }
}
