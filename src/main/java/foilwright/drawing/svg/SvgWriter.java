package foilwright.drawing.svg;

import static java.util.stream.Collectors.joining;

import foilwright.drawing.Box;
import foilwright.drawing.Ink;
import foilwright.drawing.Mark;
import foilwright.drawing.Page;
import foilwright.drawing.Painter;
import foilwright.drawing.Part;
import foilwright.drawing.Scene;
import foilwright.drawing.Typeface;
import java.awt.Graphics2D;
import java.util.Arrays;
import java.util.Base64;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.jfree.svg.SVGGraphics2D;
import org.jfree.svg.SVGUnits;
import org.jfree.svg.ViewBox;

/**
 * Writes a scene as one {@code svg} element. Its width and height are in millimetres and its view
 * box is in millimetres, so that one unit is one millimetre; coordinates are rounded to 0.01 mm.
 * Styles are written as attributes, which a strict content policy lets through.
 */
public final class SvgWriter {
  private static final String TITLE = "-title";
  private static final String DESCRIPTION = "-description";

  private SvgWriter() {}

  /** The scene as SVG, without an XML declaration; UTF-8 when it is written to a file. */
  public static String write(Scene scene, SvgLetters letters) {
    StringBuilder out = new StringBuilder(1 << 17);
    SVGGraphics2D graphics = new SVGGraphics2D(scene.widthMm(), scene.heightMm(), SVGUnits.MM, out);
    graphics.setDefsKeyPrefix(scene.id() + "-");
    graphics.setGeomDoubleConverter(SvgWriter::number);
    graphics.setTransformDoubleConverter(SvgWriter::number);
    openSheet(scene, letters, out);
    Painter.paint(scene, new SvgPage(out, graphics, letters));
    out.append("</g>");
    ViewBox box = new ViewBox(0, 0, scene.widthMm(), scene.heightMm());
    String svg = graphics.getSVGElement(scene.id(), true, box, null, null);
    return asAttributes(named(svg, scene)).replace(" fill-rule='evenodd' d=", " d=");
  }

  private static void openSheet(Scene scene, SvgLetters letters, StringBuilder out) {
    out.append("<title id='").append(scene.id()).append(TITLE).append("'>");
    escape(scene.title(), out);
    out.append("</title><desc id='").append(scene.id()).append(DESCRIPTION).append("'>");
    escape(scene.description(), out);
    out.append("</desc>");
    if (letters == SvgLetters.EMBEDDED) {
      embedTypeface(scene, out);
    }
    out.append("<g fill-rule='evenodd' stroke-linejoin='round' font-family='")
        .append(Typeface.shipped().family())
        .append(", sans-serif' text-rendering='geometricPrecision'>");
  }

  private static void embedTypeface(Scene scene, StringBuilder out) {
    NavigableSet<Integer> characters = new TreeSet<>();
    for (Mark mark : scene.marks()) {
      for (Part part : mark.parts()) {
        if (part instanceof Part.Lettering lettering) {
          characters.addAll(Typeface.characters(lettering.text()));
        }
      }
    }
    if (characters.isEmpty()) {
      return;
    }
    Typeface face = Typeface.shipped();
    out.append("<style>@font-face{font-family:\"")
        .append(face.family())
        .append("\";src:url(data:font/ttf;base64,")
        .append(Base64.getEncoder().encodeToString(FontSubset.of(face, characters)))
        .append(")}</style>");
  }

  /** A number with at most two decimals, without a needless zero, the same in every locale. */
  static String number(double value) {
    if (!(Math.abs(value) < 1e7)) {
      throw new IllegalArgumentException(value + " is not on a sheet");
    }
    long hundredths = Math.round(value * 100);
    StringBuilder text = new StringBuilder(12);
    if (hundredths < 0) {
      text.append('-');
      hundredths = -hundredths;
    }
    text.append(hundredths / 100);
    int rest = (int) (hundredths % 100);
    if (rest != 0) {
      text.append('.').append(rest / 10);
      if (rest % 10 != 0) {
        text.append(rest % 10);
      }
    }
    return text.toString();
  }

  private static String named(String svg, Scene scene) {
    String start = "<svg id='" + scene.id() + "'";
    if (!svg.startsWith(start)) {
      throw new IllegalStateException("the sheet does not start with its name");
    }
    return start
        + " role='graphics-document' aria-labelledby='"
        + scene.id()
        + TITLE
        + "' aria-describedby='"
        + scene.id()
        + DESCRIPTION
        + "'"
        + svg.substring(start.length());
  }

