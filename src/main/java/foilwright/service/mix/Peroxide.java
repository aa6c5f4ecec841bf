package foilwright.service.mix;

import foilwright.service.MixRatio;
import foilwright.service.ProductEntry;
import foilwright.units.Share;
import java.util.Locale;

/**
 * Strength of hydrogen peroxide in a developer, told three ways: as volumes of oxygen that one
 * volume of it gives off, as weight over volume, and as the label says.
 *
 * <p>2 H2O2 -> 2 H2O + O2, with 34.01468 g/mol and 22.413969 L/mol of oxygen at 0 C and 1 atm: one
 * volume is 0.30351 % weight over volume, so that 10, 20, 30 and 40 volumes are 3.035, 6.070, 9.105
 * and 12.14 %. Labels round that to 3, 6, 9 and 12 %: three tenths of a percent for a volume.
 *
 * <p>Range: 0 to 40 volumes, which is a label of 0 to 12 %; 0 is water.
 */
public final class Peroxide implements Comparable<Peroxide> {
  public static final double GRAMS_PER_MOLE = 34.01468;
  public static final double LITRES_PER_MOLE = 22.413969;
  public static final double MOST_VOLUMES = 40;

  /** Of the label, for one volume. */
  private static final double LABEL_PERCENT = 0.3;

  /** Weight over volume, for one volume: two moles for each mole of oxygen, in 100 mL. */
  private static final double WEIGHT_PERCENT = 2 * GRAMS_PER_MOLE / LITRES_PER_MOLE / 10;

  private final double volumes;

  private Peroxide(double volumes, String said) {
    if (!(volumes >= 0 && volumes <= MOST_VOLUMES * (1 + 1e-9))) {
      throw new IllegalArgumentException(
          "a developer of "
              + said
              + " is outside 0 to "
              + Math.round(MOST_VOLUMES)
              + " volumes (a label of "
              + ProductEntry.MOST_STRENGTH
              + ")");
    }
    this.volumes = volumes + 0.0;
  }

  /** From volumes of oxygen. */
  public static Peroxide ofVolumes(double volumes) {
    return new Peroxide(volumes, volumes + " volumes");
  }

  /** From what the label says: 6 % stands for 20 volumes. */
  public static Peroxide ofLabel(Share label) {
    return new Peroxide(label.toPercent() / LABEL_PERCENT, label + " by its label");
  }

  /** From weight over volume, as weighed. */
  public static Peroxide ofWeightOverVolume(Share strength) {
    return new Peroxide(strength.toPercent() / WEIGHT_PERCENT, strength + " weight over volume");
  }

  public double toVolumes() {
    return volumes;
  }

  /** What a label rounds it to. */
  public Share label() {
    return Share.ofPercent(volumes * LABEL_PERCENT);
  }

  public Share weightOverVolume() {
    return Share.ofPercent(volumes * WEIGHT_PERCENT);
  }

  /**
   * Strength of a product mixed with this developer, by weight: what the EU limit of {@link
   * ProductEntry#MOST_STRENGTH} for hair products is about.
   */
  public Share readyToUse(MixRatio ratio) {
    return weightOverVolume().times(1 - ratio.productShare());
  }

  /** Such as {@code 6 % (20 volumes, 6.07 % w/v)}; {@code water} for nothing in it. */
  public String words() {
    return volumes == 0
        ? "water"
        : String.format(
            Locale.ROOT,
            "%s (%.0f volumes, %.2f %% w/v)",
            label(),
            volumes,
            weightOverVolume().toPercent());
  }

  @Override
  public int compareTo(Peroxide other) {
    return Double.compare(volumes, other.volumes);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Peroxide that && Double.compare(volumes, that.volumes) == 0;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(volumes);
  }

  @Override
  public String toString() {
    return words();
  }
}
