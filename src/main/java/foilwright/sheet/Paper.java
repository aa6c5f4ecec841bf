package foilwright.sheet;

/**
 * A size of paper and which way it lies. Every sheet fits every paper named here.
 *
 * @param words such as {@code A4}
 * @param widthMm as it lies
 * @param heightMm as it lies
 */
public record Paper(String words, double widthMm, double heightMm) {
  /** Upright. */
  public static final Paper A4 = new Paper("A4", 210, 297);

  /** 8.5 by 11 inches, upright. */
  public static final Paper LETTER = new Paper("Letter", 215.9, 279.4);

  private static final double LEAST_MM = 200;

  public Paper {
    if (!(widthMm >= LEAST_MM && heightMm >= LEAST_MM)) {
      throw new IllegalArgumentException(
          "a sheet needs at least "
              + LEAST_MM
              + " mm each way, not "
              + widthMm
              + " by "
              + heightMm
              + " mm");
    }
  }

  /** The same paper with its long side level. */
  public Paper across() {
    return widthMm >= heightMm ? this : turned();
  }

  /** The same paper with its short side level. */
  public Paper upright() {
    return widthMm <= heightMm ? this : turned();
  }

  private Paper turned() {
    return new Paper(words, /* widthMm= */ heightMm, /* heightMm= */ widthMm);
  }
}
