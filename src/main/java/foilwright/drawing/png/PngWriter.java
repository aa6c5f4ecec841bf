package foilwright.drawing.png;

import foilwright.drawing.Box;
import foilwright.drawing.Mark;
import foilwright.drawing.Page;
import foilwright.drawing.Painter;
import foilwright.drawing.Part;
import foilwright.drawing.Scene;
import foilwright.drawing.Typeface;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Paints a scene as a PNG picture. Letters are painted as their shapes: no font is asked for. */
public final class PngWriter {
  private static final double LEAST_PIXELS_PER_MM = 0.5;
  private static final double MOST_PIXELS_PER_MM = 40;

  private PngWriter() {}

  /**
   * The sheet on white, as many pixels wide and high as its paper asks for.
   *
   * @param pixelsPerMm 0.5 to 40; 11.8 is 300 to the inch
   */
  public static byte[] write(Scene scene, double pixelsPerMm) {
    if (!(pixelsPerMm >= LEAST_PIXELS_PER_MM && pixelsPerMm <= MOST_PIXELS_PER_MM)) {
      throw new IllegalArgumentException(
          pixelsPerMm
              + " pixels per mm is outside "
              + LEAST_PIXELS_PER_MM
              + " to "
              + MOST_PIXELS_PER_MM);
    }
    int width = (int) Math.round(scene.widthMm() * pixelsPerMm);
    int height = (int) Math.round(scene.heightMm() * pixelsPerMm);
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setColor(Color.WHITE);
    graphics.fillRect(0, 0, width, height);
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    graphics.scale(width / scene.widthMm(), height / scene.heightMm());
    Painter.paint(scene, new PngPage(graphics));
    graphics.dispose();
    return encoded(image);
  }

  private static byte[] encoded(BufferedImage image) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
    try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(bytes)) {
      if (!ImageIO.write(image, "png", stream)) {
        throw new IllegalStateException("this platform cannot write a PNG picture");
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the picture cannot be made", e);
    }
    return bytes.toByteArray();
  }

  /** Marks as they are; the format has no place for their names. */
  private record PngPage(Graphics2D graphics) implements Page {
    @Override
    public void open(Mark mark) {}

    @Override
    public void close(Mark mark) {}

    @Override
    public void draw(Part.Shape shape) {
      Painter.draw(shape, graphics);
    }

    @Override
    public void picture(Part.Photo photo) {
      Box box = photo.box();
      AffineTransform place = AffineTransform.getTranslateInstance(box.x(), box.y());
      place.scale(box.width() / photo.raster().width(), box.height() / photo.raster().height());
      graphics.setRenderingHint(
          RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
      graphics.drawImage(photo.raster().toImage(), place, null);
    }

    @Override
    public void letter(Part.Lettering lettering) {
      graphics.setPaint(Painter.toColour(lettering.ink()));
      graphics.fill(Painter.toShape(Typeface.shipped().outline(lettering)));
    }
  }
}
