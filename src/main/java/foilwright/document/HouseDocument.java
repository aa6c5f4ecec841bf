package foilwright.document;

import foilwright.head.HeadSettings;
import foilwright.pattern.MixSlot;
import foilwright.placement.PlacingSettings;
import foilwright.service.FoilStock;
import foilwright.service.LiftTables;
import foilwright.service.MixSettings;
import foilwright.service.PaceProfile;
import foilwright.service.Prices;
import foilwright.service.ProductEntry;
import foilwright.service.RebookLengths;
import foilwright.service.Tolerances;
import foilwright.service.TonerEntry;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * What a house has and how it works. Of paces and foil stock the first is used unless another is
 * named.
 *
 * @param paces at least one, names unique
 * @param products at least one, names unique
 * @param toners names unique
 * @param slots what each mix slot of a pattern holds: the name of a product; slot A at least
 * @param foils at least one, names unique
 * @param rebook regrowth at which the house asks a guest back
 * @param mixing how the house weighs
 * @param lift what the house goes by when hair is lifted
 */
public record HouseDocument(
    String name,
    List<PaceProfile> paces,
    List<ProductEntry> products,
    List<TonerEntry> toners,
    Map<MixSlot, String> slots,
    List<FoilStock> foils,
    Prices prices,
    Tolerances tolerances,
    HeadSettings head,
    HandAllowances hands,
    RebookLengths rebook,
    MixSettings mixing,
    LiftTables lift) {
  public HouseDocument {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a house needs a name");
    }
    paces = List.copyOf(paces);
    products = List.copyOf(products);
    toners = List.copyOf(toners);
    foils = List.copyOf(foils);
    if (paces.isEmpty() || products.isEmpty() || foils.isEmpty()) {
      throw new IllegalArgumentException(
          "a house needs at least one pace, one product and one size of foil");
    }
    Map<MixSlot, String> copy = new EnumMap<>(MixSlot.class);
    copy.putAll(slots);
    slots = Collections.unmodifiableMap(copy);
    List<String> known = products.stream().map(ProductEntry::name).toList();
    if (!slots.containsKey(MixSlot.A) || !known.containsAll(slots.values())) {
      throw new IllegalArgumentException(
          "slot A needs a product, and every slot one that the house has: " + slots);
    }
    Objects.requireNonNull(prices);
    Objects.requireNonNull(tolerances);
    Objects.requireNonNull(head);
    Objects.requireNonNull(hands);
    Objects.requireNonNull(rebook);
    Objects.requireNonNull(mixing);
    Objects.requireNonNull(lift);
  }

  /**
   * The house with a pace profile of that name exchanged, such as after a timing.
   *
   * @throws IllegalArgumentException when it has none of that name
   */
  public HouseDocument withPace(PaceProfile timed) {
    if (findPace(timed.name()).isEmpty()) {
      throw new IllegalArgumentException("the house has no pace profile called " + timed.name());
    }
    return new HouseDocument(
        name,
        paces.stream().map(p -> p.name().equals(timed.name()) ? timed : p).toList(),
        products,
        toners,
        slots,
        foils,
        prices,
        tolerances,
        head,
        hands,
        rebook,
        mixing,
        lift);
  }

  /**
   * The house with a product of that name exchanged, such as after weighing a bowl back.
   *
   * @throws IllegalArgumentException when it has none of that name
   */
  public HouseDocument withProduct(ProductEntry weighed) {
    if (products.stream().noneMatch(p -> p.name().equals(weighed.name()))) {
      throw new IllegalArgumentException("the house has no product called " + weighed.name());
    }
    return new HouseDocument(
        name,
        paces,
        products.stream().map(p -> p.name().equals(weighed.name()) ? weighed : p).toList(),
        toners,
        slots,
        foils,
        prices,
        tolerances,
        head,
        hands,
        rebook,
        mixing,
        lift);
  }

  public Optional<PaceProfile> findPace(String wanted) {
    return paces.stream().filter(p -> p.name().equals(wanted)).findFirst();
  }

  /** What placing needs of this house when it works with one size of its foils. */
  public PlacingSettings placingSettings(FoilStock stock) {
    Set<MixSlot> lightening = EnumSet.noneOf(MixSlot.class);
    Map<String, ProductEntry> bySlot = productsBySlot();
    for (MixSlot slot : slots.keySet()) {
      if (bySlot.get(slot.name()).kind().lightens()) {
        lightening.add(slot);
      }
    }
    return new PlacingSettings(
        stock.usableWidth(), hands.thinnestSlice(), hands.thickestSlice(), lightening);
  }

  /** The product in each slot, by the slot's letter. */
  public Map<String, ProductEntry> productsBySlot() {
    Map<String, ProductEntry> bySlot = new TreeMap<>();
    slots.forEach(
        (slot, product) ->
            products.stream()
                .filter(p -> p.name().equals(product))
                .findFirst()
                .ifPresent(p -> bySlot.put(slot.name(), p)));
    return Collections.unmodifiableMap(bySlot);
  }
}
