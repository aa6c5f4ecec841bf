package foilwright.drawing;

/**
 * The three sizes of the one typeface. Capitals and figures of the smallest are 2.2 mm high on
 * paper.
 */
public enum TextSize {
  SMALL(3.05),
  HEADING(3.9),
  TITLE(6.2);

  private final double millimetres;

  TextSize(double millimetres) {
    this.millimetres = millimetres;
  }

  /** The size of the em square in millimetres. */
  public double millimetres() {
    return millimetres;
  }
}
