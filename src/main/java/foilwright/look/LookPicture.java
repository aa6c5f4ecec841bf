package foilwright.look;

/**
 * A picture as plain numbers.
 *
 * <p>Each pixel holds eight bits each of opacity, red, green and blue, opacity highest, red, green
 * and blue as sRGB and not multiplied by the opacity; row by row from the top left. Beside figure
 * and hair a pixel is clear.
 */
public final class LookPicture {
  private final LookSide side;
  private final int width;
  private final int height;
  private final double pixelsPerMm;
  private final int[] pixels;

  LookPicture(LookSide side, int width, int height, double pixelsPerMm, int[] pixels) {
    this.side = side;
    this.width = width;
    this.height = height;
    this.pixelsPerMm = pixelsPerMm;
    this.pixels = pixels;
  }

  public LookSide side() {
    return side;
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  /** Scale, the same in all pictures of one look. */
  public double pixelsPerMm() {
    return pixelsPerMm;
  }

  /** One pixel. */
  public int at(int column, int row) {
    return pixels[row * width + column];
  }

  /** A copy of all pixels. */
  public int[] toArray() {
    return pixels.clone();
  }
}
