package foilwright.units;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** An angle, signed; radians inside. Text forms: {@code "35 deg"}, {@code "0.6 rad"}. */
public final class Angle implements Comparable<Angle> {
  private static final Map<String, Double> UNITS = units();
  public static final Angle ZERO = new Angle(0);

  private final double radians;

  private Angle(double radians) {
    this.radians = UnitText.finite(radians, "an angle") + 0.0;
  }

  private static Map<String, Double> units() {
    Map<String, Double> units = new LinkedHashMap<>();
    units.put("deg", Math.PI / 180);
    units.put("rad", 1.0);
    return Collections.unmodifiableMap(units);
  }

  /**
   * Reads a number with its unit, such as {@code "35 deg"}.
   *
   * @throws IllegalArgumentException naming the accepted units
   */
  public static Angle parse(String text) {
    return new Angle(UnitText.parse(text, "an angle", UNITS));
  }

  public static Angle ofRadians(double radians) {
    return new Angle(radians);
  }

  public static Angle ofDegrees(double degrees) {
    return new Angle(Math.toRadians(degrees));
  }

  public double toRadians() {
    return radians;
  }

  public double toDegrees() {
    return Math.toDegrees(radians);
  }

  /** Degrees to one decimal with the unit: {@code "35 deg"}. */
  @Override
  public String toString() {
    return UnitText.number(toDegrees(), 1) + " deg";
  }

  public Angle plus(Angle other) {
    return new Angle(radians + other.radians);
  }

  public Angle minus(Angle other) {
    return new Angle(radians - other.radians);
  }

  public Angle times(double factor) {
    return new Angle(radians * factor);
  }

  @Override
  public int compareTo(Angle other) {
    return Double.compare(radians, other.radians);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Angle that && Double.compare(radians, that.radians) == 0;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(radians);
  }
}
