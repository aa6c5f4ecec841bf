package foilwright.head;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Zone;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.StarSurface;
import foilwright.geometry.surface.TriangleMesh;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class UnrolledScalpReferenceTest {
  private static Vector3 onGlobe(double latitudeDeg, double longitudeDeg) {
    double lat = Math.toRadians(latitudeDeg);
    double lon = Math.toRadians(longitudeDeg);
    return new Vector3(Math.cos(lat) * Math.cos(lon), Math.cos(lat) * Math.sin(lon), Math.sin(lat));
  }

  private static HeadForm sphere(double radius) {
    return HeadForm.of(StarSurface.of(Vector3.ZERO, new double[] {radius}), new Vector3(1, 1, 1));
  }

  /**
   * Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395 (1987), p. 332: Lambert
   * azimuthal equal-area, sphere of radius 3, centre 40 N 100 W, point 20 S 100 E.
   */
  @Test
  void aSphereIsUnrolledAsByLambert() {
    UnrolledScalp map = UnrolledScalp.about(sphere(3), onGlobe(40, -100), Vector3.UP);
    UnrolledScalp.Place place = map.place(onGlobe(-20, 100));
    assertEquals(-4.2339303, place.xMm(), 0.5e-7);
    assertEquals(4.0257775, place.yMm(), 0.5e-7);
  }

  @Test
  void onASphereTheRadiusIsTheChordEverywhere() {
    UnrolledScalp map = UnrolledScalp.about(sphere(90), Vector3.UP, Vector3.FRONT);
    Random random = new Random(31);
    for (int i = 0; i < 100; i++) {
      Vector3 p =
          new Vector3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian())
              .unit()
              .times(90);
      UnrolledScalp.Place place = map.place(p);
      double chord = p.distance(new Vector3(0, 0, 90));
      assertEquals(chord, Math.hypot(place.xMm(), place.yMm()), 1e-8);
      assertEquals(Math.atan2(p.x(), p.y()), Math.atan2(place.xMm(), place.yMm()), 1e-12);
    }
    assertEquals(0, map.place(new Vector3(0, 0, 90)).xMm());
  }

  @Test
  void everyZoneKeepsItsArea() {
    for (HeadKind kind : HeadKind.values()) {
      Head head = Head.usual(kind);
      UnrolledScalp map = UnrolledScalp.of(head);
      for (Zone zone : Zone.values()) {
        Region region = head.zone(zone);
        assertEquals(1, area(map, region) / region.area(), 3e-4, kind + " " + zone);
      }
    }
  }

  private static double area(UnrolledScalp map, Region region) {
    double sum = 0;
    for (int f = 0; f < region.fragmentCount(); f++) {
      for (int i = 0; i < region.size(f); i++) {
        UnrolledScalp.Place a = map.place(region.vertex(f, i));
        UnrolledScalp.Place b = map.place(region.vertex(f, (i + 1) % region.size(f)));
        sum += (a.yMm() * b.xMm() - a.xMm() * b.yMm()) / -2;
      }
    }
    return sum;
  }

  @Test
  void theMapIsMirrorSymmetricAndTheFrontIsUp() {
    Head head = Head.usual(HeadKind.WOMAN);
    UnrolledScalp map = UnrolledScalp.of(head);
    for (Vector3 p : head.hairline().points()) {
      UnrolledScalp.Place right = map.place(p);
      UnrolledScalp.Place left = map.place(p.mirrored());
      assertEquals(right.xMm(), -left.xMm(), 1e-9);
      assertEquals(right.yMm(), left.yMm(), 1e-9);
    }
    assertTrue(map.place(head.centreLine().first()).yMm() > 100);
    assertTrue(map.place(new Vector3(70, 0, 60)).xMm() > 50);
  }

  @Test
  void theAxisLiesNearTheMiddleOfTheScalp() {
    Head head = Head.usual(HeadKind.WOMAN);
    UnrolledScalp map = UnrolledScalp.of(head);
    double back = Math.toDegrees(Math.atan2(-map.axis().y(), map.axis().z()));
    assertEquals(40, back, 1);
    double worst = map.worstStretch(head.mesh());
    assertTrue(worst > 1.2 && worst < 2.2, "worst stretch " + worst);
    double vertical =
        UnrolledScalp.about(head.form(), Vector3.UP, Vector3.FRONT).worstStretch(head.mesh());
    assertTrue(vertical > 1.2 * worst, "about a vertical axis " + vertical);
  }

  @Test
  void aSphereIsStretchedBySecantOfHalfTheOpening() {
    // At an opening c Lambert's map stretches by 1 / cos(c / 2) across the ray; tried down to 120
    // degrees, where
    // it is 2 and one edge of the mesh still changes it by little.
    Head head = Head.usual(HeadKind.WOMAN);
    TriangleMesh scalp = head.mesh();
    UnrolledScalp map = UnrolledScalp.about(sphere(90), Vector3.UP, Vector3.FRONT);
    double most = 0;
    double[] xyz = new double[3 * scalp.vertexCount()];
    for (int v = 0; v < scalp.vertexCount(); v++) {
      Vector3 u = scalp.vertex(v).minus(head.form().centre()).unit().times(90);
      xyz[3 * v] = u.x();
      xyz[3 * v + 1] = u.y();
      xyz[3 * v + 2] = u.z();
    }
    List<Integer> corners = new ArrayList<>();
    for (int t = 0; t < scalp.triangleCount(); t++) {
      double low = Double.POSITIVE_INFINITY;
      for (int k = 0; k < 3; k++) {
        low = Math.min(low, xyz[3 * scalp.corner(t, k) + 2]);
      }
      if (low > -45) {
        most = Math.max(most, 1 / Math.cos(Math.acos(low / 90) / 2));
        for (int k = 0; k < 3; k++) {
          corners.add(scalp.corner(t, k));
        }
      }
    }
    TriangleMesh cap = TriangleMesh.of(xyz, corners.stream().mapToInt(Integer::intValue).toArray());
    assertTrue(most > 1.9, "reaches far enough: " + most);
    assertEquals(most, map.worstStretch(cap), 0.03 * most);
  }
}
