package foilwright.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Zone;
import foilwright.fall.NaturalFall;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.SampleSurfaces;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.pattern.Background;
import foilwright.pattern.Fill;
import foilwright.pattern.Pattern;
import foilwright.pattern.Pick;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.TravelFrom;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Rules of the trade and closed forms. */
class PlacementReferenceTest {
  private static final Head HEAD = Head.usual(HeadKind.WOMAN);

  private static Placement place(Section... sections) {
    return Placer.place(
        Pattern.of("test", sections),
        HEAD,
        HairProfile.usual(Length.ofMillimetres(250)),
        PlacingSettings.USUAL,
        NaturalFall.over(HEAD));
  }

  private static Section rows(
      String name, double slice, double background, Zone first, Zone... more) {
    return Section.of(
        name,
        RegionSpec.ofZones(first, more),
        new SectionShape.Horizontal(),
        TravelFrom.BOTTOM,
        Fill.of(
                Run.ofMillimetres(slice),
                background == 0
                    ? new Background.None()
                    : new Background.Even(Run.ofMillimetres(background)))
            .withPicks(Pick.Weave.ofMillimetres(3, 3)));
  }

  /**
   * Lightened share = slice x lifted share / (slice + background): 3 mm, 50 %, 5 mm give 19 %
   * (common practice, no source). The last background is open, and short ends are left out, so that
   * a real section is within 2 points.
   */
  @Test
  void lightenedShareFollowsSliceAndBackground() {
    Placement placement = place(rows("back", 3, 5, Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT));
    assertEquals(19, placement.sections().get(0).figures().lightenedShare().toPercent(), 2);
    Placement solid = place(rows("back", 3, 0, Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT));
    assertEquals(50, solid.sections().get(0).figures().lightenedShare().toPercent(), 3);
  }

  /** Count goes as 1 / pitch: half the pitch, twice the foils, within 15 % (arithmetic). */
  @Test
  void countGoesAsOneOverPitch() {
    int wide =
        place(rows("back", 4, 12, Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT)).foils().size();
    int narrow =
        place(rows("back", 2, 6, Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT)).foils().size();
    int finest =
        place(rows("back", 1, 3, Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT)).foils().size();
    assertEquals(1, narrow / (2.0 * wide), 0.15);
    assertEquals(1, finest / (2.0 * narrow), 0.15);
  }

  /** Left equals right, and half a head twice is the whole within 15 % (symmetry, arithmetic). */
  @Test
  void halfHeadTwiceIsTheWhole() {
    Zone[] left = {Zone.BACK_UPPER_LEFT, Zone.NAPE_LEFT, Zone.FRONT_SIDE_LEFT, Zone.TOP_LEFT};
    int half = 0;
    int mirrored = 0;
    int whole = 0;
    for (Zone zone : left) {
      half += place(rows("half", 3, 6, zone)).foils().size();
      mirrored += place(rows("half", 3, 6, zone.mirrored())).foils().size();
      whole += place(rows("whole", 3, 6, zone, zone.mirrored())).foils().size();
    }
    assertEquals(half, mirrored);
    assertEquals(1, 2.0 * half / whole, 0.15);
  }

  /**
   * Pivot spacing = distance from the axis x angle: 15 degrees are 7.9, 15.7 and 23.6 mm at 30, 60
   * and 90 mm (arithmetic), exact on a sphere about the axis.
   */
  @Test
  void pivotSpacingIsDistanceTimesAngle() {
    double[][] rows = {{30, 7.9}, {60, 15.7}, {90, 23.6}};
    TriangleMesh sphere = SampleSurfaces.ellipsoid(100, 100, 100, 60);
    for (double[] row : rows) {
      double radius = row[0];
      double pitch = Math.toRadians(15) * radius;
      assertEquals(row[1], pitch, 0.05);
      Family.Turning family =
          new Family.Turning(
              Region.whole(sphere),
              Vector3.UP.times(100),
              Vector3.FRONT,
              Vector3.RIGHT,
              0,
              2 * Math.PI,
              radius);
      List<Vector3> crossings = new ArrayList<>();
      for (int i = 1; i < 20; i++) {
        crossings.add(crossing(family.cut((i - 1) * pitch, i * pitch), sphere, radius));
      }
      for (int i = 1; i < crossings.size(); i++) {
        double a = Math.atan2(crossings.get(i - 1).x(), crossings.get(i - 1).y());
        double b = Math.atan2(crossings.get(i).x(), crossings.get(i).y());
        double turn = (b - a + 4 * Math.PI) % (2 * Math.PI);
        assertEquals(pitch, radius * turn, 1e-9);
      }
    }
  }

  /** Where a parting's upper branch is at a distance from the vertical axis. */
  private static Vector3 crossing(Cut cut, TriangleMesh sphere, double radius) {
    for (Polyline line : cut.lines(Region.whole(sphere))) {
      for (int i = 0; i + 1 < line.size(); i++) {
        Vector3 p = line.points().get(i);
        Vector3 q = line.points().get(i + 1);
        double a = Math.hypot(p.x(), p.y()) - radius;
        double b = Math.hypot(q.x(), q.y()) - radius;
        if (a * b <= 0 && p.z() > 0) {
          return p.lerp(q, a / (a - b));
        }
      }
    }
    throw new AssertionError("no crossing at " + radius);
  }

  /**
   * Zones of a head half as large again: areas grow by the square, counts of rows by the factor.
   */
  @Test
  void aLargerHeadHasLargerZonesAndMoreRows() {
    Head small = head(500);
    Head large = head(600);
    double k = large.around().toMillimetres() / small.around().toMillimetres();
    assertEquals(1.2, k, 1e-3);
    for (Zone zone : Zone.values()) {
      double ratio = large.zone(zone).area() / small.zone(zone).area();
      assertEquals(k * k, ratio, 0.005 * k * k, zone.words());
    }
    assertEquals(k, large.centreLine().length() / small.centreLine().length(), 0.002);
    int few = foils(small);
    int many = foils(large);
    assertTrue(many > few);
    assertEquals(k * k, (double) many / few, 0.15 * k * k);
  }

  private static int foils(Head head) {
    int sum = 0;
    for (Zone zone : List.of(Zone.BACK_UPPER_LEFT, Zone.FRONT_SIDE_LEFT, Zone.TOP_LEFT)) {
      sum +=
          Placer.place(
                  Pattern.of("rows", rows("rows", 2, 4, zone)),
                  head,
                  HairProfile.usual(Length.ofMillimetres(250)),
                  new PlacingSettings(
                      Length.ofMillimetres(30),
                      Length.ofMillimetres(0.8),
                      Length.ofMillimetres(20),
                      PlacingSettings.USUAL.lightening()),
                  NaturalFall.over(head))
              .foils()
              .size();
    }
    return sum;
  }

  private static Head head(double aroundMm) {
    return Head.fit(
            HeadKind.WOMAN,
            foilwright.head.TapeMeasurements.NONE.withAround(Length.ofMillimetres(aroundMm)),
            foilwright.head.HairlineSettings.USUAL,
            foilwright.head.PartSetting.NONE,
            foilwright.head.HeadSettings.USUAL)
        .head()
        .orElseThrow();
  }
}
