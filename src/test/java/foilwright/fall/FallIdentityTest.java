package foilwright.fall;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.document.Documents;
import foilwright.document.GuestDocument;
import foilwright.geometry.Vector3;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.hair.Texture;
import foilwright.head.Csv;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.units.Density;
import foilwright.units.Length;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The fall against closed forms, and what must hold of every head of hair. */
class FallIdentityTest {
  private static final double BALL_MM = 90;
  private static final Head HEAD =
      Head.usual(HeadKind.WOMAN).withPart(PartSetting.of(PartSide.CENTRE));
  private static final Body BODY = Body.of(HEAD);
  private final Body ball = Body.of(p -> p.norm() - BALL_MM, 400, 5);
  private final Body nothing = Body.of(p -> 1000, 400, 100);

  /** So few hairs that they make no coat. */
  private static final HairOnHead BARE =
      HairOnHead.of(
          HEAD,
          HairProfile.usual(Length.ofMillimetres(250))
              .withDensity(Density.ofHairsPerSquareCentimetre(0.01)));

  private static final HairOnHead FULL =
      HairOnHead.of(HEAD, HairProfile.usual(Length.ofMillimetres(250)));
  private static final FallSettings EVEN = FallSettings.USUAL.withUnevenness(0);

  private static Strands one(
      Body body, double step, Vector3 place, Vector3 out, Vector3 comb, double length) {
    return one(body, step, place, out, comb, length, Fall.MEMORY_MM);
  }

  private static Strands one(
      Body body,
      double step,
      Vector3 place,
      Vector3 outward,
      Vector3 comb,
      double length,
      double memory) {
    FallSettings settings = EVEN.withStep(Length.ofMillimetres(step));
    return Fall.of(
        Roots.single(BARE, settings, place, outward, comb, length, false),
        body,
        settings,
        Texture.STRAIGHT,
        memory);
  }

  private static Vector3 point(Strands strands, int i) {
    return new Vector3(strands.x(i), strands.y(i), strands.z(i));
  }

  private static Vector3 last(Strands strands) {
    return point(strands, strands.pointCount() - 1);
  }

  /**
   * A hair that hangs free under a pull of 1, at the angle phi from plumb, turns by dphi / ds = -2
   * sin(phi / 2) / M: tan(phi / 4) = tan(phi0 / 4) exp(-s / M), so dx = sin(phi) ds = -2 M cos(phi
   * / 2) dphi / 2 and its whole reach aside is 2 M sin(phi0 / 2).
   */
  private static double reach(double angle, double memory) {
    return 2 * memory * Math.sin(angle / 2);
  }

  /**
   * A hair on a ball of radius R runs down its meridian as long as it can turn with the ball, 1 / R
   * = 2 sin(phi / 2) / M, leaves it there, short of the equator, and comes to hang at R cos(phi) +
   * 2 M sin(phi / 2): beyond the limp hair's R by M^2 / (2 R) and less. Its height differs from the
   * limp hair's by the arc it did not follow, which is smaller still.
   */
  @Test
  void onABallHairRunsDownItsMeridian() {
    // The ball that hair runs on lies a millimetre over the skin; the coil of straight hair lies on
    // it, at 0 to 0.7 mm, all of it outwards where it hangs. Touching begins within 2 mm, which
    // holds
    // it up to half a millimetre off.
    double over = Strand.LEAST_MM + 0.7 * Texture.STRAIGHT.radiusMm();
    double coil = 0.7 * Texture.STRAIGHT.radiusMm() + 0.1;
    double azimuth = 2.95;
    Vector3 across = new Vector3(Math.sin(azimuth), Math.cos(azimuth), 0);
    for (double memory : new double[] {Fall.MEMORY_MM, 4, 1.5}) {
      // From lower down it leaves before it has come to lie after setting out.
      for (double polar : new double[] {0.5, 0.75, 1.0}) {
        Vector3 out = across.times(Math.sin(polar)).plus(Vector3.UP.times(Math.cos(polar)));
        Vector3 down = across.times(Math.cos(polar)).plus(Vector3.UP.times(-Math.sin(polar)));
        double length = 260 / Texture.STRAIGHT.shortening();
        Strands strands =
            one(ball, 0.25, out.times(BALL_MM), out, down.times(1e-5), length, memory);
        Vector3 end = last(strands);
        double radius = BALL_MM + over;
        double leaves = 2 * Math.asin(memory / (2 * radius));
        String what = "memory " + memory + ", from " + polar;
        assertEquals(
            radius * Math.cos(leaves) + reach(leaves, memory),
            Math.hypot(end.x(), end.y()),
            coil + 0.5,
            "reach, " + what);
        double arc = radius * (Math.PI / 2 - leaves - polar);
        // Free: dz = -cos(phi) ds, s = M ln(tan(phi0 / 4) / tan(phi / 4)).
        double quarter = Math.tan(leaves / 4) * Math.exp(-(260 - arc) / memory);
        double phi = 4 * Math.atan(quarter);
        double fallen = free(phi, memory) - free(leaves, memory);
        double from = radius * Math.sin(leaves);
        assertEquals(from - fallen, end.z(), 1.5, "height, " + what);
        assertEquals(0, end.x() * across.y() - end.y() * across.x(), 0.75, "meridian, " + what);
      }
    }
  }

