package foilwright.drawing.png;

import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.PNGTranscoder;

/** Renders an SVG sheet as PNG. */
public final class PngWriter {
  private static final double LEAST_PIXELS_PER_MM = 0.5;
  private static final double MOST_PIXELS_PER_MM = 40;

  private PngWriter() {}

  /**
   * The sheet on white, as many pixels wide and high as its paper asks for.
   *
   * @param svg a sheet sized in millimetres; with its lettering outlined it needs no font
   * @param pixelsPerMm 0.5 to 40; 11.8 is 300 to the inch
   * @throws IllegalArgumentException when the text is not an SVG that can be rendered
   */
  public static byte[] write(String svg, double pixelsPerMm) {
    if (!(pixelsPerMm >= LEAST_PIXELS_PER_MM && pixelsPerMm <= MOST_PIXELS_PER_MM)) {
      throw new IllegalArgumentException(
          pixelsPerMm
              + " pixels per mm is outside "
              + LEAST_PIXELS_PER_MM
              + " to "
              + MOST_PIXELS_PER_MM);
    }
    PNGTranscoder transcoder = new PNGTranscoder();
    transcoder.addTranscodingHint(
        PNGTranscoder.KEY_PIXEL_UNIT_TO_MILLIMETER, (float) (1 / pixelsPerMm));
    transcoder.addTranscodingHint(PNGTranscoder.KEY_BACKGROUND_COLOR, Color.WHITE);
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    try {
      transcoder.transcode(new TranscoderInput(new StringReader(svg)), new TranscoderOutput(png));
    } catch (TranscoderException e) {
      throw new IllegalArgumentException("the drawing cannot be rendered: " + e.getMessage(), e);
    }
    return png.toByteArray();
  }
}
