package foilwright.service.mix;

import foilwright.service.MixRatio;
import foilwright.service.MixSettings;
import foilwright.service.ProductEntry;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One bowl to mix.
 *
 * @param slot mix slot, such as {@code A}
 * @param number of the slot's bowls, from 1
 * @param foils numbers of the foils it serves, in working order; at least one
 * @param onFoils what they take
 * @param product weight of product, a whole number of scale steps
 * @param developer weight of developer, a whole number of scale steps
 * @param cross how the developer is mixed from two of the drawer, when it must be; it may weigh a
 *     little more than {@code developer}, for the sake of its strength
 * @param mixedAt when it is ready: as the placing of its first foil begins
 * @param neededUntil when its last foil is in
 * @param goodUntil when it has stood its time
 */
public record Bowl(
    String slot,
    int number,
    List<Integer> foils,
    Mass onFoils,
    Mass product,
    Mass developer,
    Optional<MixingCross> cross,
    Minutes mixedAt,
    Minutes neededUntil,
    Minutes goodUntil) {
  public Bowl {
    foils = List.copyOf(foils);
    Objects.requireNonNull(cross);
    if (foils.isEmpty()) {
      throw new IllegalArgumentException("a bowl serves at least one foil");
    }
  }

  /**
   * Weighs a bowl: what the foils take and the waste, in the product's ratio, each part rounded up
   * to the scale's step.
   */
  static Bowl of(int number, List<FoilMix> foils, ProductEntry product, MixSettings settings) {
    Mass onFoils = Mass.ZERO;
    for (FoilMix foil : foils) {
      onFoils = onFoils.plus(foil.mixed());
    }
    MixRatio ratio = product.ratio();
    Mass wanted = onFoils.times(1 + settings.waste().toFraction());
    Mass powder = settings.roundedUp(wanted.times(ratio.productShare()));
    Mass developer = settings.roundedUp(powder.times(ratio.developer() / ratio.product()));
    FoilMix first = foils.get(0);
    return new Bowl(
        first.slot(),
        number,
        foils.stream().map(FoilMix::number).toList(),
        onFoils,
        powder,
        developer,
        MixingCross.find(product.developerStrength(), developer, settings),
        first.begin(),
        foils.stream().map(FoilMix::end).max(Minutes::compareTo).orElseThrow(),
        first.begin().plus(product.bowlLife()));
  }

  /** Slot and number, such as {@code A2}. */
  public String name() {
    return slot + number;
  }

  /** The foil at which it is mixed. */
  public int firstFoil() {
    return foils.get(0);
  }

  /** Product and developer. */
  public Mass mixed() {
    return product.plus(developer);
  }
}
