package foilwright.units;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads and writes a number followed by a unit; shared by all quantities of this package. */
final class UnitText {
  private static final Pattern FORM =
      Pattern.compile("\\s*([+-]?(?:\\d+\\.?\\d*|\\.\\d+))\\s*([^\\s\\d].*?)?\\s*");

  private static final Pattern DECIMAL_COMMA = Pattern.compile("\\s*([+-]?\\d+),(\\d+(?:\\D.*)?)");

  private static final Pattern FRACTION =
      Pattern.compile("^[\\s\\d+-]*(?:\\d\\s*[/\u2044]\\s*\\d|[\u00bc-\u00be\u215b-\u215e])");

  private UnitText() {}

  /**
   * Value of {@code text} in the base unit.
   *
   * @param factors unit spelling to its size in the base unit; the iteration order is the order in
   *     which the accepted units are named in the message
   * @throws IllegalArgumentException with the accepted units, when the text is not a number and a
   *     unit
   */
  static double parse(String text, String what, Map<String, Double> factors) {
    checkNumber(text);
    Matcher matcher = FORM.matcher(text);
    if (!matcher.matches()) {
      throw new IllegalArgumentException(
          "\""
              + text
              + "\" is not "
              + what
              + "; write a number and a unit ("
              + names(factors)
              + ")");
    }
    String unit = matcher.group(2);
    if (unit == null) {
      throw new IllegalArgumentException(
          "\"" + text.strip() + "\" has no unit; " + what + " takes " + names(factors));
    }
    Double factor = factors.get(unit);
    if (factor == null) {
      throw new IllegalArgumentException(
          "\"" + unit + "\" is not a unit of " + what + "; use " + names(factors));
    }
    return Double.parseDouble(matcher.group(1)) * factor;
  }

  /** Numbers that people write and that are told by more than "not a unit". */
  private static void checkNumber(String text) {
    Matcher comma = DECIMAL_COMMA.matcher(text);
    if (comma.matches()) {
      throw new IllegalArgumentException(
          "\"" + text + "\" has a comma; write " + comma.group(1) + "." + comma.group(2));
    }
    if (FRACTION.matcher(text).find()) {
      throw new IllegalArgumentException(
          "\"" + text + "\" has a fraction; write it as a decimal, 0.125 for an eighth");
    }
  }

  private static String names(Map<String, Double> factors) {
    return String.join(", ", factors.keySet());
  }

  /** Plain decimal text, half-up, without trailing zeros beyond the point. */
  static String number(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    rounded = rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
    return rounded.toPlainString();
  }

  static double finite(double value, String what) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(what + " must be a finite number, not " + value);
    }
    return value;
  }
}
