package foilwright.hair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.SurfacePoint;
import foilwright.head.Head;
import foilwright.head.HeadForm;
import foilwright.head.HeadKind;
import foilwright.head.PartSetting;
import foilwright.units.Angle;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Lengths of each kind of cut against ones found without mesh and marching: ways over the head are
 * chords laid onto its form from the centre, which on so round a head exceed the shortest by less
 * than 0.5 %, and the least of them over all places where hair may leave the head is the length.
 */
class CutLengthsIdentityTest {
  private static final Head HEAD =
      Head.usual(HeadKind.WOMAN).withPart(PartSetting.of(PartSide.CENTRE));
  private static final HeadForm FORM = HEAD.form();
  private static final Length AT_NAPE = Length.ofMillimetres(150);

  /** Where hair that is combed down leaves the head: normals 15 degrees above level. */
  private static final double LEAVES_DEGREES = 15;

  private static HairOnHead hair(Haircut cut) {
    return HairOnHead.of(HEAD, HairProfile.usual(Length.ofMillimetres(200)).withCut(cut));
  }

  private static HairOnHead hair(CutShape shape) {
    return hair(Haircut.of("cut", shape));
  }

  private static List<Vector3> places() {
    List<Vector3> places = new ArrayList<>();
    for (int v = 5; v < HEAD.mesh().vertexCount(); v += 331) {
      Vector3 p = HEAD.mesh().vertex(v);
      if (Math.abs(p.x()) > 6) {
        places.add(p);
      }
    }
    assertTrue(places.size() > 20);
    return places;
  }

  private static double at(HairOnHead hair, Vector3 place) {
    return HEAD.nearestOnScalp(place).valueOf(hair.lengths());
  }

  /** Way over the head from one place to another. */
  private static double over(Vector3 from, Vector3 to) {
    int pieces = 40;
    double length = 0;
    Vector3 before = from;
    for (int i = 1; i <= pieces; i++) {
      double t = i / (double) pieces;
      Vector3 next = FORM.surfacePoint(from.times(1 - t).plus(to.times(t)));
      length += next.distance(before);
      before = next;
    }
    return length;
  }

  /** The line round the head at which combed hair leaves it, on one side. */
  private static List<Vector3> leaving(boolean right) {
    List<Vector3> line = new ArrayList<>();
    for (double degrees = 0.5; degrees < 180; degrees += 1) {
      double azimuth = Math.toRadians(degrees) * (right ? 1 : -1);
      double low = Math.toRadians(-40);
      double high = Math.toRadians(85);
      for (int k = 0; k < 40; k++) {
        double middle = (low + high) / 2;
        boolean above =
            FORM.normalElevation(towards(azimuth, middle)) > Math.toRadians(LEAVES_DEGREES);
        low = above ? low : middle;
        high = above ? middle : high;
      }
      line.add(FORM.surfacePoint(towards(azimuth, low)));
    }
    return line;
  }

  private static Vector3 towards(double azimuth, double elevation) {
    double level = Math.cos(elevation);
    return FORM.centre()
        .plus(
            new Vector3(
                100 * level * Math.sin(azimuth),
                100 * level * Math.cos(azimuth),
                100 * Math.sin(elevation)));
  }

  private static double down(Vector3 place) {
    double line = HEAD.landmark(Landmark.NAPE_HAIRLINE).z() - AT_NAPE.toMillimetres();
    if (FORM.normalElevation(place) <= Math.toRadians(LEAVES_DEGREES)) {
      return place.z() - line;
    }
    return leaving(place.x() > 0).stream()
        // Only over scalp: what leads over the forehead is no way that hair is combed.
        .filter(q -> HEAD.nearestOnScalp(q).point().distance(q) < 2)
        .mapToDouble(q -> over(place, q) + q.z() - line)
        .min()
        .orElseThrow();
  }

  @Test
  void oneLengthIsTheShortestWayDown() {
    HairOnHead hair = hair(new CutShape.OneLength(AT_NAPE));
    for (Vector3 place : places()) {
      double wanted = down(place);
      assertEquals(wanted, at(hair, place), 0.012 * wanted, place.toString());
    }
  }

