package foilwright.drawing;

/** The three widths of line that a sheet uses. */
public enum LineWeight {
  FINE(0.13),
  MEDIUM(0.26),
  STRONG(0.52);

  private final double millimetres;

  LineWeight(double millimetres) {
    this.millimetres = millimetres;
  }

  public double millimetres() {
    return millimetres;
  }
}