  /** An antiderivative of cos(phi) ds = -M cos(phi) / (2 sin(phi / 2)) dphi. */
  private static double free(double phi, double memory) {
    return -memory * (Math.log(Math.tan(phi / 4)) + 2 * Math.cos(phi / 2));
  }

  /**
   * With nothing in its way a hair reaches 2 M sin(phi0 / 2) aside and then hangs plumb, and each
   * of its places is that of the closed form to the first order in the step: the error halves.
   */
  @Test
  void hairWithNothingInItsWayHangsByTheClosedForm() {
    double start = Math.PI / 2 + Math.atan(0.24);
    for (double memory : new double[] {Fall.MEMORY_MM, 25}) {
      double[] off = new double[4];
      Vector3[] error = new Vector3[4];
      for (int k = 0; k < off.length; k++) {
        double step = 2 * Math.pow(0.5, k);
        Strands strands = free(step, 300, memory);
        int i = (int) Math.round(24 / step);
        double s = 24 * Texture.STRAIGHT.shortening();
        double phi = 4 * Math.atan(Math.tan(start / 4) * Math.exp(-s / memory));
        double x = reach(start, memory) - reach(phi, memory);
        double z = free(start, memory) - free(phi, memory);
        error[k] = point(strands, i).minus(new Vector3(x, 0, z));
        off[k] = error[k].norm();
        Vector3 end = last(strands);
        assertEquals(reach(start, memory), end.x(), 1.1 * step, "reach, step " + step);
        int last = strands.pointCount() - 1;
        double leans = Math.abs(end.x() - strands.x(last - 10)) / (10 * step);
        assertTrue(leans < 2 * Math.exp(-200 / memory) + 1e-6, "leans " + leans);
      }
      for (int k = 1; k < off.length; k++) {
        assertEquals(2, off[k - 1] / off[k], 0.25, "errors " + Arrays.toString(off));
      }
      // Without what is of the first order hardly anything is left.
      assertEquals(0, error[3].times(2).minus(error[2]).norm(), 0.02);
    }
  }

  /** One hair in free air whose comb does nothing once it has set out. */
  private Strands free(double step, double length, double memory) {
    FallSettings settings = EVEN.withStep(Length.ofMillimetres(step));
    return Fall.of(
        Roots.single(
            BARE, settings, Vector3.ZERO, Vector3.UP, Vector3.RIGHT.times(1e-5), length, false),
        nothing,
        settings,
        Texture.STRAIGHT,
        memory);
  }

