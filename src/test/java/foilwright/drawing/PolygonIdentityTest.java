package foilwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
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

  /** What the Java library's even-odd paths hold, a star with a thousand crossings holds too. */
  @Test
  void holdsTheSamePointsAsALibraryPath() {
    Random random = new Random(3);
    List<List<Point>> rings = new ArrayList<>();
    Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
    for (int size : new int[] {3, 4, 40, 400}) {
      List<Point> ring = new ArrayList<>();
      for (int i = 0; i < size; i++) {
        Point p = new Point(random.nextDouble() * 50 - 20, random.nextDouble() * 30);
        ring.add(p);
        if (i == 0) {
          path.moveTo(p.x(), p.y());
        } else {
          path.lineTo(p.x(), p.y());
        }
      }
      path.closePath();
      rings.add(ring);
    }
    Polygon star = Polygon.of(rings);
    int inside = 0;
    for (int i = 0; i < 20_000; i++) {
      Point p = new Point(random.nextDouble() * 54 - 22, random.nextDouble() * 34 - 2);
      assertEquals(path.contains(p.x(), p.y()), star.contains(p), p.toString());
      inside += star.contains(p) ? 1 : 0;
    }
    assertTrue(inside > 5_000 && inside < 15_000, inside + " of 20000 inside");
  }

  @Test
  void tooFewPointsAreNoRing() {
    assertTrue(Polygon.of(List.of(List.of(new Point(0, 0), new Point(1, 1)))).isEmpty());
  }
}
