package foilwright.cli;

import foilwright.app.Check;
import foilwright.app.CheckedDocument;
import foilwright.app.DocumentKind;
import foilwright.app.Workspace;
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
    int code = Exit.DONE;
    for (String named : options.matchedPositionalValue(0, new String[0])) {
      CheckedDocument checked = Check.check(workspace, named);
      terminal.out().println(named + ": " + summary(checked));
      Problems.print(checked.problems(), terminal.out());
      if (checked.unreachable()) {
        code = Exit.FAILURE;
      } else if (checked.hasErrors() && code == Exit.DONE) {
        code = Exit.PROBLEMS;
      }
    }
    return code;
  }

  private static String summary(CheckedDocument checked) {
    String what =
        checked.kind().map(DocumentKind::words).orElse("not usable")
            + checked.title().map(title -> ", " + title).orElse("");
    int problems = checked.problems().size();
    return what
        + switch (problems) {
          case 0 -> ", nothing wrong";
          case 1 -> ", 1 problem";
          default -> ", " + problems + " problems";
        };
  }
}
