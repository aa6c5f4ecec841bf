package foilwright.head;

import static org.junit.jupiter.api.Assertions.assertEquals;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.StarSurface;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Against closed forms of an ellipsoid, the source in every row of the table. */
class HeadFormReferenceTest {
  private static final HeadForm ELLIPSOID =
      HeadForm.of(StarSurface.of(Vector3.ZERO, new double[] {1}), new Vector3(76, 98, 90));

  @Test
  void planeCutsHaveTheirPerimeters() {
    for (Map<String, String> row :
        Csv.rows("/reference/geometry/ellipsoid_76_98_90_plane_cuts.csv")) {
      Vector3 normal =
          new Vector3(number(row, "normal_x"), number(row, "normal_y"), number(row, "normal_z"))
              .unit();
      Vector3 inside = normal.times(number(row, "distance_mm"));
      Vector3 u = normal.cross(new Vector3(0.3, 0.5, -0.7)).unit();
      Vector3 v = normal.cross(u);
      int steps = 4000;
      double sum = 0;
      Vector3 before = ELLIPSOID.exit(inside, u);
      for (int i = 1; i <= steps; i++) {
        double t = 2 * Math.PI * i / steps;
        Vector3 p = ELLIPSOID.exit(inside, u.times(Math.cos(t)).plus(v.times(Math.sin(t))));
        sum += p.distance(before);
        before = p;
      }
      // 4000 chords fall short of the ellipse by about 4e-7 of its length.
      assertEquals(number(row, "perimeter_mm"), sum, 5e-4, row.toString());
    }
  }

  @Test
  void aTapeRoundTheMidLineOfAnEllipsoidReadsItsPerimeter() {
    assertEquals(590.886818735249, Tapes.alongMidLine(ELLIPSOID, 0, 2 * Math.PI), 1e-4);
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }
}
