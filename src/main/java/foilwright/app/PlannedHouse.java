package foilwright.app;

import foilwright.service.FoilStock;
import foilwright.service.PaceProfile;
import foilwright.service.ProductEntry;
import foilwright.service.Tolerances;
import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/**
 * With whose hands and products a plan is made.
 *
 * @param pace the profile that the plan's times are for
 * @param foil the size of foil
 * @param products by mix slot; a slot that the house does not fill is missing
 * @param tolerances what passes when practice work is marked
 */
public record PlannedHouse(
    String name,
    PaceProfile pace,
    FoilStock foil,
    Map<String, ProductEntry> products,
    Tolerances tolerances) {
  public PlannedHouse {
    Objects.requireNonNull(pace);
    Objects.requireNonNull(foil);
    Objects.requireNonNull(tolerances);
    products = Collections.unmodifiableMap(new TreeMap<>(products));
  }
}
