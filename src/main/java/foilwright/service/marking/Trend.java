package foilwright.service.marking;

import java.util.Locale;

/**
 * What many attempts have in common in one criterion, as a straight line through the errors by
 * place in the working order (least squares). All numbers are in the criterion's unit.
 *
 * @param values how many errors it rests on
 * @param meanError over all values
 * @param perTenFoils how much the error changes over ten foils; 0 where all values lie at one foil
 * @param atFirst error on the line at the first foil measured
 * @param atLast error on the line at the last
 */
public record Trend(
    Criterion criterion,
    int values,
    double meanError,
    double perTenFoils,
    double atFirst,
    double atLast,
    double allowed) {
  /** Change along the work, as a share of what is allowed, from which it is worth saying. */
  private static final double WORTH_SAYING = 0.5;

  private static final int LEAST_VALUES = 4;

  /** One sentence. */
  public String words() {
    String mean =
        String.format(
            Locale.ROOT,
            "%s %+.1f %s on average over %d values",
            criterion.words(),
            meanError,
            criterion.unit(),
            values);
    if (values < LEAST_VALUES) {
      return mean + "; too few to see a drift";
    }
    double change = atLast - atFirst;
    if (Math.abs(change) < WORTH_SAYING * allowed) {
      return mean + "; steady from first to last";
    }
    return String.format(
        Locale.ROOT,
        "%s; %s by %.1f %s every ten foils",
        mean,
        verb(change > 0),
        Math.abs(perTenFoils),
        criterion.unit());
  }

  private String verb(boolean more) {
    return switch (criterion) {
      case STRAIGHT -> more ? "partings wander more" : "partings become straighter";
      case SLICE -> more ? "slices grow" : "slices become thinner";
      case BACKGROUND -> more ? "background grows" : "background shrinks";
      case ANGLE -> more ? "partings become steeper" : "partings become flatter";
      case FOILS_BETWEEN_SIDES -> more ? "the difference grows" : "the difference shrinks";
    };
  }
}
