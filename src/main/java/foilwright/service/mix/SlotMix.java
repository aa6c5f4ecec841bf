package foilwright.service.mix;

import foilwright.problem.Problem;
import foilwright.service.MixSettings;
import foilwright.service.ProductEntry;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What one mix slot takes in a visit.
 *
 * @param slot such as {@code A}
 * @param product what it holds
 * @param foils how many
 * @param hair weight of hair in them
 * @param onFoils what they take, without waste
 * @param bowls in order
 */
public record SlotMix(
    String slot, ProductEntry product, int foils, Mass hair, Mass onFoils, List<Bowl> bowls) {
  public SlotMix {
    bowls = List.copyOf(bowls);
  }

  /** Product in all bowls. */
  public Mass productWeight() {
    return bowls.stream().map(Bowl::product).reduce(Mass.ZERO, Mass::plus);
  }

  /** Developer in all bowls. */
  public Mass developerWeight() {
    return bowls.stream().map(Bowl::developer).reduce(Mass.ZERO, Mass::plus);
  }

  /** All that is mixed. */
  public Mass mixed() {
    return productWeight().plus(developerWeight());
  }

  public Peroxide developer() {
    return Peroxide.ofLabel(product.developerStrength());
  }

  /**
   * Peroxide in the ready-to-use mixture, by weight; to be shown beside {@link
   * ProductEntry#MOST_STRENGTH}, the EU limit, which is about this mixture.
   */
  public Share readyToUse() {
    return developer().readyToUse(product.ratio());
  }

  /** What is wrong when the drawer holds neither the developer nor two round it. */
  static List<Problem> drawer(String entry, Share wanted, MixSettings settings) {
    if (settings.developers().isEmpty()
        || MixingCross.holds(settings.developers(), wanted)
        || MixingCross.find(wanted, settings.scaleStep(), settings).isPresent()) {
      return List.of();
    }
    return List.of(
        Problem.warning(
            "developer-not-in-drawer",
            "mixing.developers",
            entry
                + " wants a developer of "
                + wanted
                + ", which cannot be mixed from the drawer's "
                + settings.developers().stream()
                    .map(Share::toString)
                    .collect(Collectors.joining(", ")),
            "get it, or one stronger and one weaker; write 0 % for water if you weaken with it"));
  }
}
