package foilwright.units;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A distance, signed; millimetres inside. Text forms: {@code "12 mm"}, {@code "1.2 cm"}, {@code
 * "0.5 in"}, {@code "0.5 inch"}.
 */
public final class Length implements Comparable<Length> {
  private static final Map<String, Double> UNITS = units();
  public static final Length ZERO = new Length(0);

  private final double millimetres;

  private Length(double millimetres) {
    this.millimetres = UnitText.finite(millimetres, "a length") + 0.0;
  }

  private static Map<String, Double> units() {
    Map<String, Double> units = new LinkedHashMap<>();
    units.put("mm", 1.0);
    units.put("cm", 10.0);
    units.put("in", 25.4);
    units.put("inch", 25.4);
    units.put("m", 1000.0);
    return Collections.unmodifiableMap(units);
  }

  /**
   * Reads a number with its unit, such as {@code "12 mm"}.
   *
   * @throws IllegalArgumentException naming the accepted units
   */
  public static Length parse(String text) {
    return new Length(UnitText.parse(text, "a length", UNITS));
  }

  public static Length ofMillimetres(double millimetres) {
    return new Length(millimetres);
  }

  public static Length ofInches(double inches) {
    return new Length(inches * 25.4);
  }

  public double toMillimetres() {
    return millimetres;
  }

  public double toInches() {
    return millimetres / 25.4;
  }

  /** Millimetres to one decimal with the unit: {@code "12.5 mm"}. */
  @Override
  public String toString() {
    return UnitText.number(millimetres, 1) + " mm";
  }

  /** Inches to two decimals with the unit: {@code "0.49 in"}. */
  public String toInchText() {
    return UnitText.number(toInches(), 2) + " in";
  }

  public Length plus(Length other) {
    return new Length(millimetres + other.millimetres);
  }

  public Length minus(Length other) {
    return new Length(millimetres - other.millimetres);
  }

  public Length times(double factor) {
    return new Length(millimetres * factor);
  }

  @Override
  public int compareTo(Length other) {
    return Double.compare(millimetres, other.millimetres);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Length that && Double.compare(millimetres, that.millimetres) == 0;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(millimetres);
  }
}
