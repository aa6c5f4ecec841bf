package foilwright.document;

import foilwright.units.Angle;
import foilwright.units.Density;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.function.Function;

/**
 * A kind of quantity: how its text is read and written.
 *
 * @param example a text that is accepted
 * @param unit the unit that is written
 * @param toUnit the number of those units; may be off in the last bit
 */
record Kind<Q>(String example, Function<String, Q> parse, String unit, Function<Q, Double> toUnit) {
  static final Kind<Length> LENGTH =
      new Kind<>("12 mm", Length::parse, "mm", Length::toMillimetres);
  static final Kind<Angle> ANGLE = new Kind<>("35 deg", Angle::parse, "deg", Angle::toDegrees);
  static final Kind<Minutes> MINUTES =
      new Kind<>("1.5 min", Minutes::parse, "min", Minutes::toMinutes);
  static final Kind<Share> SHARE = new Kind<>("45 %", Share::parse, "%", Share::toPercent);
  static final Kind<Mass> MASS = new Kind<>("30 g", Mass::parse, "g", Mass::toGrams);
  static final Kind<Density> DENSITY =
      new Kind<>("200 per cm2", Density::parse, "per cm2", Density::toHairsPerSquareCentimetre);

  /** A developer's label: percent, or volumes, of which labels say 10 where they say 3 %. */
  static final Kind<Share> STRENGTH = new Kind<>("6 %", Kind::strength, "%", Share::toPercent);

  private static Share strength(String text) {
    String stripped = text.strip();
    if (!stripped.endsWith("vol")) {
      return Share.parse(text);
    }
    String number = stripped.substring(0, stripped.length() - 3).strip();
    if (!number.matches("\\d{1,4}(\\.\\d{1,9})?")) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is not a strength; write a number and %, vol");
    }
    return Share.ofPercent(Double.parseDouble(number) * 3 / 10);
  }

  /**
   * The shortest text that reads back to the very same value.
   *
   * @throws IllegalStateException when no text of 17 digits does, which the units rule out
   */
  String write(Q value) {
    double number = toUnit.apply(value);
    for (int digits = 1; digits <= 17; digits++) {
      BigDecimal rounded = new BigDecimal(number).round(new MathContext(digits));
      String text = plain(rounded) + " " + unit;
      if (parse.apply(text).equals(value)) {
        return text;
      }
    }
    return neighbour(value, number);
  }

  /** A conversion may be off in the last bit; the true number is then a neighbour. */
  private String neighbour(Q value, double number) {
    double low = number;
    double high = number;
    for (int step = 0; step < 4; step++) {
      low = Math.nextDown(low);
      high = Math.nextUp(high);
      for (double candidate : new double[] {low, high}) {
        String text = plain(new BigDecimal(candidate).round(new MathContext(17))) + " " + unit;
        if (parse.apply(text).equals(value)) {
          return text;
        }
      }
    }
    throw new IllegalStateException("no text reads back to " + value);
  }

  private static String plain(BigDecimal number) {
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }
}
