package foilwright.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.hair.Level;
import foilwright.head.Csv;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Colours against published tables. */
class ColourReferenceTest {
  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  @Test
  void differencesAreThoseOfThePublishedPairs() {
    List<Map<String, String>> rows = Csv.rows("/reference/colour/ciede2000_pairs.csv");
    assertEquals(34, rows.size());
    for (Map<String, String> row : rows) {
      Colour.Lab one = new Colour.Lab(number(row, "L1"), number(row, "a1"), number(row, "b1"));
      Colour.Lab other = new Colour.Lab(number(row, "L2"), number(row, "a2"), number(row, "b2"));
      assertEquals(number(row, "dE00"), one.difference(other), 5e-5, row.get("pair"));
      assertEquals(number(row, "dE00"), other.difference(one), 5e-5, row.get("pair"));
    }
  }

  @Test
  void lightnessAndAxesAreThoseOfTheTable() {
    List<Map<String, String>> rows = Csv.rows("/reference/colour/srgb_lab.csv");
    assertTrue(rows.size() > 5);
    for (Map<String, String> row : rows) {
      int rgb = Integer.parseInt(row.get("hex").substring(1), 16);
      Colour.Lab lab = Colour.ofRgb(rgb).toLab();
      assertEquals(number(row, "L"), lab.l(), 1e-5, row.get("hex"));
      assertEquals(number(row, "a"), lab.a(), 1e-5, row.get("hex"));
      assertEquals(number(row, "b"), lab.b(), 1e-5, row.get("hex"));
      assertEquals(rgb, Colour.ofRgb(rgb).toRgb());
    }
  }

  /** Measured tresses: black L* 18.4, dark brown 23.0 (J. Cosmet. Sci. 51 (2000) 293), D65/10. */
  @Test
  void darkLevelsLieAboutTheMeasuredTresses() {
    double black = Colour.ofHair(new Level(1), Tone.NEUTRAL).toLab().l();
    double brown = Colour.ofHair(new Level(4), Tone.NEUTRAL).toLab().l();
    assertTrue(black < 18.4 && brown > 18.4 && brown < 23.0, black + " " + brown);
    for (int level = 2; level <= 10; level++) {
      double before = Colour.ofHair(new Level(level - 1), Tone.NEUTRAL).toLab().l();
      assertTrue(Colour.ofHair(new Level(level), Tone.NEUTRAL).toLab().l() > before + 2);
    }
  }
}
