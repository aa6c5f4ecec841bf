package foilwright.service.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.placement.Placement;
import foilwright.service.Tolerances;
import foilwright.sheet.SamplePlacements;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Work with known errors is marked with those errors. */
class MarkingIdentityTest {
  private static final Placement PLAN = SamplePlacements.diagonals();

  private static Attempt work(double slice, double perFoil) {
    List<Measured> foils = new ArrayList<>();
    PLAN.foils()
        .forEach(
            foil -> {
              double planned = Marking.planned(foil, Criterion.SLICE).orElseThrow();
              foils.add(
                  Measured.at(foil.number())
                      .with(
                          Criterion.SLICE,
                          BigDecimal.valueOf(planned + slice + perFoil * foil.number())
                                  .toPlainString()
                              + " mm"));
            });
    return new Attempt("learner-01", foils, OptionalInt.empty(), OptionalInt.empty());
  }

  @Test
  void workAsPlannedHasNoError() {
    MarkedAttempt marked = Marking.mark(PLAN, Tolerances.USUAL, work(0, 0));
    assertEquals(PLAN.foils().size(), marked.within());
    marked.scores().forEach(score -> assertEquals(0, score.error(), 1e-9));
  }

  @Test
  void anErrorKeepsItsSignAndTheLimitPasses() {
    assertTrue(new Score(OptionalInt.of(1), Criterion.SLICE, 6, 7, 1).isWithin());
    assertFalse(new Score(OptionalInt.of(1), Criterion.SLICE, 6, 4.9, 1).isWithin());
    MarkedAttempt thick = Marking.mark(PLAN, Tolerances.USUAL, work(1.5, 0));
    assertEquals(0, thick.within());
    thick.scores().forEach(score -> assertEquals(1.5, score.error(), 1e-9));
  }

  @Test
  void aClassWhoseSlicesGrowIsToldSo() {
    List<MarkedAttempt> marked =
        List.of(
            Marking.mark(PLAN, Tolerances.USUAL, work(0.5, 0.08)),
            Marking.mark(PLAN, Tolerances.USUAL, work(-0.5, 0.12)));
    List<Trend> trends = Marking.trends(marked);
    assertEquals(1, trends.size());
    Trend trend = trends.get(0);
    assertEquals(2 * PLAN.foils().size(), trend.values());
    assertEquals(1.0, trend.perTenFoils(), 1e-9);
    double middle = (PLAN.foils().size() + 1) / 2.0;
    assertEquals(0.1 * middle, trend.meanError(), 1e-9);
    assertTrue(trend.words().contains("slices grow by 1.0 mm every ten foils"), trend.words());
  }

  @Test
  void evenErrorsAreSteady() {
    Trend trend =
        Marking.trends(List.of(Marking.mark(PLAN, Tolerances.USUAL, work(-0.7, 0)))).get(0);
    assertEquals(0, trend.perTenFoils(), 1e-9);
    assertTrue(trend.words().contains("steady"), trend.words());
  }

  @Test
  void sidesAreCountedAgainstThePlan() {
    Attempt attempt = new Attempt("learner-02", List.of(), OptionalInt.of(10), OptionalInt.of(14));
    Score score = Marking.mark(PLAN, Tolerances.USUAL, attempt).scores().get(0);
    assertEquals(4, score.error() + score.planned(), 1e-9);
    assertEquals(Criterion.FOILS_BETWEEN_SIDES, score.criterion());
  }

  @Test
  void foilsThatThePlanDoesNotHaveAreNamed() {
    Attempt attempt =
        new Attempt(
            "learner-02",
            List.of(Measured.at(999).with(Criterion.ANGLE, "10 deg")),
            OptionalInt.empty(),
            OptionalInt.empty());
    assertEquals(List.of(999), Marking.mark(PLAN, Tolerances.USUAL, attempt).unknown());
  }

  @Test
  void learnersAreNumbers() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Attempt("third seat", List.of(), OptionalInt.empty(), OptionalInt.empty()));
  }
}
