package foilwright.service;

import static foilwright.service.ServiceSamples.always;
import static foilwright.service.ServiceSamples.pace;
import static foilwright.service.ServiceSamples.placement;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.units.Length;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PlacingTimeIdentityTest {
  private static final double NORMAL_90 = 1.2815515655446004;

  @Test
  void oneFoilIsTheSumOfItsEntries() {
    PaceProfile pace =
        pace(
            Share.ZERO,
            Map.of(
                PaceEntry.FOIL, ThreePoint.ofMinutes(0.1, 0.2, 0.4),
                PaceEntry.PER_CENTIMETRE_OF_PARTING, ThreePoint.ofMinutes(0.01, 0.02, 0.03),
                PaceEntry.PER_PICK, ThreePoint.ofMinutes(0.01, 0.02, 0.02),
                PaceEntry.PER_CENTIMETRE_OF_HAIR, ThreePoint.ofMinutes(0.001, 0.002, 0.01)));
    ThreePoint time = pace.placing(Length.ofMillimetres(100), 12.5, Length.ofMillimetres(250));
    assertEquals(0.1 + 0.1 + 0.125 + 0.025, time.quick().toMinutes(), 1e-12);
    assertEquals(0.2 + 0.2 + 0.25 + 0.05, time.usual().toMinutes(), 1e-12);
    assertEquals(0.4 + 0.3 + 0.25 + 0.25, time.slow().toMinutes(), 1e-12);
  }

  /** Only the pace of the day: the deviation is its share of the mean, however many foils. */
  @Test
  void onlyCommonSpread() {
    PaceProfile pace = pace(Share.ofPercent(12), Map.of(PaceEntry.FOIL, always(1.2)));
    for (int foils : new int[] {1, 30, 80}) {
      TimeEstimate total = PlacingTime.of(placement(1, foils), pace).total();
      double mean = 1.2 * foils;
      assertEquals(mean, total.mean().toMinutes(), 1e-9);
      assertEquals(0.12 * mean, total.deviation().toMinutes(), 1e-9);
      assertEquals(mean, total.p50().toMinutes(), 1e-9);
      assertEquals(mean * (1 + 0.12 * NORMAL_90), total.p90().toMinutes(), 1e-9);
      assertEquals(mean, total.quick().toMinutes(), 1e-9);
      assertEquals(mean, total.slow().toMinutes(), 1e-9);
    }
  }

  /** Only independent spread: the deviation grows with the root of the number of foils. */
  @Test
  void onlyIndependentSpread() {
    PaceProfile pace =
        pace(Share.ZERO, Map.of(PaceEntry.FOIL, ThreePoint.ofMinutes(0.75, 1, 1.25)));
    TimeEstimate total = PlacingTime.of(placement(4, 20), pace).total();
    assertEquals(80, total.mean().toMinutes(), 1e-9);
    assertEquals(Math.sqrt(80) * 0.5 / 6, total.deviation().toMinutes(), 1e-9);
    assertEquals(80 + NORMAL_90 * Math.sqrt(80) * 0.5 / 6, total.p90().toMinutes(), 1e-9);
    assertTrue(total.p90().minus(total.p50()).toMinutes() < 1, "80 foils differ by a minute only");
  }

  /** Neither spread: one number throughout. */
  @Test
  void withoutSpreadThereIsOneNumber() {
    TimeEstimate total =
        PlacingTime.of(placement(2, 5), pace(Share.ZERO, Map.of(PaceEntry.FOIL, always(1))))
            .total();
    assertEquals(10, total.p50().toMinutes(), 1e-12);
    assertEquals(10, total.p90().toMinutes(), 1e-12);
  }

  @Test
  void eachSectionIsSetOnceAndSectionsAddUp() {
    PaceProfile pace =
        pace(
            Share.ofPercent(12),
            Map.of(PaceEntry.SET_SECTION, always(2), PaceEntry.FOIL, always(1)));
    PlacingTime time = PlacingTime.of(placement(3, 4), pace);
    assertEquals(3 * (2 + 4), time.total().mean().toMinutes(), 1e-9);
    assertEquals(12, time.foils().size());
    assertEquals(
        time.total().mean().toMinutes(),
        time.sections().stream().mapToDouble(s -> s.mean().toMinutes()).sum(),
        1e-9);
  }

  @Test
  void aPlacementWithoutFoilsTakesNoTime() {
    PaceProfile pace = pace(Share.ofPercent(12), Map.of(PaceEntry.SET_SECTION, always(2)));
    assertEquals(Minutes.ZERO, PlacingTime.of(placement(1, 0), pace).total().p90());
  }

  /**
   * The closed form against a simulated sum of 8 foils (seed 20260101): mean, deviation, p50 and
   * p90 within 0.5 %.
   */
  @Test
  void closedFormAgreesWithASimulatedDay() {
    long seed = 20260101;
    Random random = new Random(seed);
    ThreePoint foil = ThreePoint.ofMinutes(0.6, 1, 2);
    TimeEstimate closed =
        TimeEstimate.ofSum(Collections.nCopies(8, foil), List.of(), Share.ofPercent(12));
    int days = 400_000;
    double[] totals = new double[days];
    for (int d = 0; d < days; d++) {
      double sum = 0;
      for (int i = 0; i < 8; i++) {
        sum += foil.mean().toMinutes() + foil.deviation().toMinutes() * random.nextGaussian();
      }
      totals[d] = sum * (1 + 0.12 * random.nextGaussian());
    }
    Arrays.sort(totals);
    double mean = Arrays.stream(totals).average().orElseThrow();
    double sd =
        Math.sqrt(Arrays.stream(totals).map(t -> (t - mean) * (t - mean)).sum() / (days - 1));
    String said = "seed " + seed;
    assertEquals(1, closed.mean().toMinutes() / mean, 0.005, said);
    assertEquals(1, closed.deviation().toMinutes() / sd, 0.005, said);
    assertEquals(1, closed.p50().toMinutes() / totals[days / 2], 0.005, said);
    assertEquals(1, closed.p90().toMinutes() / totals[days / 10 * 9], 0.005, said);
  }

  /** Waiting for chemistry does not stretch with the pace of the day. */
  @Test
  void waitsKeepOutOfTheDayFactor() {
    TimeEstimate total =
        TimeEstimate.ofSum(List.of(always(60)), List.of(always(30)), Share.ofPercent(10));
    assertEquals(90, total.mean().toMinutes(), 1e-9);
    assertEquals(6, total.deviation().toMinutes(), 1e-9);
  }
}
