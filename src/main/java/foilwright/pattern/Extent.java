package foilwright.pattern;

import foilwright.units.Length;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * A length that is either absolute ({@code "12 mm"}) or a proportion of a named head measure
 * ({@code "0.4 of front-to-back"}), so that a pattern fits another head.
 */
public sealed interface Extent {
  /** A length on every head. */
  record Absolute(Length length) implements Extent {
    public Absolute {
      Objects.requireNonNull(length);
    }
  }

  /** A plain fraction (1 is the whole) of a head measure. */
  record Proportion(double fraction, HeadMeasure of) implements Extent {
    public Proportion {
      Objects.requireNonNull(of);
      if (!Double.isFinite(fraction)) {
        throw new IllegalArgumentException("a proportion must be a finite number, not " + fraction);
      }
    }
  }

  static Extent zero() {
    return new Absolute(Length.ZERO);
  }

  static Extent of(Length length) {
    return new Absolute(length);
  }

  static Extent ofMillimetres(double millimetres) {
    return new Absolute(Length.ofMillimetres(millimetres));
  }

  /**
   * Reads {@code "12 mm"} or {@code "0.4 of front-to-back"}.
   *
   * @throws IllegalArgumentException naming the accepted forms
   */
  static Extent parse(String text) {
    int of = text.indexOf(" of ");
    if (of < 0) {
      return new Absolute(Length.parse(text));
    }
    String number = text.substring(0, of).strip();
    String name = text.substring(of + 4).strip();
    HeadMeasure measure =
        Arrays.stream(HeadMeasure.values())
            .filter(m -> m.words().equals(name))
            .findFirst()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "\""
                            + name
                            + "\" is not a measure of the head; use "
                            + Arrays.stream(HeadMeasure.values())
                                .map(HeadMeasure::words)
                                .collect(Collectors.joining(", "))));
    if (!number.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)")) {
      throw new IllegalArgumentException(
          "\"" + text + "\" is not a proportion; write for example \"0.4 of front-to-back\"");
    }
    return new Proportion(Double.parseDouble(number), measure);
  }

  /** The same kind of length, so many times as long. */
  default Extent times(double factor) {
    return match(
        a -> of(a.length().times(factor)), p -> new Proportion(p.fraction() * factor, p.of()));
  }

  default <R> R match(Function<Absolute, R> absolute, Function<Proportion, R> proportion) {
    if (this instanceof Absolute a) {
      return absolute.apply(a);
    }
    return proportion.apply((Proportion) this);
  }

  /** The length on a head with these measures. */
  default Length resolve(HeadDimensions head) {
    return match(Absolute::length, p -> head.of(p.of()).times(p.fraction()));
  }

  /** Millimetres of an absolute length, or the fraction of a proportion: its sign is the sign. */
  default double amount() {
    return match(a -> a.length().toMillimetres(), Proportion::fraction);
  }

  /** The shortest text that {@link #parse} reads back to the same value. */
  default String text() {
    return match(
        a -> plain(a.length().toMillimetres()) + " mm",
        p -> plain(p.fraction()) + " of " + p.of().words());
  }

  private static String plain(double value) {
    BigDecimal decimal = BigDecimal.valueOf(value).stripTrailingZeros();
    return decimal.signum() == 0 ? "0" : decimal.toPlainString();
  }
}
