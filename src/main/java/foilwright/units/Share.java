package foilwright.units;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A fraction of a whole; 1 is everything. Text form: {@code "45 %"}. Not limited to 0..1 here: a
 * document states its own range.
 */
public final class Share implements Comparable<Share> {
  private static final Map<String, Double> UNITS = units();
  public static final Share ZERO = new Share(0);

  private final double fraction;

  private Share(double fraction) {
    this.fraction = UnitText.finite(fraction, "a share") + 0.0;
  }

  private static Map<String, Double> units() {
    Map<String, Double> units = new LinkedHashMap<>();
    units.put("%", 0.01);
    return Collections.unmodifiableMap(units);
  }

  /**
   * Reads a number with its unit, such as {@code "45 %"}.
   *
   * @throws IllegalArgumentException naming the accepted units
   */
  public static Share parse(String text) {
    return new Share(UnitText.parse(text, "a share", UNITS));
  }

  public static Share ofFraction(double fraction) {
    return new Share(fraction);
  }

  public static Share ofPercent(double percent) {
    return new Share(percent / 100);
  }

  public double toFraction() {
    return fraction;
  }

  public double toPercent() {
    return fraction * 100;
  }

  /** Percent to one decimal with the sign: {@code "19.4 %"}. */
  @Override
  public String toString() {
    return UnitText.number(toPercent(), 1) + " %";
  }

  public Share plus(Share other) {
    return new Share(fraction + other.fraction);
  }

  public Share minus(Share other) {
    return new Share(fraction - other.fraction);
  }

  public Share times(double factor) {
    return new Share(fraction * factor);
  }

  @Override
  public int compareTo(Share other) {
    return Double.compare(fraction, other.fraction);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Share that && Double.compare(fraction, that.fraction) == 0;
  }

  @Override
  public int hashCode() {
    return Double.hashCode(fraction);
  }
}
