package foilwright.head;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.HairlineStretch;
import foilwright.anatomy.Landmark;
import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.SurfacePoint;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.units.Length;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class HeadIdentityTest {
  private static final Head HEAD = head(561, PartSetting.of(PartSide.RIGHT));

  private static Head head(double aroundMm, PartSetting part) {
    return Head.fit(
            HeadKind.WOMAN,
            TapeMeasurements.NONE.withAround(Length.ofMillimetres(aroundMm)),
            HairlineSettings.USUAL,
            part,
            HeadSettings.USUAL)
        .head()
        .orElseThrow();
  }

  private static Vector3 randomPoint(TriangleMesh mesh, Random random) {
    double u = random.nextDouble();
    double v = random.nextDouble();
    return u + v < 1
        ? mesh.point(random.nextInt(mesh.triangleCount()), u, v)
        : mesh.point(random.nextInt(mesh.triangleCount()), 1 - u, 1 - v);
  }

  @Test
  void theScalpOfAnAverageWomanHasAPlausibleSize() {
    double area = HEAD.scalp().area() / 100;
    assertTrue(area > 570 && area < 590, area + " cm2");
  }

  @Test
  void zonesPartitionTheScalp() {
    double sum = 0;
    for (Zone zone : Zone.values()) {
      double area = HEAD.zone(zone).area();
      assertTrue(area > 1000, zone + " has " + area);
      sum += area;
    }
    assertEquals(1, sum / HEAD.scalp().area(), 1e-12);
  }

  @Test
  void zonesMirrorEachOtherWithoutAPart() {
    Head plain = head(561, PartSetting.NONE);
    for (Zone zone : Zone.values()) {
      double here = plain.zone(zone).area();
      assertEquals(here, plain.zone(zone.mirrored()).area(), 1e-9 * here, zone.words());
    }
  }

  @Test
  void aSidePartDividesTheTopWhereItLies() {
    for (PartSide side : List.of(PartSide.LEFT, PartSide.RIGHT)) {
      Head head = head(561, PartSetting.of(side));
      Zone narrow = side == PartSide.RIGHT ? Zone.TOP_RIGHT : Zone.TOP_LEFT;
      double part = head.zone(narrow).area();
      double rest = head.zone(narrow.mirrored()).area();
      assertTrue(part > 0.3 * rest && part < 0.7 * rest, part + " and " + rest);
      assertEquals(1, head.zone(narrow).components().size());
      assertEquals(1, head.zone(narrow.mirrored()).components().size());
    }
  }

  @Test
  void aDeeperFringeReachesFartherBack() {
    double before = 0;
    for (double percent : new double[] {10, 25, 45}) {
      Head head =
          Head.fit(
                  HeadKind.WOMAN,
                  TapeMeasurements.NONE,
                  HairlineSettings.USUAL,
                  PartSetting.NONE,
                  new HeadSettings(
                      HeadSettings.USUAL.occipitalElevation(),
                      HeadSettings.USUAL.ridgeElevation(),
                      Share.ofPercent(percent),
                      HeadSettings.USUAL.meshEdge()))
              .head()
              .orElseThrow();
      Region fringe = head.zone(Zone.FRINGE);
      assertEquals(
          percent / 100 * head.frontToBack().toMillimetres(),
          fringe.greatest(head.alongCentreLine()),
          0.1);
      // Nearly a flat triangle: its height times half its base.
      assertTrue(fringe.area() > before + 1000);
      before = fringe.area();
    }
  }

  @Test
  void everyZoneIsOnePieceOnEveryKindOfHeadAndHairline() {
    for (HeadKind kind : HeadKind.values()) {
      for (double recessionMm : new double[] {0, 30, 60}) {
        for (NapeHeight nape : NapeHeight.values()) {
          Head head =
              Head.fit(
                      kind,
                      TapeMeasurements.NONE,
                      new HairlineSettings(Length.ofMillimetres(recessionMm), nape),
                      PartSetting.of(PartSide.LEFT),
                      HeadSettings.USUAL.withMeshEdge(Length.ofMillimetres(4)))
                  .head()
                  .orElseThrow();
          for (Zone zone : Zone.values()) {
            assertEquals(1, head.zone(zone).components().size(), kind + " " + zone);
          }
          assertTrue(head.hairline().closed());
          assertEquals(1, head.scalp().outline().size());
        }
      }
    }
  }

  @Test
  void aRecessionLiesItsDepthBehindTheStraightLine() {
    HeadForm form = HEAD.form();
    double front = Template.FRONT_RAD;
    double nape = Template.napeRad(NapeHeight.MIDDLE);
    Vector3 straight = recession(form, front, nape, 0);
    for (double depthMm : new double[] {1, 10, 35, 60}) {
      Vector3 behind = recession(form, front, nape, depthMm);
      assertEquals(depthMm, form.straightTape(straight, behind), 0.01);
      assertTrue(behind.y() < straight.y());
    }
  }

  private static Vector3 recession(HeadForm form, double front, double nape, double depthMm) {
    HairlineSettings settings =
        new HairlineSettings(Length.ofMillimetres(depthMm), NapeHeight.MIDDLE);
    return form.fromTemplate(HairlineCurve.of(form, front, nape, settings).recession());
  }

  @Test
  void aPointLiesInTheZoneThatContainsIt() {
    for (Zone zone : Zone.values()) {
      Region region = HEAD.zone(zone);
      for (int f = 0; f < region.fragmentCount(); f += 7) {
        Vector3 sum = Vector3.ZERO;
        for (int i = 0; i < region.size(f); i++) {
          sum = sum.plus(region.vertex(f, i));
        }
        if (region.fragmentArea(f) > 0.01) {
          assertEquals(zone, HEAD.zoneAt(sum.times(1.0 / region.size(f))));
        }
      }
    }
  }

  @Test
  void theLeftHalfRepeatsTheRightToTheBit() {
    TriangleMesh mesh = HEAD.mesh();
    Set<Vector3> vertices = new HashSet<>();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      vertices.add(mesh.vertex(v).plus(Vector3.ZERO));
    }
    for (Vector3 vertex : vertices) {
      assertTrue(vertices.contains(vertex.mirrored().plus(Vector3.ZERO)), vertex.toString());
    }
    assertEquals(mesh.vertexCount(), vertices.size());
  }

  @Test
  void trianglesFaceOutwardsAndAreWellShaped() {
    for (double edge : new double[] {1.5, 2.5, 5, 10}) {
      Head head =
          Head.fit(
                  HeadKind.WOMAN,
                  TapeMeasurements.NONE,
                  HairlineSettings.USUAL,
                  PartSetting.of(PartSide.LEFT),
                  HeadSettings.USUAL.withMeshEdge(Length.ofMillimetres(edge)))
              .head()
              .orElseThrow();
      TriangleMesh mesh = head.mesh();
      double least = Math.PI;
      for (int t = 0; t < mesh.triangleCount(); t++) {
        assertTrue(mesh.normal(t).dot(head.form().normal(mesh.point(t, 0.3, 0.3))) > 0.9);
        for (int k = 0; k < 3; k++) {
          Vector3 at = mesh.vertex(mesh.corner(t, k));
          Vector3 u = mesh.vertex(mesh.corner(t, (k + 1) % 3)).minus(at);
          Vector3 v = mesh.vertex(mesh.corner(t, (k + 2) % 3)).minus(at);
          least = Math.min(least, Math.atan2(u.cross(v).norm(), u.dot(v)));
        }
      }
      assertTrue(Math.toDegrees(least) > 17, "least angle at " + edge + ": " + least);
      assertEquals(edge, mesh.meanEdge(), 0.06 * edge);
      assertEquals(1, mesh.vertexCount() - edges(mesh) + mesh.triangleCount(), "a disc");
    }
  }

  private static int edges(TriangleMesh mesh) {
    int twice = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        twice += mesh.neighbour(t, k) < 0 ? 2 : 1;
      }
    }
    return twice / 2;
  }

  @Test
  void everyVertexLiesOnTheForm() {
    TriangleMesh mesh = HEAD.mesh();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vector3 p = mesh.vertex(v);
      assertEquals(0, HEAD.form().surfacePoint(p).distance(p), 1e-9);
    }
  }

  @Test
  void aFinerMeshHasNearlyTheSameArea() {
    Head fine =
        Head.fit(
                HeadKind.WOMAN,
                TapeMeasurements.NONE.withAround(Length.ofMillimetres(561)),
                HairlineSettings.USUAL,
                PartSetting.NONE,
                HeadSettings.USUAL.withMeshEdge(Length.ofMillimetres(1.25)))
            .head()
            .orElseThrow();
    for (Zone zone : Zone.values()) {
      if (!zone.equals(Zone.TOP_LEFT) && !zone.equals(Zone.TOP_RIGHT)) {
        double area = fine.zone(zone).area();
        assertEquals(1, HEAD.zone(zone).area() / area, 0.002, zone.words());
      }
    }
  }

  @Test
  void linesRunBetweenTheirLandmarks() {
    Polyline centre = HEAD.centreLine();
    assertEquals(0, centre.first().distance(HEAD.landmark(Landmark.FRONT_HAIRLINE)), 0.02);
    assertEquals(0, centre.last().distance(HEAD.landmark(Landmark.NAPE_HAIRLINE)), 0.02);
    assertEquals(HEAD.frontToBack().toMillimetres(), centre.length(), 0.05);
    Polyline hairline = HEAD.hairline();
    assertTrue(hairline.closed());
    assertEquals(centre.first(), hairline.first());
    assertTrue(hairline.at(hairline.length() / 4).x() > 0, "the right comes first");
    assertEquals(0, hairline.at(hairline.length() / 2).distance(centre.last()), 1e-9);
    assertTrue(HEAD.earLine().first().x() < -50 && HEAD.earLine().last().x() > 50);
    assertEquals(1, HEAD.occipitalLine().size());
    assertEquals(1, HEAD.parietalRidge().size());
  }

  @Test
  void stretchesOfTheHairlineFollowOneAnotherFromTheFrontToTheNape() {
    Polyline hairline = HEAD.hairline();
    List<HairlineStretch> met = new ArrayList<>();
    for (double arc = 0; arc < hairline.length() / 2; arc += 1) {
      HairlineStretch here = HEAD.hairlineStretch(arc);
      assertEquals(here, HEAD.hairlineStretch(hairline.length() - arc));
      if (met.isEmpty() || met.get(met.size() - 1) != here) {
        met.add(here);
      }
    }
    assertEquals(List.of(HairlineStretch.values()), met);
  }

  @Test
  void aSidePartKeepsItsDistanceFromTheCentreLine() {
    for (PartSide side : List.of(PartSide.LEFT, PartSide.RIGHT)) {
      for (double mm : new double[] {5, 30, 60}) {
        Head head = head(561, new PartSetting(side, Length.ofMillimetres(mm)));
        double sign = side == PartSide.RIGHT ? 1 : -1;
        ScalarField distance = head.distanceFromCentreLine();
        Polyline part = head.partLine().orElseThrow();
        for (Vector3 p : part.points()) {
          assertEquals(sign * mm, head.nearestOnScalp(p).valueOf(distance), 0.01 * mm);
        }
        assertEquals(0, head.nearestOnScalp(part.first()).valueOf(head.distanceFromHairline()));
        for (Vector3 p : part.points()) {
          assertEquals(0, head.nearestOnScalp(p).valueOf(head.besidePart()), 1e-12);
        }
      }
    }
  }

  @Test
  void aCentrePartLiesOnTheCentreLineAndNoPartIsNone() {
    Polyline part = head(561, PartSetting.of(PartSide.CENTRE)).partLine().orElseThrow();
    assertTrue(part.points().stream().allMatch(p -> p.x() == 0));
    assertEquals(0.42 * HEAD.frontToBack().toMillimetres(), part.length(), 2.6);
    assertTrue(head(561, PartSetting.NONE).partLine().isEmpty());
    assertTrue(head(561, PartSetting.NONE).distanceFromPart().isEmpty());
  }

  @Test
  void distanceAlongTheCentreLineIsItsArcLength() {
    Polyline centre = HEAD.centreLine();
    for (int i = 0; i < centre.size(); i++) {
      assertEquals(
          centre.arcAt(i),
          HEAD.nearestOnScalp(centre.points().get(i)).valueOf(HEAD.alongCentreLine()),
          0.1);
    }
  }

  @Test
  void nearestPointsAreFoundAsByLookingAtEveryTriangle() {
    TriangleMesh mesh = HEAD.mesh();
    Random random = new Random(11);
    for (int i = 0; i < 10; i++) {
      Vector3 p =
          randomPoint(mesh, random)
              .times(0.7 + random.nextDouble())
              .plus(new Vector3(random.nextGaussian(), 0, random.nextGaussian()).times(20));
      SurfacePoint found = HEAD.nearestOnScalp(p);
      double least = Double.POSITIVE_INFINITY;
      for (int t = 0; t < mesh.triangleCount(); t++) {
        for (double u = 0; u <= 1; u += 0.25) {
          for (double v = 0; u + v <= 1; v += 0.25) {
            least = Math.min(least, p.distance(mesh.point(t, u, v)));
          }
        }
      }
      assertTrue(p.distance(found.point()) <= least + 1e-12);
      assertEquals(least, p.distance(found.point()), 0.4);
    }
  }

  @Test
  void directionsToTheMillimetreLeadBack() {
    for (HeadKind kind : List.of(HeadKind.MAN, HeadKind.CHILD)) {
      Head head = Head.usual(kind);
      Random random = new Random(12);
      for (int i = 0; i < 800; i++) {
        Vector3 p = randomPoint(head.mesh(), random);
        TapeDirections directions = head.find(p).toTheMillimetre();
        assertTrue(
            head.walk(directions).point().distance(p) < 3, () -> p + ": " + directions.words());
      }
    }
  }

  @Test
  void directionsReadAsAPersonWouldSayThem() {
    String words =
        HEAD.find(HEAD.landmark(Landmark.BACK_POINT).plus(new Vector3(30, 0, 20))).words();
    assertTrue(words.startsWith("back upper right: "), words);
    assertTrue(words.contains(" mm right of the centre line, "), words);
    assertTrue(words.contains(" mm behind the ear line; "), words);
    assertTrue(words.endsWith(" mm from the most prominent point at the back"), words);
    String top = HEAD.find(HEAD.landmark(Landmark.APEX)).words();
    assertTrue(top.contains("on the centre line, on the ear line; 0 mm from the apex"), top);
  }
}