  /**
   * On a ball touching begins and ends between steps, so that the first order of hair in free air
   * is kept only by and large: over two halvings of the step what the end moves falls to less than
   * 0.35 (measured 0.13 and 0.26; the first order has 0.25), so that all that is left sums up as a
   * geometric series.
   */
  @Test
  void shorterStepsConvergeOnABall() {
    Vector3 out = new Vector3(0.6, 0, 0.8);
    Vector3 comb = new Vector3(0.5, 0.2, 0);
    double[] steps = {6, 3, 1.5, 0.75, 0.375};
    double[] moved = new double[steps.length - 1];
    for (int k = 0; k < moved.length; k++) {
      moved[k] =
          last(one(ball, steps[k], out.times(BALL_MM), out, comb, 240))
              .distance(last(one(ball, steps[k + 1], out.times(BALL_MM), out, comb, 240)));
    }
    for (int k = 2; k < moved.length; k++) {
      assertTrue(moved[k] < 0.35 * moved[k - 2], Arrays.toString(moved));
    }
    double left = moved[1] + moved[2] + moved[3] + 0.35 / (1 - 0.35) * (moved[2] + moved[3]);
    assertTrue(left < 0.5, "3 mm steps are off by up to " + left + " mm");
  }

  /**
   * Scott and Robbins hung a fibre over a wire with a weight T at either end: its legs hang D =
   * sqrt(8 EI / T) apart. Our hair under a pull of 1 has the memory sqrt(EI / T), so D = 2 sqrt(2)
   * M, and set out level it follows the same curve to the digits they print.
   */
  @Test
  void aHangingHairBendsAsThePublishedFibre() {
    double memory = 50;
    double d = 2 * Math.sqrt(2) * memory;
    Strands coarse = free(0.5, 400, memory);
    Strands fine = free(0.25, 400, memory);
    // Both together are free of the error of the first order.
    Vector3[] curve = new Vector3[coarse.pointCount() - 1];
    int top = 0;
    for (int i = 0; i < curve.length; i++) {
      curve[i] = point(fine, 2 * i).times(2).minus(point(coarse, i));
      top = curve[i].z() > curve[top].z() ? i : top;
    }
    // It sets out a little upwards: the curve begins where it is level.
    double rise = curve[top + 1].z() - curve[top - 1].z();
    double bow = curve[top + 1].z() - 2 * curve[top].z() + curve[top - 1].z();
    double share = -rise / (2 * bow);
    double x0 = curve[top].x() + share * (curve[top + 1].x() - curve[top - 1].x()) / 2;
    double z0 = curve[top].z() - rise * rise / (8 * bow);
    for (Map<String, String> row : Csv.rows("/reference/hair/hanging_fibre.csv")) {
      double x = x0 + d * Double.parseDouble(row.get("x_over_D"));
      double published = Double.parseDouble(row.get("y_over_D"));
      int i = top - 1;
      while (curve[i + 1].x() < x) {
        i++;
      }
      double on = (x - curve[i].x()) / (curve[i + 1].x() - curve[i].x());
      double y = (z0 - curve[i].z() - on * (curve[i + 1].z() - curve[i].z())) / d;
      assertEquals(published, y, 1e-5 + 0.002 * published, row.toString());
    }
  }

  /**
   * The bending length under a hair's own weight, (EI / w)^(1/3), with I = pi d^4 / 64 and w = rho
   * g pi d^2 / 4, is 45 mm for 70 um of 3.89 GPa (Robbins, quoted in a letter of 1998) and 1.32
   * g/cm3 (from memory), 31 mm for a fine hair of 40 um and 64 mm for a coarse one of 120 um. The
   * memory is the same fifth of it for all: hair combed together turns sooner than one hair alone
   * would.
   */
  @Test
  void memoryGrowsWithTheDiameterAsTheBendingLength() {
    double[][] known = {{40, 31.1}, {70, 45.1}, {120, 64.6}};
    for (double[] row : known) {
      double metres = row[0] * 1e-6;
      double weight = 1320 * 9.81 * Math.PI * metres * metres / 4;
      double length = 1000 * Math.cbrt(3.89e9 * Math.PI * Math.pow(metres, 4) / 64 / weight);
      assertEquals(row[1], length, 0.1);
      assertEquals(0.2023, Fall.memoryMm(1000 * metres) / length, 0.0005);
    }
  }

