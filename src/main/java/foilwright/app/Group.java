package foilwright.app;

import foilwright.service.TimeRange;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Map;

/** A group of a plan's tree, its members in the order of writing; keys name their units. */
final class Group {
  private final Map<String, Object> members = new LinkedHashMap<>();

  Map<String, Object> members() {
    return members;
  }

  Group put(String key, Object value) {
    members.put(key, value);
    return this;
  }

  Group mm(String key, Length length) {
    return number(key, length.toMillimetres(), 3);
  }

  Group minutes(String key, Minutes time) {
    return number(key, time.toMinutes(), 3);
  }

  Group grams(String key, Mass mass) {
    return number(key, mass.toGrams(), 3);
  }

  Group share(String key, Share share) {
    return number(key, share.toFraction(), 6);
  }

  Group range(String key, TimeRange range) {
    return put(key, new Group().minutes("p50", range.p50()).minutes("p90", range.p90()).members());
  }

  Group number(String key, double value, int decimals) {
    return put(key, rounded(value, decimals));
  }

  static BigDecimal rounded(double value, int decimals) {
    BigDecimal number = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    return number.signum() == 0 ? BigDecimal.ZERO : number.stripTrailingZeros();
  }
}
