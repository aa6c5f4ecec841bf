package foilwright.units;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Hairs per area of scalp; hairs per square centimetre inside. Text form: {@code "200 per cm2"}.
 */
public final class Density implements Comparable<Density> {
  private static final Map<String, Double> UNITS = units();
  public static final Density ZERO = new Density(0);

  private final double perSquareCentimetre;

  private Density(double perSquareCentimetre) {
    this.perSquareCentimetre = UnitText.finite(perSquareCentimetre, "a hair density") + 0.0;
  }

  private static Map<String, Double> units() {
    Map<String, Double> units = new LinkedHashMap<>();
    units.put("per cm2", 1.0);
    return Collections.unmodifiableMap(units);
  }

  /**
   * Reads a number with its unit, such as {@code "200 per cm2"}.
   *
   * @throws IllegalArgumentException naming the accepted units
   */
  public static Density parse(String text) {
    return new Density(UnitText.parse(text, "a hair density", UNITS));
  }

  public static Density ofHairsPerSquareCentimetre(double hairs) {
    return new Density(hairs);
  }

  public double toHairsPerSquareCentimetre() {
    return perSquareCentimetre;
  }

  public double toHairsPerSquareMillimetre() {
    return perSquareCentimetre / 100;
  }

  /** Hairs per square centimetre to the whole: {@code "200 per cm2"}. */
  @Override
  public String toString() {
    return UnitText.number(perSquareCentimetre, 0) + " per cm2";
  }

  public Density plus(Density other) {
    return new Density(perSquareCentimetre + other.perSquareCentimetre);
  }

  public Density minus(Density other) {
    return new Density(perSquareCentimetre - other.perSquareCentimetre);
  }

  public Density times(double factor) {
    return new Density(perSquareCentimetre * factor);
  }

  @Override
  public int compareTo(Density other) {
    return Double.compare(perSquareCentimetre, other.perSquareCentimetre);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Density that
        && Double.compare(perSquareCentimetre, that.perSquareCentimetre) == 0;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(perSquareCentimetre);
  }
}
