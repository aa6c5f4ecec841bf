package foilwright.app;

import foilwright.service.PaceProfile;
import java.util.List;

/**
 * What a plan can be made of.
 *
 * @param patterns by name
 * @param guests by number
 * @param paces of the usual house, its first first
 */
public record Choices(List<ListedPattern> patterns, List<String> guests, List<String> paces) {
  public Choices {
    patterns = List.copyOf(patterns);
    guests = List.copyOf(guests);
    paces = List.copyOf(paces);
  }

  /** What a workspace holds. */
  public static Choices in(Workspace workspace) {
    return new Choices(
        PatternLibrary.list(workspace),
        List.copyOf(workspace.names(DocumentKind.GUEST)),
        workspace
            .house(Planning.USUAL_HOUSE)
            .value()
            .map(house -> house.paces().stream().map(PaceProfile::name).toList())
            .orElse(List.of()));
  }
}
