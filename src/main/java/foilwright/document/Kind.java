package foilwright.document;

import foilwright.units.Angle;
import foilwright.units.Density;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * A kind of quantity: how its text is read and written.
 *
 * @param example a text that is accepted
 * @param units the units that are written, the usual one first
 */
record Kind<Q>(String example, Function<String, Q> parse, List<Unit<Q>> units) {

  private static final int PLAIN = 16;

  /**
   * A unit that is written.
   *
   * @param number how many of those units a quantity is; may be off in the last bit
   */
  record Unit<Q>(String name, ToDoubleFunction<Q> number) {}

  static final Kind<Length> LENGTH =
      new Kind<>("12 mm", Length::parse, List.of(new Unit<>("mm", Length::toMillimetres)));
  static final Kind<Angle> ANGLE =
      new Kind<>(
          "35 deg",
          Angle::parse,
          List.of(new Unit<>("deg", Angle::toDegrees), new Unit<>("rad", Angle::toRadians)));
  static final Kind<Minutes> MINUTES =
      new Kind<>(
          "1.5 min",
          Minutes::parse,
          List.of(new Unit<>("min", Minutes::toMinutes), new Unit<>("s", Minutes::toSeconds)));
  static final Kind<Share> SHARE =
      new Kind<>("45 %", Share::parse, List.of(new Unit<>("%", Share::toPercent)));
  static final Kind<Mass> MASS =
      new Kind<>(
          "30 g",
          Mass::parse,
          List.of(new Unit<>("g", Mass::toGrams), new Unit<>("mg", Mass::toMilligrams)));
  static final Kind<Density> DENSITY =
      new Kind<>(
          "200 per cm2",
          Density::parse,
          List.of(new Unit<>("per cm2", Density::toHairsPerSquareCentimetre)));

  /** A developer's label: percent, or volumes, of which labels say 10 where they say 3 %. */
  static final Kind<Share> STRENGTH =
      new Kind<>("6 %", Kind::strength, List.of(new Unit<>("%", Share::toPercent)));

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
   * A short text that reads back to the very same value, in the usual unit when that takes at most
   * {@value #PLAIN} characters. A share that was calculated rather than read may have no such text;
   * it then reads back to within two roundings.
   */
  String write(Q value) {
    Unit<Q> usual = units.get(0);
    Optional<String> plain = shortest(usual, value, value::equals);
    if (plain.isPresent() && plain.get().length() <= PLAIN) {
      return plain.get();
    }
    double number = usual.number().applyAsDouble(value);
    double near = 2 * Math.ulp(number);
    return units.stream()
        .flatMap(unit -> shortest(unit, value, value::equals).stream())
        .min(Comparator.comparingInt(String::length))
        .or(
            () ->
                shortest(
                    usual, value, q -> Math.abs(usual.number().applyAsDouble(q) - number) <= near))
        .orElseThrow(() -> new IllegalStateException("no text reads back to " + value));
  }

  /** The conversion to the unit may be off in the last bit, hence the neighbours. */
  private Optional<String> shortest(Unit<Q> unit, Q value, Predicate<Q> good) {
    double number = unit.number().applyAsDouble(value);
    for (double near : new double[] {number, Math.nextUp(number), Math.nextDown(number)}) {
      for (int digits = 1; digits <= 17; digits++) {
        String text =
            plain(new BigDecimal(near).round(new MathContext(digits))) + " " + unit.name();
        if (good.test(parse.apply(text))) {
          return Optional.of(text);
        }
      }
    }
    return Optional.empty();
  }

  private static String plain(BigDecimal number) {
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }
}
