package foilwright.pattern;

/**
 * A width that stays the same over a section, or runs evenly from a first to a last value. Slices
 * must be more than nothing; a background may be nothing.
 */
public record Run(Extent first, Extent last) {
  public Run {
    Require.notNegative(first, "a width");
    Require.notNegative(last, "a width");
  }

  public static Run of(Extent value) {
    return new Run(value, value);
  }

  public static Run ofMillimetres(double millimetres) {
    return of(Extent.ofMillimetres(millimetres));
  }

  public boolean isEven() {
    return first.equals(last);
  }
}
