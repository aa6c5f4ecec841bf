package foilwright.app;

import foilwright.document.HouseDocument;
import foilwright.pattern.MixSlot;
import foilwright.placement.PlacingSettings;
import foilwright.service.FoilStock;
import foilwright.service.PaceProfile;
import foilwright.service.ProductEntry;
import foilwright.service.Tolerances;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;

/**
 * With whose hands and products a plan is made.
 *
 * @param pace the profile that the plan's times are for
 * @param foil the size of foil
 * @param products by mix slot; a slot that the house does not fill is missing
 * @param tolerances what passes when practice work is marked
 * @param placing what placing needs to know of it
 */
public record PlannedHouse(
    String name,
    PaceProfile pace,
    FoilStock foil,
    Map<String, ProductEntry> products,
    Tolerances tolerances,
    PlacingSettings placing) {
  public PlannedHouse {
    Objects.requireNonNull(pace);
    Objects.requireNonNull(foil);
    Objects.requireNonNull(tolerances);
    Objects.requireNonNull(placing);
    products = Collections.unmodifiableMap(new TreeMap<>(products));
  }

  /** A house with one of its paces and the first of its foils. */
  static PlannedHouse of(HouseDocument room, PaceProfile pace) {
    FoilStock foil = room.foils().get(0);
    Map<String, ProductEntry> products = room.productsBySlot();
    Set<MixSlot> lightening = EnumSet.allOf(MixSlot.class);
    lightening.removeIf(slot -> !lightens(products, slot.name()));
    return new PlannedHouse(
        room.name(),
        pace,
        foil,
        products,
        room.tolerances(),
        new PlacingSettings(
            foil.usableWidth(),
            room.hands().thinnestSlice(),
            room.hands().thickestSlice(),
            lightening));
  }

  /** Whether a slot lightens; an empty one counts, since that is what a pattern is for. */
  boolean lightens(String slot) {
    return lightens(products, slot);
  }

  private static boolean lightens(Map<String, ProductEntry> products, String slot) {
    ProductEntry product = products.get(slot);
    return product == null || product.kind().lightens();
  }
}
