package foilwright.head;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Zone;
import foilwright.geometry.Vector3;
import foilwright.problem.Problem;
import foilwright.problem.Severity;
import foilwright.units.Length;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class TapeFitIdentityTest {
  private static TapeFit.Result solve(TapeMeasurements tapes) {
    return TapeFit.solve(HeadKind.WOMAN, NapeHeight.MIDDLE, tapes);
  }

  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  private static TapeMeasurements readAll(TapeFit.Solution solution) {
    TapeMeasurements tapes = TapeMeasurements.NONE;
    for (Tape tape : Tape.values()) {
      tapes = tape.with(tapes, solution.read(tape));
    }
    return tapes;
  }

  @Test
  void tapesOfWhatASurfaceMeasuresReturnTheSurface() {
    Random random = new Random(21);
    for (int i = 0; i < 20; i++) {
      double size = 0.6 + random.nextDouble();
      Vector3 factors =
          new Vector3(
              size * (0.95 + 0.1 * random.nextDouble()),
              size * (0.95 + 0.1 * random.nextDouble()),
              size * (0.95 + 0.1 * random.nextDouble()));
      TapeFit.Solution made =
          new TapeFit.Solution(
              HeadForm.of(Template.SURFACE, factors),
              Template.FRONT_RAD + 0.1 * random.nextGaussian(),
              Template.napeRad(NapeHeight.MIDDLE) + 0.03 * random.nextGaussian());
      TapeFit.Solution found = solve(readAll(made)).solution().orElseThrow();
      assertEquals(0, found.form().factors().distance(factors), 1e-7);
      assertEquals(made.frontRad(), found.frontRad(), 1e-7);
      assertEquals(made.napeRad(), found.napeRad(), 1e-7);
    }
  }

  @Test
  void everyGivenTapeIsMetAndMissingOnesKeepProportion() {
    List<TapeMeasurements> cases =
        List.of(
            TapeMeasurements.NONE.withAround(mm(561)),
            TapeMeasurements.NONE.withEarToEar(mm(360)),
            TapeMeasurements.NONE.withFrontToBack(mm(350)),
            TapeMeasurements.NONE.withAround(mm(580)).withEarToEar(mm(345)),
            TapeMeasurements.NONE.withAround(mm(540)).withFrontToBack(mm(340)),
            TapeMeasurements.NONE.withEarToEar(mm(330)).withFrontToBack(mm(325)),
            TapeMeasurements.NONE.withNapeDepth(mm(100)).withFrontHairlineHeight(mm(50)),
            TapeMeasurements.NONE
                .withAround(mm(570))
                .withNapeDepth(mm(80))
                .withFrontToBack(mm(330)),
            TapeMeasurements.NONE
                .withAround(mm(565))
                .withEarToEar(mm(340))
                .withFrontToBack(mm(345))
                .withFrontHairlineHeight(mm(55))
                .withNapeDepth(mm(95)));
    for (TapeMeasurements tapes : cases) {
      TapeFit.Solution found = solve(tapes).solution().orElseThrow();
      for (Tape tape : Tape.values()) {
        tape.in(tapes)
            .ifPresent(
                given -> assertEquals(given.toMillimetres(), found.read(tape), 1e-5, tape.words()));
      }
    }
  }

  @Test
  void oneTapeGivesALargerHeadNotAFlatterOne() {
    Vector3 usual = Template.factors(HeadKind.WOMAN);
    for (Tape tape : List.of(Tape.AROUND, Tape.EAR_TO_EAR, Tape.FRONT_TO_BACK)) {
      double before = solve(TapeMeasurements.NONE).solution().orElseThrow().read(tape);
      Vector3 after =
          solve(tape.with(TapeMeasurements.NONE, 1.08 * before))
              .solution()
              .orElseThrow()
              .form()
              .factors();
      assertEquals(0, after.distance(usual.times(1.08)), 1e-8, tape.words());
    }
  }

  @Test
  void twoTapesStayAsNearToOneFactorAsTheyCan() {
    TapeMeasurements tapes = TapeMeasurements.NONE.withAround(mm(570)).withEarToEar(mm(335));
    TapeFit.Solution found = solve(tapes).solution().orElseThrow();
    double here = apart(found.form().factors());
    // Along the curve of heads that meet both tapes, the third one leads only farther away.
    double frontToBack = found.read(Tape.FRONT_TO_BACK);
    for (double step : new double[] {-6, -3, -1, 1, 3, 6}) {
      TapeFit.Solution other =
          solve(tapes.withFrontToBack(mm(frontToBack + step))).solution().orElseThrow();
      assertTrue(apart(other.form().factors()) > here);
    }
  }

  /** Sum of squared deviations of the logarithms from their mean, relative to the default head. */
  private static double apart(Vector3 factors) {
    Vector3 usual = Template.factors(HeadKind.WOMAN);
    double x = Math.log(factors.x() / usual.x());
    double y = Math.log(factors.y() / usual.y());
    double z = Math.log(factors.z() / usual.z());
    double mean = (x + y + z) / 3;
    return (x - mean) * (x - mean) + (y - mean) * (y - mean) + (z - mean) * (z - mean);
  }

  private static final Pattern RANGE = Pattern.compile("(\\d+) to (\\d+) mm");

  @Test
  void aContradictionNamesTheTapeAndARangeThatIsAccepted() {
    TapeMeasurements tapes = TapeMeasurements.NONE.withAround(mm(561)).withEarToEar(mm(430));
    TapeFit.Result result = solve(tapes);
    assertTrue(result.solution().isEmpty());
    Problem problem = result.problems().get(0);
    assertEquals(Severity.ERROR, problem.severity());
    assertEquals("tapes-contradict", problem.code());
    assertEquals("earToEar", problem.path());
    assertTrue(problem.message().contains("430 mm") && problem.message().contains("around 561 mm"));
    acceptedJustInside(problem, tapes, Tape.EAR_TO_EAR);
  }

  @Test
  void ofThreeTapesTheOddOneIsNamed() {
    for (Tape odd : List.of(Tape.AROUND, Tape.EAR_TO_EAR, Tape.FRONT_TO_BACK)) {
      TapeMeasurements tapes = readAll(solve(TapeMeasurements.NONE).solution().orElseThrow());
      tapes = odd.with(tapes, 1.3 * odd.in(tapes).orElseThrow().toMillimetres());
      Problem problem = solve(tapes).problems().get(0);
      assertEquals(odd.key(), problem.path());
      acceptedJustInside(problem, tapes, odd);
    }
  }

  private static void acceptedJustInside(Problem problem, TapeMeasurements tapes, Tape tape) {
    Matcher range = RANGE.matcher(problem.cure());
    assertTrue(range.find(), problem.cure());
    for (int side = 1; side <= 2; side++) {
      double bound = Double.parseDouble(range.group(side));
      double outwards = side == 1 ? -1.5 : 1.5;
      assertTrue(solve(tape.with(tapes, bound)).solution().isPresent(), "at " + bound);
      assertFalse(solve(tape.with(tapes, bound + outwards)).solution().isPresent());
    }
  }

  @Test
  void tapesThatAllDisagreeAreStillExplained() {
    TapeFit.Result result =
        solve(
            TapeMeasurements.NONE
                .withAround(mm(561))
                .withEarToEar(mm(700))
                .withFrontToBack(mm(150)));
    assertTrue(result.solution().isEmpty());
    assertFalse(result.problems().isEmpty());
  }

  @Test
  void aHairlineOffTheScalpIsAProblemWithTheRangeThatWouldDo() {
    for (Tape tape : List.of(Tape.FRONT_HAIRLINE_HEIGHT, Tape.NAPE_DEPTH)) {
      for (double value : new double[] {10, 160, 900}) {
        TapeMeasurements tapes = tape.with(TapeMeasurements.NONE, value);
        Problem problem = solve(tapes).problems().get(0);
        assertEquals("tape-out-of-range", problem.code());
        acceptedJustInside(problem, tapes, tape);
      }
    }
  }

  @Test
  void aHeadScaledByAFactorHasItsLengthsAndTheSquareOfItsAreas() {
    HairlineSettings even = new HairlineSettings(Length.ZERO, NapeHeight.MIDDLE);
    for (double k : new double[] {0.25, 2.5}) {
      Head one = fitted(550, even, 2.5);
      Head other = fitted(550 * k, even, Math.max(1, Math.min(10, 2.5 * k)));
      for (Tape tape : Tape.values()) {
        assertEquals(
            k, other.reading(tape).toMillimetres() / one.reading(tape).toMillimetres(), 1e-6);
      }
      for (Zone zone : Zone.values()) {
        assertEquals(k * k, other.zone(zone).area() / one.zone(zone).area(), 0.005 * k * k);
      }
    }
  }

  private static Head fitted(double aroundMm, HairlineSettings hairline, double edgeMm) {
    return Head.fit(
            HeadKind.WOMAN,
            TapeMeasurements.NONE.withAround(mm(aroundMm)),
            hairline,
            PartSetting.NONE,
            HeadSettings.USUAL.withMeshEdge(mm(edgeMm)))
        .head()
        .orElseThrow();
  }

  @Test
  void whatNoTapeGaveIsListedAsAssumed() {
    Head head =
        Head.fit(
                HeadKind.MAN,
                TapeMeasurements.NONE.withAround(mm(570)).withNapeDepth(mm(90)),
                HairlineSettings.USUAL,
                PartSetting.NONE,
                HeadSettings.USUAL)
            .head()
            .orElseThrow();
    assertEquals(
        List.of(Tape.FRONT_TO_BACK, Tape.EAR_TO_EAR, Tape.FRONT_HAIRLINE_HEIGHT),
        head.assumed().stream().map(TapeFit.Assumed::tape).toList());
    assertTrue(head.assumed().get(1).words().matches("ear to ear 3\\d\\d mm \\(assumed\\)"));
    assertEquals(570, head.around().toMillimetres(), 1e-5);
  }
}
