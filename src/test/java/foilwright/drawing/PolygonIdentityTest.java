package foilwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PolygonIdentityTest {
  private static List<Point> square(double from, double to) {
    return List.of(
        new Point(from, from), new Point(to, from), new Point(to, to), new Point(from, to));
  }

  private static List<Point> reversed(List<Point> ring) {
    List<Point> turned = new ArrayList<>(ring);
    java.util.Collections.reverse(turned);
    return turned;
  }

  private static final Polygon FRAME =
      Polygon.of(List.of(square(0.003, 10.003), reversed(square(3.003, 7.003))));

  @Test
  void holesCountAgainstTheArea() {
    assertEquals(100 - 16, FRAME.area(), 1e-12);
    assertTrue(FRAME.contains(new Point(1, 1)));
    assertFalse(FRAME.contains(new Point(5, 5)));
    assertFalse(FRAME.contains(new Point(11, 5)));
  }

  @Test
  void hatchLinesTimesTheirSpacingGiveTheArea() {
    for (double degrees : new double[] {0, 30, 45, 90, 135}) {
      double[] length = {0, 0, 0};
      FRAME
          .hatched(Math.toRadians(degrees), 0.01)
          .visit(
              new Curve.Sink() {
                @Override
                public void moveTo(double x, double y) {
                  length[1] = x;
                  length[2] = y;
                }

                @Override
                public void lineTo(double x, double y) {
                  length[0] += Math.hypot(x - length[1], y - length[2]);
                  Point middle = new Point((x + length[1]) / 2, (y + length[2]) / 2);
                  assertTrue(FRAME.contains(middle), degrees + " deg at " + middle);
                }

                @Override
                public void curveTo(
                    double x1, double y1, double x2, double y2, double x, double y) {
                  throw new AssertionError("a hatch line is straight");
                }

                @Override
                public void close() {
                  throw new AssertionError("a hatch line is open");
                }
              });
      assertEquals(FRAME.area(), length[0] * 0.01, 0.2, degrees + " deg");
    }
  }

  @Test
  void tooFewPointsAreNoRing() {
    assertTrue(Polygon.of(List.of(List.of(new Point(0, 0), new Point(1, 1)))).isEmpty());
  }
}
