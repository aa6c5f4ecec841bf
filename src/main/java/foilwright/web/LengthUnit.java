package foilwright.web;

import foilwright.units.Length;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The unit in which a page shows and takes lengths. */
public enum LengthUnit {
  MM("mm", 1, "1"),
  CM("cm", 2, "0.1"),
  INCH("in", 2, "0.05");

  private static final Pattern FRACTION =
      Pattern.compile("(?:(\\d{1,4})[\\s-]+)?(\\d{1,3})\\s*[/\u2044]\\s*(\\d{1,3})\\s*(\\D*)");
  private static final List<String> VULGAR =
      List.of(
          "\u00bc 1/4",
          "\u00bd 1/2",
          "\u00be 3/4",
          "\u215b 1/8",
          "\u215c 3/8",
          "\u215d 5/8",
          "\u215e 7/8");

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

  /** The word for several of it. */
  public String words() {
    return switch (this) {
      case MM -> "millimetres";
      case CM -> "centimetres";
      case INCH -> "inches";
    };
  }

  static LengthUnit of(String word) {
    return Arrays.stream(values()).filter(u -> u.word.equals(word)).findFirst().orElse(MM);
  }

  /**
   * What was typed as a number with a unit: a bare number, a decimal comma and fractions of an inch
   * such as {@code 21 1/2} are taken, and any unit of length may stand behind.
   */
  String withUnit(String typed) {
    String text = typed.strip();
    for (String vulgar : VULGAR) {
      text = text.replace(vulgar.substring(0, 1), " " + vulgar.substring(2)).strip();
    }
    Matcher fraction = FRACTION.matcher(text);
    if (fraction.matches() && !fraction.group(3).matches("0+")) {
      double whole = fraction.group(1) == null ? 0 : Integer.parseInt(fraction.group(1));
      double part =
          (double) Integer.parseInt(fraction.group(2)) / Integer.parseInt(fraction.group(3));
      text =
          BigDecimal.valueOf(whole + part)
                  .setScale(4, RoundingMode.HALF_UP)
                  .stripTrailingZeros()
                  .toPlainString()
              + " "
              + fraction.group(4);
      text = text.strip();
    }
    String point = text.matches("[+-]?\\d+,\\d+.*") ? text.replace(',', '.') : text;
    return point.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)") ? point + " " + word : point;
  }

  /** The number alone: to a tenth of a millimetre or a hundredth of a centimetre or inch. */
  String number(Length length) {
    double value =
        switch (this) {
          case MM -> length.toMillimetres();
          case CM -> length.toMillimetres() / 10;
          case INCH -> length.toInches();
        };
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** With its unit. */
  public String text(Length length) {
    return number(length) + " " + word;
  }
}
