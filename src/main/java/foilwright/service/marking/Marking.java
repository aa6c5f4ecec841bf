package foilwright.service.marking;

import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.service.Tolerances;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Compares practice work with a plan. */
public final class Marking {
  private static final List<Criterion> AT_A_FOIL =
      List.of(Criterion.SLICE, Criterion.BACKGROUND, Criterion.ANGLE, Criterion.STRAIGHT);

  private Marking() {}

  /** The criteria that are measured at a foil, in the order of the sheet. */
  public static List<Criterion> criteriaAtAFoil() {
    return AT_A_FOIL;
  }

  /**
   * What the plan says of a foil, in the criterion's unit: the slice in the middle, the background
   * before it, its angle. A parting is planned straight, but for the edge of a halo or a parting
   * with teeth. Empty for the background of a first row, which lies against no slice.
   */
  public static Optional<Double> planned(PlacedFoil foil, Criterion criterion) {
    return switch (criterion) {
      case STRAIGHT -> Optional.of(0.0);
      case SLICE ->
          Optional.of(
              (foil.sliceAtStart().toMillimetres() + foil.sliceAtEnd().toMillimetres()) / 2);
      case BACKGROUND ->
          foil.row() == 1 ? Optional.empty() : Optional.of(foil.backgroundBefore().toMillimetres());
      case ANGLE -> Optional.of(foil.partingAngle().toDegrees());
      case FOILS_BETWEEN_SIDES -> Optional.empty();
    };
  }

  /** Every value of an attempt beside the plan's. */
  public static MarkedAttempt mark(Placement plan, Tolerances tolerances, Attempt attempt) {
    Map<Integer, PlacedFoil> byNumber = new HashMap<>();
    plan.foils().forEach(foil -> byNumber.put(foil.number(), foil));
    List<Score> scores = new ArrayList<>();
    List<Integer> unknown = new ArrayList<>();
    for (Measured measured : attempt.foils()) {
      PlacedFoil foil = byNumber.get(measured.foil());
      if (foil == null) {
        unknown.add(measured.foil());
        continue;
      }
      for (Criterion criterion : AT_A_FOIL) {
        Optional<Double> value = measured.in(criterion);
        Optional<Double> planned = planned(foil, criterion);
        if (value.isPresent() && planned.isPresent()) {
          scores.add(
              new Score(
                  OptionalInt.of(measured.foil()),
                  criterion,
                  planned.get(),
                  value.get(),
                  criterion.allowed(tolerances)));
        }
      }
    }
    if (attempt.foilsLeft().isPresent() && attempt.foilsRight().isPresent()) {
      scores.add(
          new Score(
              OptionalInt.empty(),
              Criterion.FOILS_BETWEEN_SIDES,
              difference(plan),
              attempt.foilsRight().getAsInt() - attempt.foilsLeft().getAsInt(),
              Criterion.FOILS_BETWEEN_SIDES.allowed(tolerances)));
    }
    return new MarkedAttempt(attempt, scores, unknown);
  }

  /** Foils on the right less foils on the left, as planned. */
  private static double difference(Placement plan) {
    double difference = 0;
    for (PlacedFoil foil : plan.foils()) {
      difference +=
          switch (foil.side()) {
            case LEFT -> -1;
            case RIGHT -> 1;
            case MIDDLE -> 0;
          };
    }
    return difference;
  }

  /** What the attempts of a class have in common; a criterion nobody measured is left out. */
  public static List<Trend> trends(List<MarkedAttempt> marked) {
    List<Trend> trends = new ArrayList<>();
    for (Criterion criterion : AT_A_FOIL) {
      List<Score> scores =
          marked.stream()
              .flatMap(m -> m.scores().stream())
              .filter(s -> s.criterion() == criterion)
              .toList();
      if (!scores.isEmpty()) {
        trends.add(trend(criterion, scores));
      }
    }
    return List.copyOf(trends);
  }

  private static Trend trend(Criterion criterion, List<Score> scores) {
    double meanPlace = 0;
    double meanError = 0;
    int first = Integer.MAX_VALUE;
    int last = 0;
    for (Score score : scores) {
      int foil = score.foil().orElseThrow();
      meanPlace += (double) foil / scores.size();
      meanError += score.error() / scores.size();
      first = Math.min(first, foil);
      last = Math.max(last, foil);
    }
    double square = 0;
    double product = 0;
    for (Score score : scores) {
      double aside = score.foil().orElseThrow() - meanPlace;
      square += aside * aside;
      product += aside * (score.error() - meanError);
    }
    double slope = square > 0 ? product / square : 0;
    return new Trend(
        criterion,
        scores.size(),
        meanError,
        10 * slope,
        meanError + slope * (first - meanPlace),
        meanError + slope * (last - meanPlace),
        scores.get(0).allowed());
  }
}
