package foilwright.service;

import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.List;

/**
 * How a house weighs.
 *
 * @param scaleStep what the scale shows in its last place, 0.01 to 50 g
 * @param waste mixed beyond what the foils take, over what they take; 0 to 100 %
 * @param bowlFoils most foils that one bowl serves, 1 or more
 * @param developers strengths in the drawer, by their labels, rising, each once; 0 % is water.
 *     Empty when the house did not say
 */
public record MixSettings(Mass scaleStep, Share waste, int bowlFoils, List<Share> developers) {
  public static final Mass LEAST_STEP = Mass.ofGrams(0.01);
  public static final Mass MOST_STEP = Mass.ofGrams(50);
  public static final int MOST_FOILS = 1000;

  /** Common practice: 1 g, 10 to 15 % of waste, 20 to 30 foils a bowl. */
  public static final MixSettings USUAL =
      new MixSettings(Mass.ofGrams(1), Share.ofPercent(12), 30, List.of());

  public MixSettings {
    developers = developers.stream().distinct().sorted().toList();
    if (scaleStep.compareTo(LEAST_STEP) < 0 || scaleStep.compareTo(MOST_STEP) > 0) {
      throw new IllegalArgumentException(
          "a scale's step of " + scaleStep + " is outside " + LEAST_STEP + " to " + MOST_STEP);
    }
    if (!(waste.toFraction() >= 0 && waste.toFraction() <= 1)) {
      throw new IllegalArgumentException("a waste of " + waste + " is outside 0 % to 100 %");
    }
    if (bowlFoils < 1 || bowlFoils > MOST_FOILS) {
      throw new IllegalArgumentException(
          bowlFoils + " foils to a bowl are outside 1 to " + MOST_FOILS);
    }
    for (Share strength : developers) {
      if (strength.toFraction() < 0
          || strength.toFraction() > ProductEntry.MOST_STRENGTH.toFraction() + 1e-9) {
        throw new IllegalArgumentException(
            "a developer of " + strength + " is outside 0 % to " + ProductEntry.MOST_STRENGTH);
      }
    }
  }

  /** The least whole number of scale steps that weighs at least so much. */
  public Mass roundedUp(Mass mass) {
    double steps = Math.ceil(mass.toMilligrams() / scaleStep.toMilligrams() - 1e-9);
    return scaleStep.times(steps);
  }

  /** The nearest whole number of scale steps. */
  public Mass rounded(Mass mass) {
    return scaleStep.times(Math.rint(mass.toMilligrams() / scaleStep.toMilligrams()));
  }
}
