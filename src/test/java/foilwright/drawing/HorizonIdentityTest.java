package foilwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.SampleSurfaces;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.TriangleMesh;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Parts of a sphere as they are seen from a side, against closed forms. */
class HorizonIdentityTest {
  private static final double R = 90;
  private static final TriangleMesh SPHERE = SampleSurfaces.ellipsoid(R, R, R, 48);
  private static final double WITHIN = 0.004;

  private static Horizon horizon(View view) {
    List<Point> contour = new ArrayList<>();
    for (int i = 0; i < 240; i++) {
      double t = 2 * Math.PI * i / 240;
      contour.add(new Point(R * Math.cos(t), R * Math.sin(t)));
    }
    return Horizon.of(view, new Point(0, 0), contour);
  }

  private static SurfaceLoops loops(Region region) {
    return SurfaceLoops.of(region, Vector3::unit, 0.02);
  }

  private static Region above(Vector3 direction, double height) {
    return Region.whole(SPHERE)
        .clip(ScalarField.compute(SPHERE, p -> p.dot(direction)), height, Double.POSITIVE_INFINITY);
  }

  private static void assertArea(double expected, Polygon seen) {
    assertEquals(expected, seen.area(), WITHIN * expected);
  }

  @ParameterizedTest
  @EnumSource
  void aCapTowardsTheViewerIsADisc(View view) {
    double angle = 0.7;
    Region cap = above(view.toViewer(), R * Math.cos(angle));
    double radius = R * Math.sin(angle);
    assertArea(Math.PI * radius * radius, horizon(view).visible(loops(cap), false));
  }

  @ParameterizedTest
  @EnumSource
  void aCapTurnedAwayIsHidden(View view) {
    Region cap = above(view.toViewer().negated(), 20);
    assertTrue(horizon(view).visible(loops(cap), false).isEmpty());
  }

  @ParameterizedTest
  @EnumSource
  void aCapAtTheRimIsASegment(View view) {
    double angle = 0.6;
    double segment = R * R * (angle - Math.sin(angle) * Math.cos(angle));
    for (Vector3 aside :
        List.of(
            view.rightward(),
            view.rightward().negated(),
            view.up(),
            view.up().negated(),
            view.up().plus(view.rightward()).unit())) {
      Region cap = above(aside, R * Math.cos(angle));
      assertArea(segment, horizon(view).visible(loops(cap), false));
    }
  }

  @ParameterizedTest
  @EnumSource
  void aRingRoundTheSideIsABand(View view) {
    Region band =
        Region.whole(SPHERE).clip(ScalarField.compute(SPHERE, p -> p.dot(view.up())), -15, 25);
    double disc = R * R;
    double expected = segmentTo(25 / R) * disc - segmentTo(-15 / R) * disc;
    assertArea(expected, horizon(view).visible(loops(band), false));
  }

  /** Area of the unit disc below a height. */
  private static double segmentTo(double h) {
    return Math.PI / 2 + Math.asin(h) + h * Math.sqrt(1 - h * h);
  }

  @Test
  void aPartWithAHiddenBorderFillsThePicture() {
    Region most = above(View.TOP.toViewer(), -30);
    assertArea(Math.PI * R * R, horizon(View.TOP).visible(loops(most), true));
  }

  @Test
  void aHoleStaysAHole() {
    Region ring =
        Region.whole(SPHERE)
            .clip(ScalarField.compute(SPHERE, p -> p.dot(View.BACK.toViewer())), 30, 60);
    assertArea(Math.PI * (60 * 60 - 30 * 30), horizon(View.BACK).visible(loops(ring), false));
  }

  @Test
  void aLineRoundTheHeadIsSeenHalf() {
    List<SurfaceLoops.At> circle = new ArrayList<>();
    for (int i = 0; i <= 360; i++) {
      double t = Math.toRadians(i + 90);
      Vector3 p = new Vector3(R * Math.cos(t), R * Math.sin(t), 0);
      circle.add(new SurfaceLoops.At(p, p.unit()));
    }
    List<List<Point>> seen = horizon(View.BACK).visible(circle);
    assertEquals(1, seen.size());
    List<Point> chain = seen.get(0);
    assertEquals(2 * R, chain.get(0).distance(chain.get(chain.size() - 1)), 0.01);
  }

  @Test
  void leftAndRightAreTheClients() {
    Vector3 right = new Vector3(50, 0, 0);
    Vector3 nose = new Vector3(0, 100, 0);
    assertTrue(View.FRONT.project(right).x() < 0, "facing the client, the right is on the left");
    assertTrue(View.BACK.project(right).x() > 0);
    assertTrue(View.TOP.project(right).x() > 0);
    assertTrue(View.TOP.project(nose).y() < 0, "the face is up");
    assertTrue(View.LEFT.project(nose).x() < 0);
    assertTrue(View.RIGHT.project(nose).x() > 0);
  }

  @Test
  void simplifiedLinesStayNear() {
    List<Vector3> arc = new ArrayList<>();
    for (int i = 0; i <= 400; i++) {
      double t = Math.PI * i / 400;
      arc.add(new Vector3(R * Math.cos(t), 0, R * Math.sin(t)));
    }
    List<Vector3> few = SurfaceLoops.simplified(arc, 0.2);
    assertTrue(few.size() < 40, few.size() + " points");
    Polyline simple = Polyline.of(few);
    for (Vector3 p : arc) {
      assertTrue(simple.at(simple.nearestArc(p)).distance(p) <= 0.2 + 1e-9);
    }
  }
}
