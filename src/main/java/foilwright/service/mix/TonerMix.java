package foilwright.service.mix;

import foilwright.problem.Problem;
import foilwright.service.MixRatio;
import foilwright.service.MixSettings;
import foilwright.service.TonerEntry;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Toner for the lightened hair of one visit: a base and so many grams for every gram of it, shared
 * among the shades by their parts and mixed with developer in the toner's ratio. Every weight is
 * rounded up to the scale's step.
 *
 * @param toner what is mixed
 * @param lightenedHair weight of the hair that carries lightener
 * @param shades in the order of the entry
 * @param developer weight of developer
 * @param cross how the developer is mixed from two of the drawer, when it must be; it may weigh a
 *     little more than {@code developer}, for the sake of its strength
 * @param problems of the developer
 */
public record TonerMix(
    TonerEntry toner,
    Mass lightenedHair,
    List<ShadeWeight> shades,
    Mass developer,
    Optional<MixingCross> cross,
    List<Problem> problems) {

  /** Weight of one shade. */
  public record ShadeWeight(String shade, Mass weight) {}

  public TonerMix {
    shades = List.copyOf(shades);
    problems = List.copyOf(problems);
  }

  public static TonerMix of(TonerEntry toner, Mass lightenedHair, MixSettings settings) {
    MixRatio ratio = toner.ratio();
    Mass all = toner.base().plus(lightenedHair.times(toner.perGramOfHair()));
    Mass colour = all.times(ratio.productShare());
    double parts = toner.shades().stream().mapToDouble(TonerEntry.ShadePart::parts).sum();
    List<ShadeWeight> shades = new ArrayList<>();
    Mass weighed = Mass.ZERO;
    for (TonerEntry.ShadePart part : toner.shades()) {
      Mass weight = settings.roundedUp(colour.times(part.parts() / parts));
      weighed = weighed.plus(weight);
      shades.add(new ShadeWeight(part.shade(), weight));
    }
    Mass developer = settings.roundedUp(weighed.times(ratio.developer() / ratio.product()));
    return new TonerMix(
        toner,
        lightenedHair,
        shades,
        developer,
        MixingCross.find(toner.developerStrength(), developer, settings),
        SlotMix.drawer(toner.name(), toner.developerStrength(), settings));
  }

  /** Shades and developer. */
  public Mass mixed() {
    Mass all = developer;
    for (ShadeWeight shade : shades) {
      all = all.plus(shade.weight());
    }
    return all;
  }

  /** Peroxide in the ready-to-use mixture, by weight. */
  public Share readyToUse() {
    return Peroxide.ofLabel(toner.developerStrength()).readyToUse(toner.ratio());
  }
}
