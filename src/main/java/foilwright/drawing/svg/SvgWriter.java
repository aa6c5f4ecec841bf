package foilwright.drawing.svg;

import static java.util.stream.Collectors.joining;

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
import java.util.Base64;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeSet;

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
    openSheet(scene, letters, out);
    Painter.paint(scene, new SvgPage(out, letters));
    return out.append("</g></svg>").toString();
  }

  private static void openSheet(Scene scene, SvgLetters letters, StringBuilder out) {
    out.append("<svg id='").append(scene.id());
    out.append("' role='graphics-document' aria-labelledby='").append(scene.id()).append(TITLE);
    out.append("' aria-describedby='").append(scene.id()).append(DESCRIPTION);
    out.append("' xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink'");
    String width = number(scene.widthMm());
    String height = number(scene.heightMm());
    out.append(" width='").append(width).append("mm' height='").append(height).append("mm'");
    out.append(" viewBox='0 0 ").append(width).append(' ').append(height).append("'>");
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
    StringBuilder text = new StringBuilder(12);
    number(value, text);
    return text.toString();
  }

  private static void number(double value, StringBuilder text) {
    if (!(Math.abs(value) < 1e7)) {
      throw new IllegalArgumentException(value + " is not on a sheet");
    }
    long hundredths = Math.round(value * 100);
    if (hundredths < 0) {
      text.append('-');
      hundredths = -hundredths;
    }
    text.append(hundredths / 100);
    int rest = (int) (hundredths % 100);
    if (rest != 0) {
      text.append('.').append((char) ('0' + rest / 10));
      if (rest % 10 != 0) {
        text.append((char) ('0' + rest % 10));
      }
    }
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

  /** Writes the data of a path. */
  private record PathData(StringBuilder out) implements Curve.Sink {
    @Override
    public void moveTo(double x, double y) {
      out.append('M');
      point(x, y);
    }

    @Override
    public void lineTo(double x, double y) {
      out.append('L');
      point(x, y);
    }

    @Override
    public void curveTo(double x1, double y1, double x2, double y2, double x, double y) {
      out.append('C');
      point(x1, y1);
      out.append(',');
      point(x2, y2);
      out.append(',');
      point(x, y);
    }

    @Override
    public void close() {
      out.append('Z');
    }

    private void point(double x, double y) {
      number(x, out);
      out.append(',');
      number(y, out);
    }
  }

  /** Writes marks as groups, shapes as paths and letters as text or as outlines. */
  private record SvgPage(StringBuilder out, SvgLetters letters) implements Page {
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
      path(shape.curve(), shape.fill(), shape.pen());
    }

    private void path(Curve curve, Optional<Ink> fill, Optional<Pen> pen) {
      out.append("<path fill='").append(fill.map(SvgPage::colour).orElse("none")).append('\'');
      if (pen.isPresent()) {
        out.append(" stroke='").append(colour(pen.get().ink()));
        out.append("' stroke-width='").append(number(pen.get().weight().millimetres()));
        out.append('\'');
        if (!pen.get().dash().isEmpty()) {
          String dash = pen.get().dash().stream().map(SvgWriter::number).collect(joining(","));
          out.append(" stroke-dasharray='").append(dash).append('\'');
        }
      }
      out.append(" d='");
      curve.visit(new PathData(out));
      out.append("'/>");
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
        path(Typeface.shipped().outline(lettering), Optional.of(lettering.ink()), Optional.empty());
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
