package foilwright.drawing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The one typeface of every sheet, read from the TrueType file that the program ships: advances,
 * outlines and the file itself. No font of the platform is asked for anything.
 *
 * <p>Text is set without kerning and without ligatures, one glyph for each character; a width is
 * the sum of the advances, exact to rounding. Right-to-left and combining text is not set correctly
 * and no sheet uses it.
 */
public final class Typeface {
  private static final String SHIPPED = "font/DejaVuSans.ttf";

  private static final int ON_CURVE = 0x01;
  private static final int SHORT_X = 0x02;
  private static final int SHORT_Y = 0x04;
  private static final int REPEAT = 0x08;
  private static final int SAME_X = 0x10;
  private static final int SAME_Y = 0x20;
  private static final int WORD_ARGUMENTS = 0x0001;
  private static final int ARGUMENTS_ARE_STEPS = 0x0002;
  private static final int ONE_SCALE = 0x0008;
  private static final int MORE_COMPONENTS = 0x0020;
  private static final int TWO_SCALES = 0x0040;
  private static final int FOUR_SCALES = 0x0080;
  private static final int DEEPEST_COMPONENT = 8;

  /** Loaded when first asked for. */
  private static final class Shipped {
    static final Typeface TYPEFACE = load();

    private static Typeface load() {
      try (InputStream in = Typeface.class.getResourceAsStream(SHIPPED)) {
        if (in == null) {
          throw new IllegalStateException("the typeface " + SHIPPED + " is missing");
        }
        return new Typeface(in.readAllBytes());
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private final ByteBuffer file;
  private final Map<String, int[]> tables = new TreeMap<>();
  private final int unitsPerEm;
  private final boolean longOffsets;
  private final int glyphCount;
  private final int metricCount;
  private final int mapping;
  private final int capHeight;

  private Typeface(byte[] bytes) {
    file = ByteBuffer.wrap(bytes);
    int count = unsigned16(4);
    for (int i = 0; i < count; i++) {
      int at = 12 + 16 * i;
      String tag = new String(bytes, at, 4, StandardCharsets.US_ASCII);
      tables.put(tag, new int[] {file.getInt(at + 8), file.getInt(at + 12)});
    }
    unitsPerEm = unsigned16(table("head") + 18);
    longOffsets = unsigned16(table("head") + 50) == 1;
    glyphCount = unsigned16(table("maxp") + 4);
    metricCount = unsigned16(table("hhea") + 34);
    mapping = findMapping();
    capHeight = file.getShort(glyphAt(glyph('H')) + 8);
  }

  /** The typeface of every sheet. */
  public static Typeface shipped() {
    return Shipped.TYPEFACE;
  }

  /** The name that files give to the typeface. */
  public String family() {
    return "DejaVu Sans";
  }

  /** The whole TrueType file. */
  public byte[] fileBytes() {
    return file.array().clone();
  }

  private int unsigned16(int at) {
    return file.getShort(at) & 0xffff;
  }

  private int table(String tag) {
    int[] entry = tables.get(tag);
    if (entry == null) {
      throw new IllegalArgumentException("the typeface has no table " + tag);
    }
    return entry[0];
  }

  /** A copy of one table of the font file, such as {@code "head"}. */
  public byte[] tableBytes(String tag) {
    byte[] bytes = new byte[tables.get(tag)[1]];
    file.get(table(tag), bytes);
    return bytes;
  }

  /** The character map for the basic plane of Unicode (format 4). */
  private int findMapping() {
    int map = table("cmap");
    for (int i = 0; i < unsigned16(map + 2); i++) {
      int at = map + 4 + 8 * i;
      int start = map + file.getInt(at + 4);
      if (unsigned16(at) == 3 && unsigned16(at + 2) == 1 && unsigned16(start) == 4) {
        return start;
      }
    }
    throw new IllegalArgumentException("the typeface maps no Unicode characters");
  }

  /** Number of the glyph of a character; 0 when it has none. */
  public int glyph(int character) {
    int twice = unsigned16(mapping + 6);
    int ends = mapping + 14;
    int starts = ends + twice + 2;
    for (int i = 0; i < twice; i += 2) {
      if (character > unsigned16(ends + i)) {
        continue;
      }
      int first = unsigned16(starts + i);
      if (character < first) {
        return 0;
      }
      int delta = unsigned16(starts + twice + i);
      int range = starts + 2 * twice + i;
      int offset = unsigned16(range);
      if (offset == 0) {
        return character + delta & 0xffff;
      }
      int glyph = unsigned16(range + offset + 2 * (character - first));
      return glyph == 0 ? 0 : glyph + delta & 0xffff;
    }
    return 0;
  }

  /** Whether every character of a text has a glyph. */
  public boolean encodes(String text) {
    return text.codePoints().allMatch(c -> glyph(c) != 0);
  }

  /** Advance of a glyph in units of the font file. */
  public int advance(int glyph) {
    return unsigned16(table("hmtx") + 4 * Math.min(glyph, metricCount - 1));
  }

  /** Left side bearing of a glyph in units of the font file. */
  public int bearing(int glyph) {
    int at = glyph < metricCount ? 4 * glyph + 2 : 4 * metricCount + 2 * (glyph - metricCount);
    return file.getShort(table("hmtx") + at);
  }

  /** Width of a text in millimetres. */
  public double width(String text, TextSize size) {
    long sum = text.codePoints().mapToLong(c -> advance(glyph(c))).sum();
    return sum * size.millimetres() / unitsPerEm;
  }

  /** Height of a capital above the base line in millimetres. */
  public double capHeight(TextSize size) {
    return capHeight * size.millimetres() / unitsPerEm;
  }

  /** The characters of a text, least first. */
  public static NavigableSet<Integer> characters(String text) {
    NavigableSet<Integer> characters = new TreeSet<>();
    text.codePoints().forEach(characters::add);
    return characters;
  }

  private int glyphAt(int glyph) {
    return table("glyf") + offset(glyph);
  }

  private int offset(int glyph) {
    if (glyph < 0 || glyph >= glyphCount) {
      throw new IllegalArgumentException("glyph " + glyph + " of " + glyphCount);
    }
    int loca = table("loca");
    return longOffsets ? file.getInt(loca + 4 * glyph) : 2 * unsigned16(loca + 2 * glyph);
  }

  /** The description of a glyph as the font file holds it; empty for a space. */
  public byte[] glyphBytes(int glyph) {
    int loca = table("loca");
    int end =
        longOffsets ? file.getInt(loca + 4 * (glyph + 1)) : 2 * unsigned16(loca + 2 * (glyph + 1));
    byte[] bytes = new byte[end - offset(glyph)];
    file.get(glyphAt(glyph), bytes);
    return bytes;
  }

  /** Lettering as filled shapes, for a page that has no typeface; a space adds nothing. */
  public Curve outline(Part.Lettering lettering) {
    Curve.Builder curve = Curve.builder();
    double scale = lettering.size().millimetres() / unitsPerEm;
    double[] pen = {lettering.start().x()};
    lettering
        .text()
        .codePoints()
        .map(this::glyph)
        .forEach(
            glyph -> {
              addGlyph(
                  curve,
                  glyph,
                  new double[] {scale, 0, 0, -scale, pen[0], lettering.start().y()},
                  0);
              pen[0] += advance(glyph) * scale;
            });
    return curve.build();
  }

  /** Adds a glyph under the matrix (a, b, c, d, e, f): x' = a x + c y + e, y' = b x + d y + f. */
  private void addGlyph(Curve.Builder curve, int glyph, double[] m, int depth) {
    int at = glyphAt(glyph);
    if (offset(glyph) == offset(Math.min(glyph + 1, glyphCount - 1)) && glyph + 1 < glyphCount) {
      return;
    }
    int contours = file.getShort(at);
    if (contours >= 0) {
      addSimple(curve, at + 10, contours, m);
    } else if (depth < DEEPEST_COMPONENT) {
      addComposite(curve, at + 10, m, depth);
    }
  }

  private void addComposite(Curve.Builder curve, int start, double[] m, int depth) {
    int at = start;
    int flags;
    do {
      flags = unsigned16(at);
      int component = unsigned16(at + 2);
      at += 4;
      if ((flags & ARGUMENTS_ARE_STEPS) == 0) {
        throw new IllegalArgumentException("a glyph is put together by points, not by steps");
      }
      double dx;
      double dy;
      if ((flags & WORD_ARGUMENTS) != 0) {
        dx = file.getShort(at);
        dy = file.getShort(at + 2);
        at += 4;
      } else {
        dx = file.get(at);
        dy = file.get(at + 1);
        at += 2;
      }
      double[] p = {1, 0, 0, 1, dx, dy};
      if ((flags & ONE_SCALE) != 0) {
        p[0] = fixed(at);
        p[3] = p[0];
        at += 2;
      } else if ((flags & TWO_SCALES) != 0) {
        p[0] = fixed(at);
        p[3] = fixed(at + 2);
        at += 4;
      } else if ((flags & FOUR_SCALES) != 0) {
        for (int i = 0; i < 4; i++) {
          p[i] = fixed(at + 2 * i);
        }
        at += 8;
      }
      addGlyph(curve, component, product(m, p), depth + 1);
    } while ((flags & MORE_COMPONENTS) != 0);
  }

  private double fixed(int at) {
    return file.getShort(at) / 16384.0;
  }

  private static double[] product(double[] m, double[] p) {
    return new double[] {
      m[0] * p[0] + m[2] * p[1],
      m[1] * p[0] + m[3] * p[1],
      m[0] * p[2] + m[2] * p[3],
      m[1] * p[2] + m[3] * p[3],
      m[0] * p[4] + m[2] * p[5] + m[4],
      m[1] * p[4] + m[3] * p[5] + m[5]
    };
  }

  private void addSimple(Curve.Builder curve, int start, int contours, double[] m) {
    if (contours == 0) {
      return;
    }
    int[] ends = new int[contours];
    for (int i = 0; i < contours; i++) {
      ends[i] = unsigned16(start + 2 * i);
    }
    int points = ends[contours - 1] + 1;
    int at = start + 2 * contours;
    at += 2 + unsigned16(at);
    int[] flags = new int[points];
    for (int i = 0; i < points; ) {
      int flag = file.get(at++) & 0xff;
      int times = (flag & REPEAT) != 0 ? (file.get(at++) & 0xff) + 1 : 1;
      for (int k = 0; k < times; k++) {
        flags[i++] = flag;
      }
    }
    double[] x = new double[points];
    at = readCoordinates(x, flags, at, SHORT_X, SAME_X);
    double[] y = new double[points];
    readCoordinates(y, flags, at, SHORT_Y, SAME_Y);
    Point[] placed = new Point[points];
    for (int i = 0; i < points; i++) {
      placed[i] = new Point(m[0] * x[i] + m[2] * y[i] + m[4], m[1] * x[i] + m[3] * y[i] + m[5]);
    }
    int first = 0;
    for (int end : ends) {
      addContour(curve, placed, flags, first, end);
      first = end + 1;
    }
  }

  private int readCoordinates(double[] values, int[] flags, int start, int isShort, int isSame) {
    int at = start;
    int value = 0;
    for (int i = 0; i < values.length; i++) {
      if ((flags[i] & isShort) != 0) {
        int step = file.get(at++) & 0xff;
        value += (flags[i] & isSame) != 0 ? step : -step;
      } else if ((flags[i] & isSame) == 0) {
        value += file.getShort(at);
        at += 2;
      }
      values[i] = value;
    }
    return at;
  }

  private static void addContour(
      Curve.Builder curve, Point[] points, int[] flags, int first, int last) {
    int n = last - first + 1;
    if (n < 2) {
      return;
    }
    int begin = first;
    while (begin <= last && (flags[begin] & ON_CURVE) == 0) {
      begin++;
    }
    Point start;
    if (begin > last) {
      begin = last;
      start = points[last].lerp(points[first], 0.5);
    } else {
      start = points[begin];
    }
    curve.move(start);
    Point here = start;
    Point handle = start;
    boolean bending = false;
    for (int k = 1; k <= n; k++) {
      Point next = points[first + (begin - first + k) % n];
      boolean onCurve = (flags[first + (begin - first + k) % n] & ON_CURVE) != 0;
      if (bending) {
        Point to = onCurve ? next : handle.lerp(next, 0.5);
        bend(curve, here, handle, to);
        here = to;
      } else if (onCurve) {
        curve.line(next);
        here = next;
      }
      handle = next;
      bending = !onCurve;
    }
    if (bending) {
      bend(curve, here, handle, start);
    }
    curve.close();
  }

  /** A quadratic curve, written as the cubic curve that equals it. */
  private static void bend(Curve.Builder curve, Point from, Point handle, Point to) {
    curve.curve(from.lerp(handle, 2.0 / 3), to.lerp(handle, 2.0 / 3), to);
  }
}
