package foilwright.placement;

import foilwright.pattern.MixSlot;
import foilwright.units.Length;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;

/**
 * What the house brings to placing: its foils and what a hand can hold.
 *
 * @param usableWidth widest parting that one foil holds
 * @param thinnestSlice thinnest slice that a comb holds; thinner ends are warned of
 * @param thickestSlice thickest slice that saturates; thicker ends are warned of
 * @param lightening mix slots that lighten; picked hair of other slots is not counted as lightened
 */
public record PlacingSettings(
    Length usableWidth, Length thinnestSlice, Length thickestSlice, Set<MixSlot> lightening) {
  /** Foils 110 mm wide used to 95 mm, slices from 0.8 to 20 mm (common practice, no source). */
  public static final PlacingSettings USUAL =
      new PlacingSettings(
          Length.ofMillimetres(95),
          Length.ofMillimetres(0.8),
          Length.ofMillimetres(20),
          EnumSet.allOf(MixSlot.class));

  public PlacingSettings {
    if (!(usableWidth.toMillimetres() >= 10)) {
      throw new IllegalArgumentException(
          "a foil's usable width must be at least 10 mm, not " + usableWidth);
    }
    Objects.requireNonNull(thinnestSlice);
    Objects.requireNonNull(thickestSlice);
    lightening = Set.copyOf(lightening);
  }
}
