package foilwright.service.mix;

import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import foilwright.service.MixSettings;
import foilwright.service.ProductEntry;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * All that is weighed for the foils of one visit.
 *
 * @param foils what each foil takes and when, in working order; those of a slot without a product
 *     are left out
 * @param slots in the order of their letters
 * @param problems what the drawer lacks, bowls that stand too long, take-ups as weighed back, and
 *     notes where the sums and the trade's grams per foil disagree
 */
public record MixPlan(List<FoilMix> foils, List<SlotMix> slots, List<Problem> problems) {

  /** When one foil is placed, minutes from the moment the hands begin. */
  public record Placed(Minutes begin, Minutes end) {}

  public MixPlan {
    foils = List.copyOf(foils);
    slots = List.copyOf(slots);
    problems = List.copyOf(problems);
  }

  /**
   * What each foil takes and when: the film of its product and the take-up of its hair, as weighed
   * back.
   *
   * @param placement foils in working order
   * @param products by slot
   * @param times one for each foil of the placement, in working order
   */
  public static List<FoilMix> foils(
      Placement placement, Map<String, ProductEntry> products, List<Placed> times) {
    if (times.size() != placement.foils().size()) {
      throw new IllegalArgumentException(
          times.size() + " times are given for " + placement.foils().size() + " foils");
    }
    List<FoilMix> rows = new ArrayList<>();
    for (int i = 0; i < times.size(); i++) {
      PlacedFoil foil = placement.foils().get(i);
      ProductEntry product = products.get(foil.mix());
      if (product != null) {
        rows.add(
            new FoilMix(
                foil.number(),
                foil.mix(),
                product.takeUp().mixed(foil.hair()),
                times.get(i).begin(),
                times.get(i).end()));
      }
    }
    return rows;
  }

  /** Everything weighed, with fresh bowls only where they are due. */
  public static MixPlan of(
      Placement placement,
      Map<String, ProductEntry> products,
      MixSettings settings,
      List<Placed> times) {
    return of(placement, products, settings, times, Set.of());
  }

  /**
   * Everything weighed, for final times.
   *
   * @param placement foils in working order
   * @param products by slot
   * @param times one for each foil of the placement, in working order
   * @param fresh numbers of foils at which a bowl is mixed in any case
   */
  public static MixPlan of(
      Placement placement,
      Map<String, ProductEntry> products,
      MixSettings settings,
      List<Placed> times,
      Set<Integer> fresh) {
    List<FoilMix> foils = foils(placement, products, times);
    Bowls bowls = Bowls.of(foils, products, settings, fresh);
    Map<String, Sum> sums = new TreeMap<>();
    Map<TradeGrams, Sum> byTrade = new TreeMap<>();
    int row = 0;
    for (PlacedFoil foil : placement.foils()) {
      if (products.containsKey(foil.mix())) {
        Mass mixed = foils.get(row++).mixed();
        sums.merge(foil.mix(), Sum.of(foil, mixed), Sum::plus);
        byTrade.merge(TradeGrams.of(foil), Sum.of(foil, mixed), Sum::plus);
      }
    }
    List<SlotMix> slots = new ArrayList<>();
    List<Problem> problems = new ArrayList<>(bowls.problems());
    sums.forEach(
        (slot, sum) -> {
          ProductEntry product = products.get(slot);
          slots.add(
              new SlotMix(slot, product, sum.foils(), sum.hair(), sum.mixed(), bowls.of(slot)));
          problems.addAll(SlotMix.drawer(product.name(), product.developerStrength(), settings));
          problems.addAll(product.takeUp().problems("products"));
        });
    disagreement(byTrade).ifPresent(problems::add);
    return new MixPlan(foils, slots, problems);
  }

  /** Foils of one sort added up. */
  private record Sum(int foils, Mass hair, Mass mixed) {
    static Sum of(PlacedFoil foil, Mass mixed) {
      return new Sum(1, foil.hair(), mixed);
    }

    Sum plus(Sum other) {
      return new Sum(foils + other.foils, hair.plus(other.hair), mixed.plus(other.mixed));
    }
  }

  private static Optional<Problem> disagreement(Map<TradeGrams, Sum> byTrade) {
    List<String> differ = new ArrayList<>();
    byTrade.forEach(
        (kind, sum) -> {
          Mass mean = sum.mixed().times(1.0 / sum.foils());
          if (!kind.holds(mean)) {
            differ.add(
                String.format(
                    Locale.ROOT,
                    "%d %s (%s) at %.1f g by %.2f g of hair (trade: %s to %s)",
                    sum.foils(),
                    sum.foils() == 1 ? "foil" : "foils",
                    kind.words(),
                    mean.toGrams(),
                    sum.hair().toGrams() / sum.foils(),
                    kind.least(),
                    kind.most()));
          }
        });
    return differ.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Problem.note(
                "grams-differ-from-trade",
                "products",
                "the mix planned by the weight of hair and what the trade reckons with differ, on"
                    + " average for each foil: "
                    + String.join("; ", differ),
                "look whether slices and hair lengths are right, then go by a bowl weighed back"));
  }

  /** The slot's share, if the plan uses it. */
  public Optional<SlotMix> slot(String letter) {
    return slots.stream().filter(slot -> slot.slot().equals(letter)).findFirst();
  }

  /** Weight of hair in the foils that lighten, which a toner is for. */
  public Mass lightenedHair() {
    return slots.stream()
        .filter(slot -> slot.product().kind().lightens())
        .map(SlotMix::hair)
        .reduce(Mass.ZERO, Mass::plus);
  }

  /** All bowls by the time at which they are ready. */
  public List<Bowl> bowls() {
    return slots.stream()
        .flatMap(slot -> slot.bowls().stream())
        .sorted(Comparator.comparing(Bowl::mixedAt).thenComparing(Bowl::name))
        .toList();
  }
}
