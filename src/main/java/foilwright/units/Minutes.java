package foilwright.units;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A span of time at the chair; seconds inside. Text forms: {@code "1.1 min"}, {@code "20 s"},
 * {@code "2 h"}.
 */
public final class Minutes implements Comparable<Minutes> {
  private static final Map<String, Double> UNITS = units();
  public static final Minutes ZERO = new Minutes(0);

  private final double seconds;

  private Minutes(double seconds) {
    this.seconds = UnitText.finite(seconds, "a time") + 0.0;
  }

  private static Map<String, Double> units() {
    Map<String, Double> units = new LinkedHashMap<>();
    units.put("min", 60.0);
    units.put("s", 1.0);
    units.put("h", 3600.0);
    return Collections.unmodifiableMap(units);
  }

  /**
   * Reads a number with its unit, such as {@code "1.1 min"}.
   *
   * @throws IllegalArgumentException naming the accepted units
   */
  public static Minutes parse(String text) {
    return new Minutes(UnitText.parse(text, "a time", UNITS));
  }

  public static Minutes ofSeconds(double seconds) {
    return new Minutes(seconds);
  }

  public static Minutes ofMinutes(double minutes) {
    return new Minutes(minutes * 60);
  }

  public double toSeconds() {
    return seconds;
  }

  public double toMinutes() {
    return seconds / 60;
  }

  /** Minutes to one decimal with the unit: {@code "41.5 min"}. */
  @Override
  public String toString() {
    return UnitText.number(toMinutes(), 1) + " min";
  }

  public Minutes plus(Minutes other) {
    return new Minutes(seconds + other.seconds);
  }

  public Minutes minus(Minutes other) {
    return new Minutes(seconds - other.seconds);
  }

  public Minutes times(double factor) {
    return new Minutes(seconds * factor);
  }

  @Override
  public int compareTo(Minutes other) {
    return Double.compare(seconds, other.seconds);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Minutes that && Double.compare(seconds, that.seconds) == 0;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(seconds);
  }
}