  /** Held at 45 degrees, what is longer than at the nape is so by cos 45 of what one length is. */
  @Test
  void graduatedLeavesCosineOfWhatOneLengthDoes() {
    HairOnHead hair = hair(new CutShape.Graduated(AT_NAPE, Angle.ofDegrees(45)));
    for (Vector3 place : places()) {
      double wanted = Math.max(3, 150 + (down(place) - 150) * Math.sqrt(0.5));
      assertEquals(wanted, at(hair, place), 0.012 * wanted, place.toString());
    }
  }

  @Test
  void uniformLayersAreTheSameEverywhere() {
    HairOnHead hair = hair(new CutShape.UniformLayers(AT_NAPE));
    places().forEach(place -> assertEquals(150, at(hair, place), 1e-9));
  }

  /** To one point above the apex: straight where nothing is between, else tight over the head. */
  @Test
  void longLayersReachOnePoint() {
    HairOnHead hair = hair(new CutShape.LongLayers(AT_NAPE));
    Vector3 point = HEAD.landmark(Landmark.APEX).plus(Vector3.UP.times(150));
    List<Vector3> free = new ArrayList<>();
    for (int v = 0; v < HEAD.mesh().vertexCount(); v += 3) {
      Vector3 q = HEAD.mesh().vertex(v);
      if (point.minus(q).dot(FORM.normal(q)) >= 0) {
        free.add(q);
      }
    }
    int straight = 0;
    for (Vector3 place : places()) {
      boolean sees = point.minus(place).dot(FORM.normal(place)) >= 0;
      straight += sees ? 1 : 0;
      double wanted =
          sees
              ? place.distance(point)
              : free.stream()
                  .mapToDouble(q -> over(place, q) + q.distance(point))
                  .min()
                  .orElseThrow();
      assertEquals(wanted, at(hair, place), 0.012 * wanted, place.toString());
    }
    assertTrue(straight > 5 && straight < places().size() - 5, straight + " straight");
  }

  /**
   * Along the front hairline a frame runs from its shortest on the centre line to its longest at
   * 0.4 of the arc from ear to ear, and shortens nothing behind its depth and fade.
   */
  @Test
  void aFaceFrameIsALineFromShortToLong() {
    Haircut cut =
        Haircut.of("cut", new CutShape.UniformLayers(Length.ofMillimetres(400)))
            .withFrame(
                new Haircut.FaceFrame(
                    Length.ofMillimetres(120),
                    Length.ofMillimetres(300),
                    Haircut.FaceFrame.USUAL_DEPTH));
    HairOnHead hair = hair(cut);
    double end = 0.4 * HEAD.earToEar().toMillimetres();
    int checked = 0;
    for (double arc = 0; arc < HEAD.hairline().length(); arc += 9) {
      Vector3 place = HEAD.hairline().at(arc);
      if (place.y() < 40) {
        continue;
      }
      double aside = Double.POSITIVE_INFINITY;
      for (double s = 0; s < HEAD.centreLine().length(); s += 2) {
        aside = Math.min(aside, over(place, HEAD.centreLine().at(s)));
      }
      double wanted = 120 + 180 * Math.min(1, aside / end);
      // Over the scalp it is up to 5 % farther than over the bare recession.
      assertEquals(wanted, at(hair, place), 1 + 0.05 * (wanted - 120), place.toString());
      checked++;
    }
    assertTrue(checked > 8, checked + " places");
    assertEquals(400, at(hair, HEAD.landmark(Landmark.APEX)), 1e-9);
  }

  /**
   * In the middle of a zone, farther than the blend from any other, a table's length is as typed.
   */
  @Test
  void aTableGivesWhatWasTyped() {
    Lengths table =
        Lengths.of(
            Length.ofMillimetres(200),
            Map.of(
                Zone.NAPE_LEFT, Length.ofMillimetres(50),
                Zone.CROWN, Length.ofMillimetres(320)));
    HairOnHead hair =
        HairOnHead.of(HEAD, HairProfile.usual(Length.ofMillimetres(200)).withLengths(table));
    ScalarField lengths = hair.lengths();
    Map<Zone, Double> most = new EnumMap<>(Zone.class);
    for (int v = 0; v < HEAD.mesh().vertexCount(); v++) {
      SurfacePoint at = HEAD.nearestOnScalp(HEAD.mesh().vertex(v));
      Zone zone = HEAD.zoneAt(at);
      double off = Math.abs(lengths.at(v) - table.in(zone).toMillimetres());
      most.merge(zone, off, Math::min);
    }
    most.forEach((zone, off) -> assertEquals(0, off, 3, zone.words()));
  }
}
