package foilwright.app;

import foilwright.pattern.Pattern;
import java.util.List;
import java.util.Optional;

/** The patterns that can be planned by name. */
public final class PatternLibrary {
  private PatternLibrary() {}

  /** The person's own and the shipped ones, by name; one's own hides a shipped one of its name. */
  public static List<ListedPattern> list(Workspace workspace) {
    return workspace.names(DocumentKind.PATTERN).stream()
        .map(name -> entry(workspace, name, workspace.isOwn(DocumentKind.PATTERN, name)))
        .toList();
  }

  private static ListedPattern entry(Workspace workspace, String name, boolean own) {
    Optional<Pattern> pattern = workspace.pattern(name).value();
    return new ListedPattern(
        name,
        own,
        pattern.map(Pattern::title),
        pattern.map(Pattern::summary).orElse(""),
        pattern.map(p -> p.sections().size()).orElse(0));
  }
}
