package foilwright.units;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A mass; milligrams inside. Text forms: {@code "30 g"}, {@code "250 mg"}, {@code "1 oz"}
 * (28.349523125 g).
 */
public final class Mass implements Comparable<Mass> {
  private static final Map<String, Double> UNITS = units();
  public static final Mass ZERO = new Mass(0);

  private final double milligrams;

  private Mass(double milligrams) {
    this.milligrams = UnitText.finite(milligrams, "a weight") + 0.0;
  }

  private static Map<String, Double> units() {
    Map<String, Double> units = new LinkedHashMap<>();
    units.put("g", 1000.0);
    units.put("mg", 1.0);
    units.put("oz", 28349.523125);
    return Collections.unmodifiableMap(units);
  }

  /**
   * Reads a number with its unit, such as {@code "30 g"}.
   *
   * @throws IllegalArgumentException naming the accepted units
   */
  public static Mass parse(String text) {
    return new Mass(UnitText.parse(text, "a weight", UNITS));
  }

  public static Mass ofMilligrams(double milligrams) {
    return new Mass(milligrams);
  }

  public static Mass ofGrams(double grams) {
    return new Mass(grams * 1000);
  }

  public double toMilligrams() {
    return milligrams;
  }

  public double toGrams() {
    return milligrams / 1000;
  }

  /** Grams to one decimal with the unit: {@code "2.5 g"}. */
  @Override
  public String toString() {
    return UnitText.number(toGrams(), 1) + " g";
  }

  public Mass plus(Mass other) {
    return new Mass(milligrams + other.milligrams);
  }

  public Mass minus(Mass other) {
    return new Mass(milligrams - other.milligrams);
  }

  public Mass times(double factor) {
    return new Mass(milligrams * factor);
  }

  @Override
  public int compareTo(Mass other) {
    return Double.compare(milligrams, other.milligrams);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Mass that && Double.compare(milligrams, that.milligrams) == 0;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(milligrams);
  }
}
