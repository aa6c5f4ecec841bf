package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.service.PaceProfile;
import foilwright.units.Length;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Common practice of the trade: a usual foil of one usable width takes an experienced hand 0.75 to
 * 1.25 minutes and a learner 2 to 2.5. The usual foil here: 95 mm of parting, 12 picks, hair of 250
 * mm.
 */
class HousePaceReferenceTest {
  private static final HouseDocument HOUSE =
      Documents.readHouse(Path.of("shared/house/practice-room.json")).value().orElseThrow();

  @ParameterizedTest
  @CsvSource({"lead, 0.75, 1.25", "stylist, 0.75, 1.25", "apprentice, 2, 2.5"})
  void aUsualFoil(String pace, double leastMin, double mostMin) {
    PaceProfile profile = HOUSE.findPace(pace).orElseThrow();
    double usual =
        profile
            .placing(Length.ofMillimetres(95), 12, Length.ofMillimetres(250))
            .usual()
            .toMinutes();
    assertTrue(usual >= leastMin && usual <= mostMin, pace + " takes " + usual + " min");
    assertEquals("common practice", profile.basis());
  }

  /** Foil widths of 90 to 125 mm, usable width less 10 to 20 mm: common practice. */
  @ParameterizedTest
  @CsvSource({"standard", "narrow", "wide"})
  void foilsHaveAUsableWidth(String name) {
    List<foilwright.service.FoilStock> found =
        HOUSE.foils().stream().filter(f -> f.name().equals(name)).toList();
    double width = found.get(0).width().toMillimetres();
    double margin = width - found.get(0).usableWidth().toMillimetres();
    assertTrue(width >= 90 && width <= 125, "width " + width);
    assertTrue(margin >= 10 && margin <= 20, "margin " + margin);
  }
}