  /**
   * From the third point on, no point of any hair of any guest in any style lies more than 2.5 mm
   * deep, and no more than one in ten thousand below the skin at all: half the grid on which the
   * body is known, where its surface is hollow or sharp.
   */
  @ParameterizedTest
  @EnumSource(HairStyle.class)
  void noHairPassesThroughTheSkin(HairStyle style) {
    for (GuestHair guest : guests()) {
      Strands strands =
          Fall.of(
              guest.hair(),
              guest.body(),
              FallSettings.USUAL.withHairs(2000).withStyle(style),
              guest.hair().hair().texture(),
              Watch.NOBODY);
      double deepest = 0;
      int below = 0;
      for (int h = 0; h < strands.count(); h++) {
        for (int i = strands.start(h) + 3; i < strands.start(h + 1); i++) {
          double d = guest.body().distance(strands.x(i), strands.y(i), strands.z(i));
          deepest = Math.min(deepest, d);
          below += d < 0 ? 1 : 0;
        }
      }
      String what = guest.name() + " " + style.words();
      assertTrue(deepest > -2.5, what + " goes " + -deepest + " mm deep");
      assertTrue(below <= 1e-4 * strands.pointCount(), what + ": " + below + " points below");
    }
  }

  private record GuestHair(String name, HairOnHead hair, Body body) {}

  private static final List<GuestHair> GUESTS = new ArrayList<>();

  private static synchronized List<GuestHair> guests() {
    if (GUESTS.isEmpty()) {
      for (String name : List.of("03", "07", "12", "15", "18", "21", "30")) {
        GuestDocument guest =
            Documents.readGuest(Path.of("shared/guests/guest-" + name + ".json"))
                .value()
                .orElseThrow();
        Head head = guest.fitHead(HeadSettings.USUAL).head().orElseThrow();
        GUESTS.add(new GuestHair(name, HairOnHead.of(head, guest.hair()), Body.of(head)));
      }
    }
    return GUESTS;
  }

  /** Without unevenness a hair and the one mirrored to it fall alike to rounding. */
  @Test
  void mirroredHairFallsMirrored() {
    for (HairStyle style : HairStyle.values()) {
      FallSettings settings = EVEN.withStyle(style);
      for (double azimuth : new double[] {0.4, 1.2, 2.5}) {
        Vector3 place =
            HEAD.nearestOnScalp(new Vector3(70 * Math.sin(azimuth), 70 * Math.cos(azimuth), 90))
                .point();
        Vector3 out = HEAD.form().normal(place);
        Vector3 comb = out.cross(new Vector3(0.2, 0.9, 0.1)).unit();
        float[] here =
            Fall.of(
                    Roots.single(FULL, settings, place, out, comb, 260, place.x() > 0),
                    BODY,
                    settings,
                    Texture.STRAIGHT,
                    Fall.MEMORY_MM)
                .points();
        float[] there =
            Fall.of(
                    Roots.single(
                        FULL,
                        settings,
                        place.mirrored(),
                        out.mirrored(),
                        comb.mirrored(),
                        260,
                        place.x() < 0),
                    BODY,
                    settings,
                    Texture.STRAIGHT,
                    Fall.MEMORY_MM)
                .points();
        // But for the coil, half a millimetre wide, which winds one way on both sides.
        for (int i = 0; i < here.length; i += 3) {
          assertEquals(here[i], -there[i], 1.05, style.words());
          assertEquals(here[i + 1], there[i + 1], 1.05, style.words());
          assertEquals(here[i + 2], there[i + 2], 1.05, style.words());
        }
      }
    }
  }

