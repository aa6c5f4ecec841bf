package foilwright.web;

import foilwright.units.Length;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** The unit in which a page shows and takes lengths. */
public enum LengthUnit {
  MM("mm", 1, "1"),
  INCH("in", 2, "0.05");

  private final String word;
  private final int decimals;
  private final String step;

  LengthUnit(String word, int decimals, String step) {
    this.word = word;
    this.decimals = decimals;
    this.step = step;
  }

  /** The word behind a number and in an address. */
  public String word() {
    return word;
  }

  /** By how much an arrow key changes a length. */
  public String step() {
    return step;
  }

  static LengthUnit of(String word) {
    return word.equals(INCH.word) ? INCH : MM;
  }

  /** The number alone: to a tenth of a millimetre or a hundredth of an inch. */
  String number(Length length) {
    double value = this == MM ? length.toMillimetres() : length.toInches();
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** With its unit. */
  public String text(Length length) {
    return number(length) + " " + word;
  }
}
