package foilwright.service;

import foilwright.hair.Level;
import java.util.List;

/**
 * What a house goes by when hair is lifted; common practice, a house replaces it by its own.
 *
 * @param exposedWarmth what shows on hair lifted to level 1, 2, … 10, in words; ten of them
 * @param mostLevelsInOneVisit lift beyond which a second visit is advised, 1 to 9
 */
public record LiftTables(List<String> exposedWarmth, int mostLevelsInOneVisit) {
  public static final LiftTables USUAL =
      new LiftTables(
          List.of(
              "darkest red-brown",
              "dark red-brown",
              "red-brown",
              "red",
              "red-orange",
              "orange",
              "yellow-orange",
              "yellow",
              "light yellow",
              "palest yellow"),
          4);

  public LiftTables {
    exposedWarmth = List.copyOf(exposedWarmth);
    if (exposedWarmth.size() != Level.MOST || exposedWarmth.stream().anyMatch(String::isBlank)) {
      throw new IllegalArgumentException(
          "exposed warmth needs words for each of " + Level.MOST + " levels");
    }
    if (mostLevelsInOneVisit < 1 || mostLevelsInOneVisit > 9) {
      throw new IllegalArgumentException(
          "a most lift of " + mostLevelsInOneVisit + " levels is outside 1 to 9");
    }
  }

  /** What shows on hair lifted to a level. */
  public String warmthAt(Level level) {
    return exposedWarmth.get(level.number() - 1);
  }
}