  /** Means over uneven hair agree within 3 sigma, hairs of a clump of fifty counting as one. */
  @Test
  void leftAndRightHairFallAlikeOnAverage() {
    Strands strands =
        Fall.of(FULL, BODY, FallSettings.USUAL.withHairs(20_000), Texture.STRAIGHT, Watch.NOBODY);
    double[][] sums = new double[2][7];
    for (int h = 0; h < strands.count(); h++) {
      int end = strands.start(h + 1) - 1;
      double[] sum = sums[strands.x(strands.start(h)) > 0 ? 1 : 0];
      double[] tip = {Math.abs(strands.x(end)), strands.y(end), strands.z(end)};
      sum[0]++;
      for (int c = 0; c < 3; c++) {
        sum[1 + c] += tip[c];
        sum[4 + c] += tip[c] * tip[c];
      }
    }
    for (int c = 0; c < 3; c++) {
      double left = sums[0][1 + c] / sums[0][0];
      double right = sums[1][1 + c] / sums[1][0];
      double variance = sums[0][4 + c] / sums[0][0] - left * left;
      double clumps = strands.count() / 100.0;
      assertEquals(left, right, 3 * Math.sqrt(2 * variance / clumps), "axis " + c);
    }
  }

  @Test
  void eachHairHasItsLength() {
    Strands strands = Fall.of(FULL, BODY, EVEN.withHairs(2000), Texture.STRAIGHT, Watch.NOBODY);
    for (int h = 0; h < strands.count(); h += 7) {
      double length = 0;
      for (int i = strands.start(h) + 1; i < strands.start(h + 1); i++) {
        length +=
            Math.sqrt(
                Math.pow(strands.x(i) - strands.x(i - 1), 2)
                    + Math.pow(strands.y(i) - strands.y(i - 1), 2)
                    + Math.pow(strands.z(i) - strands.z(i - 1), 2));
      }
      double wanted = strands.roots().lengthMm(h);
      assertEquals(wanted, length, 0.03 * wanted + 1);
    }
  }

  @Test
  void theSameSeedGivesTheSameHairOnOneProcessorOrTwo() {
    FallSettings settings = FallSettings.USUAL.withHairs(1500);
    float[] first = Fall.of(FULL, BODY, settings, Texture.WAVED, Watch.NOBODY).points();
    ForkJoinPool alone = new ForkJoinPool(1);
    try {
      float[] second =
          alone
              .submit(() -> Fall.of(FULL, BODY, settings, Texture.WAVED, Watch.NOBODY).points())
              .join();
      assertArrayEquals(first, second);
    } finally {
      alone.shutdown();
    }
    float[] other = Fall.of(FULL, BODY, settings.withSeed(2), Texture.WAVED, Watch.NOBODY).points();
    assertTrue(first.length != other.length || first[3000] != other[3000]);
  }

  @Test
  void aWatcherCanStopIt() {
    assertThrows(
        CancellationException.class,
        () ->
            Fall.of(
                FULL,
                BODY,
                FallSettings.USUAL.withHairs(3000),
                Texture.STRAIGHT,
                share -> share < 0.2));
  }

  @Test
  void rootsAreSpreadByDensity() {
    Roots roots = Roots.of(FULL, FallSettings.USUAL.withHairs(20_000));
    double left = 0;
    for (int i = 0; i < roots.count(); i++) {
      left += roots.point(i).point().x() < 0 ? 1 : 0;
    }
    assertEquals(0.5, left / roots.count(), 0.005);
    assertEquals(FULL.hairs(HEAD.scalp()), roots.count() * roots.each(), 1);
  }

  /** Zone by zone, samples are the integral's share to 1 %, zone factors and all. */
  @Test
  void samplesAgreeWithTheIntegralOfDensity() {
    HairOnHead uneven =
        HairOnHead.of(
            HEAD,
            HairProfile.usual(Length.ofMillimetres(250))
                .withZoneFactors(Map.of(Zone.CROWN, 1.5, Zone.NAPE_LEFT, 0.5, Zone.FRINGE, 0.8)));
    for (HairOnHead hair : List.of(FULL, uneven)) {
      Roots roots = Roots.of(hair, FallSettings.USUAL.withHairs(100_000));
      Map<Zone, Integer> counted = new EnumMap<>(Zone.class);
      for (int i = 0; i < roots.count(); i++) {
        counted.merge(HEAD.zoneAt(roots.point(i)), 1, Integer::sum);
      }
      hair.hairsByZone(HEAD.scalp())
          .forEach(
              (zone, hairs) ->
                  assertEquals(
                      hairs, counted.get(zone) * roots.each(), 0.01 * hairs, zone.words()));
    }
  }
}
