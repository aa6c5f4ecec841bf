package foilwright.units;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** An area; square millimetres inside. Text forms: {@code "580 cm2"}, {@code "120 mm2"}. */
public final class Area implements Comparable<Area> {
  private static final Map<String, Double> UNITS = units();
  public static final Area ZERO = new Area(0);

  private final double squareMillimetres;

  private Area(double squareMillimetres) {
    this.squareMillimetres = UnitText.finite(squareMillimetres, "an area") + 0.0;
  }

  private static Map<String, Double> units() {
    Map<String, Double> units = new LinkedHashMap<>();
    units.put("cm2", 100.0);
    units.put("mm2", 1.0);
    return Collections.unmodifiableMap(units);
  }

  /**
   * Reads a number with its unit, such as {@code "580 cm2"}.
   *
   * @throws IllegalArgumentException naming the accepted units
   */
  public static Area parse(String text) {
    return new Area(UnitText.parse(text, "an area", UNITS));
  }

  public static Area ofSquareMillimetres(double squareMillimetres) {
    return new Area(squareMillimetres);
  }

  public double toSquareMillimetres() {
    return squareMillimetres;
  }

  public double toSquareCentimetres() {
    return squareMillimetres / 100;
  }

  /** Square centimetres to one decimal with the unit: {@code "12.5 cm2"}. */
  @Override
  public String toString() {
    return UnitText.number(toSquareCentimetres(), 1) + " cm2";
  }

  public Area plus(Area other) {
    return new Area(squareMillimetres + other.squareMillimetres);
  }

  public Area minus(Area other) {
    return new Area(squareMillimetres - other.squareMillimetres);
  }

  public Area times(double factor) {
    return new Area(squareMillimetres * factor);
  }

  @Override
  public int compareTo(Area other) {
    return Double.compare(squareMillimetres, other.squareMillimetres);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Area that
        && Double.compare(squareMillimetres, that.squareMillimetres) == 0;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(squareMillimetres);
  }
}
