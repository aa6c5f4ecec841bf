package foilwright.drawing.pdf;

import foilwright.drawing.Box;
import foilwright.drawing.Curve;
import foilwright.drawing.Ink;
import foilwright.drawing.Mark;
import foilwright.drawing.Page;
import foilwright.drawing.Painter;
import foilwright.drawing.Part;
import foilwright.drawing.Pen;
import foilwright.drawing.Scene;
import foilwright.drawing.Typeface;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.apache.pdfbox.util.Matrix;

/** Writes scenes as the pages of one PDF. */
public final class PdfWriter {
  private static final double POINTS_PER_MM = 72 / 25.4;
  private static final long DOCUMENT_ID = 1;
  private static final int BUTT_CAP = 0;
  private static final int ROUND_JOIN = 1;

  private PdfWriter() {}

  /**
   * One page for each scene, of the scene's paper size.
   *
   * @param title of the whole
   * @param scenes at least one
   */
  public static byte[] write(String title, List<Scene> scenes) {
    if (scenes.isEmpty()) {
      throw new IllegalArgumentException("a PDF without a page cannot be written");
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 17);
    try (PDDocument document = new PDDocument()) {
      // A constant stands where the format would else take the time of writing.
      document.setDocumentId(DOCUMENT_ID);
      PDDocumentInformation information = new PDDocumentInformation();
      information.setTitle(title);
      information.setCreator("foilwright");
      document.setDocumentInformation(information);
      document.getDocumentCatalog().setLanguage("en-GB");
      PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
      preferences.setDisplayDocTitle(true);
      preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
      document.getDocumentCatalog().setViewerPreferences(preferences);
      PDFont font =
          PDType0Font.load(
              document, new ByteArrayInputStream(Typeface.shipped().fileBytes()), true);
      for (Scene scene : scenes) {
        add(scene, document, font);
      }
      document.save(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException("the PDF cannot be made", e);
    }
    return bytes.toByteArray();
  }

  private static void add(Scene scene, PDDocument document, PDFont font) throws IOException {
    float width = (float) (scene.widthMm() * POINTS_PER_MM);
    float height = (float) (scene.heightMm() * POINTS_PER_MM);
    PDPage page = new PDPage(new PDRectangle(width, height));
    document.addPage(page);
    try (PDPageContentStream content = new PDPageContentStream(document, page)) {
      float k = (float) POINTS_PER_MM;
      content.transform(new Matrix(k, 0, 0, -k, 0, height));
      content.setLineJoinStyle(ROUND_JOIN);
      content.setLineCapStyle(BUTT_CAP);
      Painter.paint(scene, new PdfPage(document, content, font));
    }
  }

  /** What a page cannot be told by an exception that is checked. */
  private interface Writing {
    void run() throws IOException;
  }

  private static void write(Writing writing) {
    try {
      writing.run();
    } catch (IOException e) {
      throw new UncheckedIOException("the PDF cannot be made", e);
    }
  }

  /** Marks as they are; the format has no place for their names. */
  private record PdfPage(PDDocument document, PDPageContentStream content, PDFont font)
      implements Page {
    @Override
    public void open(Mark mark) {}

    @Override
    public void close(Mark mark) {}

    @Override
    public void draw(Part.Shape shape) {
      shape
          .fill()
          .ifPresent(
              ink ->
                  write(
                      () -> {
                        content.setNonStrokingColor(red(ink), green(ink), blue(ink));
                        trace(shape.curve());
                        content.fillEvenOdd();
                      }));
      shape
          .pen()
          .ifPresent(
              pen ->
                  write(
                      () -> {
                        set(pen);
                        trace(shape.curve());
                        content.stroke();
                      }));
    }

    private void set(Pen pen) throws IOException {
      content.setStrokingColor(red(pen.ink()), green(pen.ink()), blue(pen.ink()));
      content.setLineWidth((float) pen.weight().millimetres());
      float[] dash = new float[pen.dash().size()];
      for (int i = 0; i < dash.length; i++) {
        dash[i] = pen.dash().get(i).floatValue();
      }
      content.setLineDashPattern(dash, 0);
    }

    private void trace(Curve curve) {
      curve.visit(
          new Curve.Sink() {
            @Override
            public void moveTo(double x, double y) {
              write(() -> content.moveTo((float) x, (float) y));
            }

            @Override
            public void lineTo(double x, double y) {
              write(() -> content.lineTo((float) x, (float) y));
            }

            @Override
            public void curveTo(double x1, double y1, double x2, double y2, double x, double y) {
              write(
                  () ->
                      content.curveTo(
                          (float) x1, (float) y1, (float) x2, (float) y2, (float) x, (float) y));
            }

            @Override
            public void close() {
              write(content::closePath);
            }
          });
    }

    @Override
    public void picture(Part.Photo photo) {
      Box box = photo.box();
      write(
          () ->
              content.drawImage(
                  LosslessFactory.createFromImage(document, photo.raster().toImage()),
                  new Matrix(
                      (float) box.width(),
                      0,
                      0,
                      (float) -box.height(),
                      (float) box.x(),
                      (float) box.bottom())));
    }

    @Override
    public void letter(Part.Lettering lettering) {
      write(
          () -> {
            content.beginText();
            content.setFont(font, (float) lettering.size().millimetres());
            Ink ink = lettering.ink();
            content.setNonStrokingColor(red(ink), green(ink), blue(ink));
            content.setTextMatrix(
                new Matrix(
                    1, 0, 0, -1, (float) lettering.start().x(), (float) lettering.start().y()));
            content.showText(lettering.text());
            content.endText();
          });
    }

    private static float red(Ink ink) {
      return ink.red() / 255f;
    }

    private static float green(Ink ink) {
      return ink.green() / 255f;
    }

    private static float blue(Ink ink) {
      return ink.blue() / 255f;
    }
  }
}
