package foilwright.service.mix;

import foilwright.service.MixSettings;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * A developer of a wanted strength from a stronger and a weaker one: as many parts of the stronger
 * as the wanted lies above the weaker, and as many of the weaker as it lies below the stronger. So
 * 40 volumes and water, 1 to 1, are 20 volumes.
 *
 * <p>Parts by weight; developers weigh so nearly the same that parts by volume agree within a few
 * percent. Weights are whole steps of the scale, which moves the strength a little: where that is
 * more than {@value #CLOSE_PERCENT} %, which labels do not show, some steps more are mixed than are
 * needed. {@link #strength} says where it comes to lie.
 *
 * @param wanted label strength asked for
 * @param stronger label strength of the one, at least {@code wanted}
 * @param weaker label strength of the other, at most {@code wanted}; 0 % is water
 * @param strongerWeight of the one
 * @param weakerWeight of the other
 */
public record MixingCross(
    Share wanted, Share stronger, Share weaker, Mass strongerWeight, Mass weakerWeight) {
  private static final double SAME = 1e-9;
  private static final double CLOSE_PERCENT = 0.1;

  /** Steps of the scale beyond what is needed, for the sake of the strength. */
  private static final int MOST_MORE = 10;

  public MixingCross {
    Objects.requireNonNull(strongerWeight);
    Objects.requireNonNull(weakerWeight);
    requireBetween(wanted, stronger, weaker);
  }

  private static void requireBetween(Share wanted, Share stronger, Share weaker) {
    if (!(weaker.toFraction() < stronger.toFraction()
        && wanted.toFraction() >= weaker.toFraction()
        && wanted.toFraction() <= stronger.toFraction())) {
      throw new IllegalArgumentException(
          "a developer of "
              + wanted
              + " cannot be mixed from "
              + stronger
              + " and "
              + weaker
              + ": it must lie between two that differ");
    }
  }

  /**
   * Weighs out at least so much, and the least beyond it that comes close enough to the strength.
   *
   * @param one a label strength
   * @param other another one, stronger or weaker
   * @param least weight that is needed
   * @throws IllegalArgumentException when the wanted strength does not lie between the two
   */
  public static MixingCross of(
      Share wanted, Share one, Share other, Mass least, MixSettings settings) {
    Share stronger = one.compareTo(other) > 0 ? one : other;
    Share weaker = one.compareTo(other) > 0 ? other : one;
    requireBetween(wanted, stronger, weaker);
    double part = wanted.minus(weaker).toFraction() / stronger.minus(weaker).toFraction();
    MixingCross nearest = null;
    for (int more = 0; more <= MOST_MORE; more++) {
      Mass all = settings.roundedUp(least).plus(settings.scaleStep().times(more));
      Mass ofStronger = settings.rounded(all.times(part));
      MixingCross cross =
          new MixingCross(wanted, stronger, weaker, ofStronger, all.minus(ofStronger));
      if (nearest == null || cross.offPercent() < nearest.offPercent() - SAME) {
        nearest = cross;
      }
      if (nearest.offPercent() <= CLOSE_PERCENT) {
        break;
      }
    }
    return nearest;
  }

  private double offPercent() {
    return Math.abs(strength().minus(wanted).toPercent());
  }

  /** Whether the drawer holds the strength itself. */
  static boolean holds(List<Share> developers, Share wanted) {
    return developers.stream().anyMatch(d -> Math.abs(d.toFraction() - wanted.toFraction()) < SAME);
  }

  /**
   * From the two developers of the drawer that lie nearest on either side.
   *
   * @return nothing when the drawer has the strength itself, or none on one side
   */
  public static Optional<MixingCross> find(Share wanted, Mass least, MixSettings settings) {
    List<Share> developers = settings.developers();
    Optional<Share> stronger = developers.stream().filter(d -> d.compareTo(wanted) > 0).findFirst();
    Optional<Share> weaker =
        developers.stream().filter(d -> d.compareTo(wanted) < 0).reduce((a, b) -> b);
    return holds(developers, wanted) || stronger.isEmpty() || weaker.isEmpty()
        ? Optional.empty()
        : Optional.of(of(wanted, stronger.get(), weaker.get(), least, settings));
  }

  /** Parts of the stronger to one part of the weaker; infinite when none of the weaker is due. */
  public double parts() {
    return wanted.minus(weaker).toFraction() / stronger.minus(wanted).toFraction();
  }

  /** What the weights make of it. */
  public Share strength() {
    double all = strongerWeight.plus(weakerWeight).toGrams();
    return all == 0
        ? wanted
        : stronger
            .times(strongerWeight.toGrams() / all)
            .plus(weaker.times(weakerWeight.toGrams() / all));
  }

  /** Such as {@code 11 g of 6 % with 30 g of 1.9 % makes 3 % (wanted 3 %)}. */
  public String words() {
    return String.format(
        Locale.ROOT,
        "%s of %s with %s of %s makes %s (wanted %s)",
        strongerWeight,
        stronger,
        weakerWeight,
        weaker.toFraction() == 0 ? "water" : weaker,
        strength(),
        wanted);
  }
}
