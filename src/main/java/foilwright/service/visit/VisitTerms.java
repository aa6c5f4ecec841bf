package foilwright.service.visit;

import foilwright.placement.PlacedFoil;
import foilwright.service.LiftAdvice;
import foilwright.service.MixSettings;
import foilwright.service.PaceProfile;
import foilwright.service.ProductEntry;
import foilwright.service.TimeWindow;
import foilwright.units.Density;
import foilwright.units.Length;
import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/**
 * What a visit's times follow from, beside the foils.
 *
 * @param pace whose hands
 * @param products by mix slot
 * @param mixing how the house weighs
 * @param lift which part of a product's window a foil is to keep
 * @param meanLength of all hair on the head, for drying
 * @param density of all hair on the head, for drying
 */
public record VisitTerms(
    PaceProfile pace,
    Map<String, ProductEntry> products,
    MixSettings mixing,
    LiftAdvice lift,
    Length meanLength,
    Density density) {
  public VisitTerms {
    Objects.requireNonNull(pace);
    Objects.requireNonNull(mixing);
    Objects.requireNonNull(lift);
    Objects.requireNonNull(meanLength);
    Objects.requireNonNull(density);
    products = Collections.unmodifiableMap(new TreeMap<>(products));
  }

  /**
   * The product of a foil.
   *
   * @throws IllegalArgumentException when its slot holds none
   */
  public ProductEntry product(PlacedFoil foil) {
    ProductEntry product = products.get(foil.mix());
    if (product == null) {
      throw new IllegalArgumentException("no product for mix slot " + foil.mix());
    }
    return product;
  }

  /** Least and most exposure of a foil: for its zone's lift, else its product's whole window. */
  public TimeWindow window(PlacedFoil foil) {
    return lift.window(foil).orElse(product(foil).window());
  }
}
