package foilwright.drawing;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A picture of pixels: eight bits each of opacity, red, green and blue, opacity highest, colours as
 * sRGB and not multiplied by the opacity; row by row from the top left.
 */
public final class Raster {
  private final int width;
  private final int height;
  private final int[] pixels;

  private Raster(int width, int height, int[] pixels) {
    this.width = width;
    this.height = height;
    this.pixels = pixels;
  }

  /**
   * A picture of given pixels.
   *
   * @throws IllegalArgumentException when their number is not width times height
   */
  public static Raster of(int width, int height, int[] pixels) {
    if (width < 1 || height < 1 || pixels.length != width * height) {
      throw new IllegalArgumentException(
          pixels.length + " pixels do not make " + width + " by " + height);
    }
    return new Raster(width, height, pixels.clone());
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  /** The same picture in grey, each pixel as light as it was. */
  public Raster inGrey() {
    int[] grey = new int[pixels.length];
    for (int i = 0; i < grey.length; i++) {
      grey[i] = (pixels[i] & 0xff000000) | new Ink(pixels[i] & 0xffffff).grey().rgb();
    }
    return new Raster(width, height, grey);
  }

  /** As an image of the platform. */
  public BufferedImage toImage() {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
    image.setRGB(0, 0, width, height, pixels, 0, width);
    return image;
  }

  /** As a PNG file. */
  public byte[] toPng() {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
    try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(bytes)) {
      if (!ImageIO.write(toImage(), "png", stream)) {
        throw new IllegalStateException("this platform cannot write a PNG picture");
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the picture cannot be made", e);
    }
    return bytes.toByteArray();
  }
}
