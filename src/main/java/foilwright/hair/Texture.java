package foilwright.hair;

/**
 * How hair bends by itself, as a coil round the line that it would follow if it were straight.
 *
 * <p>The measures are settings of this program, without a source.
 */
public enum Texture {
  STRAIGHT("straight", 0.5, 75),
  WAVED("waved", 6, 62),
  CURLED("curled", 8, 36);

  private final String words;
  private final double radiusMm;
  private final double turnMm;

  Texture(String words, double radiusMm, double turnMm) {
    this.words = words;
    this.radiusMm = radiusMm;
    this.turnMm = turnMm;
  }

  /** The word used in documents and on sheets. */
  public String words() {
    return words;
  }

  /** How far the hair bends to either side of its line, millimetres: it widens the hair. */
  public double radiusMm() {
    return radiusMm;
  }

  /** Length of one bend to and fro along the line, millimetres. */
  public double turnMm() {
    return turnMm;
  }

  /**
   * Length along the line for a length along the hair, 0 to 1: the coil of a circle's radius has 1
   * / sqrt(1 + (2 pi radius / turn)^2) of its length.
   */
  public double shortening() {
    double slope = 2 * Math.PI * radiusMm / turnMm;
    return 1 / Math.sqrt(1 + slope * slope);
  }
}
