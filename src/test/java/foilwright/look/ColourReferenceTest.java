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

  /** Of small steps from a colour, the product of one with itself is the formula's square. */
  @Test
  void productOfSmallStepsIsTheFormulaOfTheDifference() {
    for (Colour.Lab at :
        new Colour.Lab[] {
          new Colour.Lab(20, 4, 5),
          new Colour.Lab(45, 11, 24),
          new Colour.Lab(78, 2, 20),
          new Colour.Lab(50, 10, -60)
        }) {
      Colour.Lab one = new Colour.Lab(0.010, -0.004, 0.007);
      Colour.Lab two = new Colour.Lab(-0.003, 0.009, 0.006);
      double[] squares = new double[3];
      double[][] sums = {{1, 0}, {0, 1}, {1, 1}};
      for (int i = 0; i < 3; i++) {
        Colour.Lab there =
            new Colour.Lab(
                at.l() + sums[i][0] * one.l() + sums[i][1] * two.l(),
                at.a() + sums[i][0] * one.a() + sums[i][1] * two.a(),
                at.b() + sums[i][0] * one.b() + sums[i][1] * two.b());
        squares[i] = Math.pow(at.difference(there), 2);
      }
      assertEquals(squares[0], at.product(one, one), 1e-3 * squares[0]);
      assertEquals(squares[1], at.product(two, two), 1e-3 * squares[1]);
      double mixed = (squares[2] - squares[0] - squares[1]) / 2;
      assertEquals(mixed, at.product(one, two), 2e-3 * Math.sqrt(squares[0] * squares[1]));
    }
  }
}
