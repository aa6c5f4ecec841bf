package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.drawing.Scene;
import foilwright.drawing.pdf.PdfWriter;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.placement.Placement;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A sheet as PDF, read again by PDFBox. */
class PdfSheetTest {
  private static final double POINTS_PER_MM = 72 / 25.4;
  private static final Head HEAD = SampleMaps.head(HeadKind.WOMAN);
  private static final Placement PLACEMENT = SampleMaps.place("dark-rim", HEAD);

  private static List<Scene> pages(Paper paper) {
    return MapSheet.build(DrawnHead.of(HEAD), PLACEMENT, SampleMaps.notes(PLACEMENT), paper);
  }

  private static Paper paper(String words) {
    return words.equals("A4") ? Paper.A4 : Paper.LETTER;
  }

  /** Widths of the upright rectangles that are drawn on a page, in points. */
  private static final class Rectangles extends PDFGraphicsStreamEngine {
    private final List<Point2D> path = new ArrayList<>();
    private final List<Double> widthsMm = new ArrayList<>();

    Rectangles(PDPage page) {
      super(page);
    }

    static List<Double> of(PDPage page) throws IOException {
      Rectangles engine = new Rectangles(page);
      engine.processPage(page);
      return engine.widthsMm;
    }

    @Override
    public void moveTo(float x, float y) {
      path.add(new Point2D.Float(x, y));
    }

    @Override
    public void lineTo(float x, float y) {
      path.add(new Point2D.Float(x, y));
    }

    @Override
    public void strokePath() {
      if (path.size() == 4
          && path.get(0).getY() == path.get(1).getY()
          && path.get(1).getX() == path.get(2).getX()) {
        widthsMm.add(Math.abs(path.get(1).getX() - path.get(0).getX()) / POINTS_PER_MM);
      }
      path.clear();
    }

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
      path.add(new Point2D.Float(x3, y3));
    }

    @Override
    public Point2D getCurrentPoint() {
      return path.isEmpty() ? new Point2D.Float() : path.get(path.size() - 1);
    }

    @Override
    public void closePath() {}

    @Override
    public void endPath() {
      path.clear();
    }

    @Override
    public void fillPath(int rule) {
      path.clear();
    }

    @Override
    public void fillAndStrokePath(int rule) {
      path.clear();
    }

    @Override
    public void appendRectangle(Point2D a, Point2D b, Point2D c, Point2D d) {}

    @Override
    public void drawImage(PDImage image) {}

    @Override
    public void clip(int rule) {}

    @Override
    public void shadingFill(COSName name) {}
  }

  @ParameterizedTest
  @ValueSource(strings = {"A4", "Letter"})
  void theBoxOfFiftyMillimetresMeasuresFifty(String words) throws IOException {
    Paper paper = paper(words).across();
    try (PDDocument document = Loader.loadPDF(PdfWriter.write("Map", pages(paper)))) {
      PDPage page = document.getPage(0);
      assertEquals(paper.widthMm(), page.getMediaBox().getWidth() / POINTS_PER_MM, 0.01);
      assertEquals(paper.heightMm(), page.getMediaBox().getHeight() / POINTS_PER_MM, 0.01);
      assertTrue(
          Rectangles.of(page).stream().anyMatch(width -> Math.abs(width - 50) <= 0.05),
          "no box of 50 mm");
    }
  }

  @Test
  void fontsAreEmbeddedAndTheTextCanBeTaken() throws IOException {
    try (PDDocument document = Loader.loadPDF(PdfWriter.write("Map", pages(Paper.A4)))) {
      for (PDPage page : document.getPages()) {
        for (COSName name : page.getResources().getFontNames()) {
          PDFont font = page.getResources().getFont(name);
          assertTrue(font.isEmbedded(), font.getName());
        }
      }
      String text = new PDFTextStripper().getText(document);
      assertTrue(text.contains("rinse at once."), text);
      assertTrue(text.contains("50 mm when printed full size"), text);
      assertEquals("Map", document.getDocumentInformation().getTitle());
    }
  }

  @Test
  void pagesOfABookAreNumbered() throws IOException {
    List<Scene> pages = List.of(pages(Paper.A4).get(0), pages(Paper.LETTER).get(0));
    byte[] pdf = PdfWriter.write("Book", Book.numbered(pages));
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertEquals(2, document.getNumberOfPages());
      assertTrue(new PDFTextStripper().getText(document).contains("Page 2 of 2"));
    }
  }

  @Test
  void theBytesDependOnNoLocaleOrZone() {
    byte[] here = PdfWriter.write("Map", pages(Paper.A4));
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
      assertArrayEquals(here, PdfWriter.write("Map", pages(Paper.A4)));
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }
}