  /**
   * Turns each {@code style='a:b;c:d'} into {@code a='b' c='d'}; escaped text holds no such quote.
   */
  private static String asAttributes(String svg) {
    String mark = " style='";
    StringBuilder out = new StringBuilder(svg.length());
    int from = 0;
    for (int at = svg.indexOf(mark); at >= 0; at = svg.indexOf(mark, from)) {
      out.append(svg, from, at);
      int end = svg.indexOf('\'', at + mark.length());
      for (String entry : svg.substring(at + mark.length(), end).split(";", -1)) {
        int colon = entry.indexOf(':');
        if (colon > 0 && !isUsual(entry)) {
          String name = entry.substring(0, colon);
          String value = entry.substring(colon + 1);
          out.append(' ').append(name).append("='");
          out.append(
              name.startsWith("stroke-w") || name.startsWith("stroke-d") ? tidy(value) : value);
          out.append('\'');
        }
      }
      from = end + 1;
    }
    return out.append(svg, from, svg.length()).toString();
  }

  /** Widths and dashes, which the graphics write as single-precision numbers. */
  private static String tidy(String lengths) {
    return Arrays.stream(lengths.split(",", -1))
        .map(length -> number(Double.parseDouble(length)))
        .collect(joining(","));
  }

  /** What the sheet's own group or the format's default says already. */
  private static boolean isUsual(String entry) {
    return entry.startsWith("stroke-opacity:1")
        || entry.startsWith("fill-opacity:1")
        || entry.equals("stroke-linejoin:round")
        || entry.equals("stroke:none")
        || entry.startsWith("stroke-miterlimit:");
  }

  private static void escape(String text, StringBuilder out) {
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> {
                  boolean allowed = c >= 0x20 && c != 0x7f && c != 0xfffe && c != 0xffff;
                  out.appendCodePoint(allowed ? c : ' ');
                }
              }
            });
  }

  /** Groups and text, written between what the graphics write. */
  private record SvgPage(StringBuilder out, Graphics2D graphics, SvgLetters letters)
      implements Page {
    @Override
    public void open(Mark mark) {
      out.append("<g id='").append(mark.id()).append("' class='");
      out.append(mark.role().word()).append('\'');
      if (mark.title().isEmpty()) {
        out.append(" aria-hidden='true'");
      } else {
        out.append(" role='graphics-symbol'");
      }
      mark.data()
          .forEach(
              (name, value) -> {
                out.append(" data-").append(name).append("='");
                escape(value, out);
                out.append('\'');
              });
      out.append('>');
      if (!mark.title().isEmpty()) {
        out.append("<title>");
        escape(mark.title(), out);
        out.append("</title>");
      }
    }

    @Override
    public void draw(Part.Shape shape) {
      Painter.draw(shape, graphics);
    }

    @Override
    public void picture(Part.Photo photo) {
      Box box = photo.box();
      out.append("<image x='").append(number(box.x()));
      out.append("' y='").append(number(box.y()));
      out.append("' width='").append(number(box.width()));
      out.append("' height='").append(number(box.height()));
      out.append("' preserveAspectRatio='none' xlink:href='data:image/png;base64,");
      out.append(Base64.getEncoder().encodeToString(photo.raster().toPng())).append("'/>");
    }

    @Override
    public void letter(Part.Lettering lettering) {
      if (letters == SvgLetters.OUTLINED) {
        graphics.setPaint(Painter.toColour(lettering.ink()));
        graphics.fill(Painter.toShape(Typeface.shipped().outline(lettering)));
        return;
      }
      out.append("<text x='").append(number(lettering.start().x()));
      out.append("' y='").append(number(lettering.start().y()));
      out.append("' font-size='").append(number(lettering.size().millimetres()));
      out.append("' fill='").append(colour(lettering.ink())).append("'>");
      escape(lettering.text(), out);
      out.append("</text>");
    }

    private static String colour(Ink ink) {
      return "rgb(" + ink.red() + "," + ink.green() + "," + ink.blue() + ")";
    }

    @Override
    public void close(Mark mark) {
      out.append("</g>");
    }
  }
}
