package foilwright.drawing.svg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.drawing.Box;
import foilwright.drawing.Curve;
import foilwright.drawing.Ink;
import foilwright.drawing.Layer;
import foilwright.drawing.LineWeight;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Pen;
import foilwright.drawing.Point;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.TextSize;
import java.awt.Font;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXParseException;

class SvgWriterTest {
  private static final Pen LINE = Pen.of(Ink.BLACK, LineWeight.MEDIUM);

  private static Scene scene() {
    Mark strip =
        new Mark(
            "back-foil-17",
            Role.FOIL,
            Layer.FOILS,
            "Foil 17 <of> \"back & 'left'\"",
            Map.of("section", "back & 'left' style='x'"),
            List.of(
                Part.Shape.of(Curve.circle(new Point(30, 30), 12.3456), new Ink(0xe69f00), LINE),
                Part.Lettering.centred("17", new Point(30, 30), TextSize.SMALL, Ink.BLACK)));
    Mark box =
        Mark.plain(
            "scale-box",
            Role.SCALE_BOX,
            Layer.NOTES,
            Part.Shape.drawn(Curve.rectangle(new Box(10, 60, 50, 5)), LINE.dashed(1.5, 0.75)));
    return new Scene("trial", "A <trial>", "One foil & a box", 100, 80.5, List.of(box, strip));
  }

  private static Document read(String svg) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    var builder = factory.newDocumentBuilder();
    builder.setErrorHandler(
        new ErrorHandler() {
          @Override
          public void warning(SAXParseException e) throws SAXParseException {
            throw e;
          }

          @Override
          public void error(SAXParseException e) throws SAXParseException {
            throw e;
          }

          @Override
          public void fatalError(SAXParseException e) throws SAXParseException {
            throw e;
          }
        });
    return builder.parse(new InputSource(new StringReader(svg)));
  }

  @ParameterizedTest
  @EnumSource
  void isValidXmlThatBatikReads(SvgLetters letters) throws Exception {
    String svg = SvgWriter.write(scene(), letters);
    Element root = read(svg).getDocumentElement();
    assertEquals("svg", root.getLocalName());
    assertEquals("100mm", root.getAttribute("width"));
    assertEquals("80.5mm", root.getAttribute("height"));
    assertEquals("0 0 100 80.5", root.getAttribute("viewBox"));
    Document read =
        new SAXSVGDocumentFactory(null).createDocument("urn:sheet:trial", new StringReader(svg));
    assertEquals("foil", read.getElementById("back-foil-17").getAttribute("class"));
  }

  @Test
  void saysWhatEachMarkIs() throws Exception {
    Document svg = read(SvgWriter.write(scene(), SvgLetters.LINKED));
    NodeList groups = svg.getElementsByTagName("g");
    Element foil = find(groups, "back-foil-17");
    assertEquals("back & 'left' style='x'", foil.getAttribute("data-section"));
    assertEquals("graphics-symbol", foil.getAttribute("role"));
    assertEquals(
        "Foil 17 <of> \"back & 'left'\"",
        foil.getElementsByTagName("title").item(0).getTextContent());
    assertEquals("true", find(groups, "scale-box").getAttribute("aria-hidden"));
    Element root = svg.getDocumentElement();
    assertEquals("A <trial>", root.getFirstChild().getTextContent());
    assertEquals("trial-title", root.getAttribute("aria-labelledby"));
  }

  private static Element find(NodeList elements, String id) {
    for (int i = 0; i < elements.getLength(); i++) {
      Element element = (Element) elements.item(i);
      if (element.getAttribute("id").equals(id)) {
        return element;
      }
    }
    throw new AssertionError("no element " + id);
  }

  @Test
  void layersLieInTheirOrder() {
    String svg = SvgWriter.write(scene(), SvgLetters.LINKED);
    assertTrue(svg.indexOf("back-foil-17") < svg.indexOf("scale-box"));
  }

  @Test
  void stylesAreAttributesThatAStrictPolicyLetsThrough() {
    String svg = SvgWriter.write(scene(), SvgLetters.LINKED);
    assertTrue(svg.contains("stroke-width='0.26'"), svg);
    assertTrue(svg.contains("stroke-dasharray='1.5,0.75'"), svg);
    assertFalse(svg.contains("<style"));
    assertFalse(svg.contains(" style='fill"));
    assertFalse(svg.contains("stroke-linecap"), "ends are cut square at the end point");
  }

  @Test
  void sameBytesInAnyLocaleAndTimeZone() {
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    String expected = SvgWriter.write(scene(), SvgLetters.EMBEDDED);
    try {
      for (String tag : List.of("ar-EG-u-nu-arab", "de-DE", "tr-TR", "hi-IN-u-nu-deva")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
        assertEquals(expected, SvgWriter.write(scene(), SvgLetters.EMBEDDED), tag);
      }
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void theFontInsideSetsTheTextByTheSameAdvances() throws Exception {
    String svg = SvgWriter.write(scene(), SvgLetters.EMBEDDED);
    int from = svg.indexOf("base64,") + 7;
    byte[] font = Base64.getDecoder().decode(svg.substring(from, svg.indexOf(')', from)));
    Font read = Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(font));
    assertTrue(read.canDisplay('1') && read.canDisplay('7'));
    assertFalse(read.canDisplay('2'), "only what the sheet needs");
    double advance =
        read.deriveFont(100f)
            .createGlyphVector(new java.awt.font.FontRenderContext(null, true, true), "17")
            .getLogicalBounds()
            .getWidth();
    double placed =
        foilwright.drawing.Typeface.shipped().width("17", TextSize.SMALL)
            / TextSize.SMALL.millimetres()
            * 100;
    assertEquals(placed, advance, 0.05);
  }

  @Test
  void numbersAreShortAndRound() {
    assertEquals("0", SvgWriter.number(-0.001));
    assertEquals("12", SvgWriter.number(12));
    assertEquals("-0.5", SvgWriter.number(-0.5));
    assertEquals("3.05", SvgWriter.number(3.05));
    assertEquals("3.1", SvgWriter.number(3.099));
    assertThrows(IllegalArgumentException.class, () -> SvgWriter.number(Double.NaN));
  }

  @Test
  void sheetsRefuseTwoMarksOfOneName() {
    Mark mark = scene().marks().get(0);
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () -> new Scene("trial", "t", "d", 10, 10, List.of(mark, mark)));
    assertTrue(refused.getMessage().contains("back-foil-17"));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Part.Lettering("\u4e00", new Point(0, 0), TextSize.SMALL, Ink.BLACK));
  }
}
