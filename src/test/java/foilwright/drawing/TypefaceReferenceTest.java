package foilwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.Area;
import java.awt.geom.Rectangle2D;
import java.io.InputStream;
import org.junit.jupiter.api.Test;

/** The typeface read by this program against the same file read by the JDK's own reader. */
class TypefaceReferenceTest {
  private static final String TEXT =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZ abcdefghijklmnopqrstuvwxyz 0123456789 .,;:()+-/%&'\"<>"
          + "\u00e9\u00c5\u00f6\u00bd\u00d7\u2013\u2022\u2190\u2192\u2264\u00b0\u00b2";

  /** At one unit of the font file each, hinting has nothing to round. */
  private static final float EM = 2048;

  private static final FontRenderContext EXACT = new FontRenderContext(null, true, true);

  private static Font platformFont() throws Exception {
    try (InputStream in = Typeface.class.getResourceAsStream("font/DejaVuSans.ttf")) {
      return Font.createFont(Font.TRUETYPE_FONT, in).deriveFont(EM);
    }
  }

  @Test
  void advancesAreThoseOfTheFile() throws Exception {
    Font font = platformFont();
    Typeface face = Typeface.shipped();
    for (int c : Typeface.characters(TEXT)) {
      String text = Character.toString(c);
      double expected = font.createGlyphVector(EXACT, text).getGlyphMetrics(0).getAdvanceX();
      double width = face.width(text, TextSize.SMALL) / TextSize.SMALL.millimetres() * EM;
      assertEquals(expected, width, 0.5, text);
    }
  }

  @Test
  void outlinesAreThoseOfTheFile() throws Exception {
    Font font = platformFont();
    double scale = EM / TextSize.TITLE.millimetres();
    for (int c : Typeface.characters(TEXT)) {
      if (c == ' ') {
        continue;
      }
      String text = Character.toString(c);
      GlyphVector glyphs = font.createGlyphVector(EXACT, text);
      Part.Lettering lettering =
          new Part.Lettering(text, new Point(0, 0), TextSize.TITLE, Ink.BLACK);
      Curve curve = Typeface.shipped().outline(lettering).placed(scale, scale, 0, 0);
      Area difference = new Area(Painter.toShape(curve));
      difference.exclusiveOr(new Area(glyphs.getOutline()));
      Rectangle2D ours = new Area(Painter.toShape(curve)).getBounds2D();
      Rectangle2D theirs = new Area(glyphs.getOutline()).getBounds2D();
      assertEquals(theirs.getMinX(), ours.getMinX(), 1, text);
      assertEquals(theirs.getMaxX(), ours.getMaxX(), 1, text);
      assertEquals(theirs.getMinY(), ours.getMinY(), 1, text);
      assertEquals(theirs.getMaxY(), ours.getMaxY(), 1, text);
      Rectangle2D rest = difference.getBounds2D();
      assertTrue(new Area(thickParts(difference)).isEmpty(), text + " differs within " + rest);
    }
  }

  /** What is left of an area after everything thinner than 2 units of the file is taken away. */
  private static Area thickParts(Area area) {
    Area left = new Area(area);
    java.awt.Shape border =
        new java.awt.BasicStroke(
                0.2f, java.awt.BasicStroke.CAP_ROUND, java.awt.BasicStroke.JOIN_ROUND)
            .createStrokedShape(area);
    left.subtract(new Area(border));
    return left;
  }

  @Test
  void smallestCapitalsAreTallEnoughInPrint() {
    assertTrue(Typeface.shipped().capHeight(TextSize.SMALL) >= 2.2);
  }

  @Test
  void unknownCharactersAreTold() {
    assertTrue(Typeface.shipped().encodes(TEXT));
    assertFalse(Typeface.shipped().encodes("\u4e00"));
  }
}
