package foilwright.head;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The flat gores against the surface they wrap. */
class GoresIdentityTest {
  @ParameterizedTest
  @EnumSource(HeadKind.class)
  void aboutSixteenGoresKeepTheExcessUnderTwoPercent(HeadKind kind) {
    Head head = Head.usual(kind);
    Gores gores = Gores.of(head);
    assertTrue(gores.worstExcess() < 0.02, "excess " + gores.worstExcess());
    assertTrue(Gores.of(head, gores.count() - 2).worstExcess() >= 0.02, "two less would do");
    assertEquals(16, gores.count(), 2, kind + " has " + gores.count());
  }

  @ParameterizedTest
  @EnumSource(HeadKind.class)
  void areasAgreeWithinOnePercent(HeadKind kind) {
    Head head = Head.usual(kind);
    Gores gores = Gores.of(head);
    double flatSum = 0;
    for (int g = 0; g < gores.count(); g++) {
      Region part = gores.part(head.scalp(), g);
      double flat = flatArea(gores, g, part);
      assertEquals(1, flat / part.area(), 0.01, kind + ", gore " + g);
      flatSum += flat;
    }
    assertEquals(1, flatSum / head.scalp().area(), 0.005, kind.words());
  }

  private static double flatArea(Gores gores, int gore, Region part) {
    double twice = 0;
    for (Polyline loop : part.outline()) {
      List<Gores.Place> ring = loop.points().stream().map(p -> gores.place(gore, p)).toList();
      for (int i = 1; i < ring.size(); i++) {
        twice +=
            ring.get(i - 1).xMm() * ring.get(i).yMm() - ring.get(i).xMm() * ring.get(i - 1).yMm();
      }
    }
    // A border runs with its part on the left, seen from outside: less than 0 where y points down.
    return -twice / 2;
  }

  @ParameterizedTest
  @EnumSource(HeadKind.class)
  void neighbouringEdgesJoinAndFollowTheSurface(HeadKind kind) {
    Head head = Head.usual(kind);
    Gores gores = Gores.of(head);
    for (int g = 0; g < gores.count(); g++) {
      int next = (g + 1) % gores.count();
      List<Vector3> edge = edge(gores, head, g, next);
      double right = gores.edgeLength(g, edge);
      double left = gores.edgeLength(next, edge);
      double true3d = Polyline.of(edge).length();
      assertEquals(right, left, 0.5, kind + ", edge " + next);
      assertEquals(1.01, right / true3d, 0.0101, kind + ", edge " + next);
    }
  }

  /** Points of the common edge of two gores, from the axis to the hairline. */
  private static List<Vector3> edge(Gores gores, Head head, int gore, int next) {
    Region part = gores.part(head.scalp(), gore);
    List<Vector3> found = new ArrayList<>();
    for (Polyline loop : part.outline()) {
      for (Vector3 p : loop.points()) {
        if (Math.abs(head.nearestOnScalp(p).valueOf(gores.besideEdge(next))) < 1e-6) {
          found.add(p);
        }
      }
    }
    found.sort(java.util.Comparator.comparingDouble(p -> gores.place(gore, p).yMm()));
    return found;
  }

  @ParameterizedTest
  @EnumSource(HeadKind.class)
  void tenMillimetresOnAGoreAreTrueWithinFourTenths(HeadKind kind) {
    Head head = Head.usual(kind);
    Gores gores = Gores.of(head);
    Polyline line = head.earLine();
    for (double arc = 0; arc + 10 < line.length(); arc += 10) {
      Vector3 a = line.at(arc);
      Vector3 b = line.at(arc + 10);
      int g = gores.holding(a);
      if (g == gores.holding(b)) {
        Gores.Place p = gores.place(g, a);
        Gores.Place q = gores.place(g, b);
        double flat = Math.hypot(p.xMm() - q.xMm(), p.yMm() - q.yMm());
        assertEquals(a.distance(b), flat, 0.4, kind + " at " + arc);
      }
    }
  }
}
