package foilwright.app;

import foilwright.service.PaceProfile;
import java.util.List;
import java.util.SortedSet;

/**
 * What a plan can be made of.
 *
 * @param patterns by name
 * @param guests by number
 * @param houses by name
 * @param paces of one house, its first first
 */
public record Choices(
    List<ListedPattern> patterns, List<String> guests, List<String> houses, List<String> paces) {
  public Choices {
    patterns = List.copyOf(patterns);
    guests = List.copyOf(guests);
    houses = List.copyOf(houses);
    paces = List.copyOf(paces);
  }

  /**
   * What a workspace holds.
   *
   * @param house whose paces there are; none when there is no such house
   */
  public static Choices in(Workspace workspace, String house) {
    SortedSet<String> houses = workspace.names(DocumentKind.HOUSE);
    return new Choices(
        PatternLibrary.list(workspace),
        List.copyOf(workspace.names(DocumentKind.GUEST)),
        List.copyOf(houses),
        houses.contains(house) ? paces(workspace, house) : List.of());
  }

  private static List<String> paces(Workspace workspace, String house) {
    return workspace
        .house(house)
        .value()
        .map(found -> found.paces().stream().map(PaceProfile::name).toList())
        .orElse(List.of());
  }
}
