package foilwright.drawing.svg;

import foilwright.drawing.Typeface;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeMap;

/**
 * A TrueType file with a few characters of the typeface, without hinting, kerning or ligatures, so
 * that a viewer sets the text by the very advances with which it was placed.
 */
final class FontSubset {
  private static final int WORD_ARGUMENTS = 0x0001;
  private static final int ONE_SCALE = 0x0008;
  private static final int MORE_COMPONENTS = 0x0020;
  private static final int TWO_SCALES = 0x0040;
  private static final int FOUR_SCALES = 0x0080;
  private static final int HAS_INSTRUCTIONS = 0x0100;
  private static final int MAGIC = 0xb1b0afba;

  private FontSubset() {}

  /** The font file that holds the given characters of a typeface. */
  static byte[] of(Typeface face, NavigableSet<Integer> characters) {
    Map<Integer, Integer> numbers = new LinkedHashMap<>();
    List<Integer> glyphs = new ArrayList<>();
    add(0, numbers, glyphs);
    for (int character : characters) {
      add(face.glyph(character), numbers, glyphs);
    }
    List<byte[]> outlines = new ArrayList<>();
    for (int i = 0; i < glyphs.size(); i++) {
      outlines.add(withoutHints(face.glyphBytes(glyphs.get(i)), numbers, glyphs));
    }
    Map<String, byte[]> tables = new TreeMap<>();
    tables.put("OS/2", face.tableBytes("OS/2"));
    tables.put("cmap", characterMap(face, characters, numbers));
    byte[] head = face.tableBytes("head");
    ByteBuffer.wrap(head).putInt(8, 0).putShort(50, (short) 1);
    tables.put("head", head);
    byte[] hhea = face.tableBytes("hhea");
    ByteBuffer.wrap(hhea).putShort(34, (short) glyphs.size());
    tables.put("hhea", hhea);
    ByteBuffer metrics = ByteBuffer.allocate(4 * glyphs.size());
    glyphs.forEach(
        g -> metrics.putShort((short) face.advance(g)).putShort((short) face.bearing(g)));
    tables.put("hmtx", metrics.array());
    ByteArrayOutputStream glyf = new ByteArrayOutputStream();
    ByteBuffer loca = ByteBuffer.allocate(4 * (glyphs.size() + 1));
    for (byte[] outline : outlines) {
      loca.putInt(glyf.size());
      glyf.writeBytes(outline);
      glyf.writeBytes(new byte[padding(outline.length)]);
    }
    loca.putInt(glyf.size());
    tables.put("glyf", glyf.toByteArray());
    tables.put("loca", loca.array());
    byte[] maxp = face.tableBytes("maxp");
    ByteBuffer.wrap(maxp).putShort(4, (short) glyphs.size());
    tables.put("maxp", maxp);
    tables.put("name", names(face));
    byte[] post = new byte[32];
    ByteBuffer.wrap(post).putInt(0x00030000);
    tables.put("post", post);
    return file(tables);
  }

  private static void add(int glyph, Map<Integer, Integer> numbers, List<Integer> glyphs) {
    if (numbers.putIfAbsent(glyph, glyphs.size()) == null) {
      glyphs.add(glyph);
    }
  }

  /** A glyph without instructions; the components of a composite join the list. */
  private static byte[] withoutHints(
      byte[] bytes, Map<Integer, Integer> numbers, List<Integer> glyphs) {
    if (bytes.length == 0) {
      return bytes;
    }
    ByteBuffer in = ByteBuffer.wrap(bytes.clone());
    int contours = in.getShort(0);
    ByteBuffer out = ByteBuffer.allocate(bytes.length + 2);
    if (contours >= 0) {
      int at = 10 + 2 * contours;
      int instructions = in.getShort(at) & 0xffff;
      out.put(bytes, 0, at).putShort((short) 0);
      int rest = at + 2 + instructions;
      out.put(bytes, rest, bytes.length - rest);
    } else {
      int at = 10;
      int flags;
      do {
        flags = in.getShort(at) & 0xffff;
        int component = in.getShort(at + 2) & 0xffff;
        add(component, numbers, glyphs);
        in.putShort(at, (short) (flags & ~HAS_INSTRUCTIONS));
        in.putShort(at + 2, numbers.get(component).shortValue());
        at += 4 + ((flags & WORD_ARGUMENTS) != 0 ? 4 : 2);
        at += (flags & ONE_SCALE) != 0 ? 2 : 0;
        at += (flags & TWO_SCALES) != 0 ? 4 : 0;
        at += (flags & FOUR_SCALES) != 0 ? 8 : 0;
      } while ((flags & MORE_COMPONENTS) != 0);
      out.put(in.array(), 0, at);
    }
    byte[] result = new byte[out.position()];
    out.flip().get(result);
    return result;
  }

  private static byte[] characterMap(
      Typeface face, NavigableSet<Integer> characters, Map<Integer, Integer> numbers) {
    List<int[]> runs = new ArrayList<>();
    for (int character : characters) {
      if (character > 0xfffe) {
        throw new IllegalArgumentException("character " + character + " is beyond the basic plane");
      }
      int number = numbers.get(face.glyph(character));
      runs.add(new int[] {character, number - character});
    }
    runs.add(new int[] {0xffff, 1});
    int n = runs.size();
    int log = 31 - Integer.numberOfLeadingZeros(n);
    int length = 16 + 8 * n;
    ByteBuffer map = ByteBuffer.allocate(12 + length);
    map.putShort((short) 0).putShort((short) 1);
    map.putShort((short) 3).putShort((short) 1).putInt(12);
    map.putShort((short) 4).putShort((short) length).putShort((short) 0);
    map.putShort((short) (2 * n)).putShort((short) (2 << log)).putShort((short) log);
    map.putShort((short) (2 * n - (2 << log)));
    runs.forEach(run -> map.putShort((short) run[0]));
    map.putShort((short) 0);
    runs.forEach(run -> map.putShort((short) run[0]));
    runs.forEach(run -> map.putShort((short) run[1]));
    return map.array();
  }

  private static byte[] names(Typeface face) {
    Map<Integer, String> names = new TreeMap<>();
    names.put(
        0,
        "Copyright (c) 2003 Bitstream, Inc.; (c) 2006 Tavmjong Bah; DejaVu changes are in"
            + " public domain. Part of DejaVu Sans, under its licence.");
    names.put(1, face.family());
    names.put(2, "Book");
    names.put(4, face.family());
    names.put(6, "DejaVuSans");
    ByteArrayOutputStream texts = new ByteArrayOutputStream();
    ByteBuffer table = ByteBuffer.allocate(6 + 12 * names.size());
    table.putShort((short) 0).putShort((short) names.size()).putShort((short) table.capacity());
    names.forEach(
        (id, text) -> {
          byte[] bytes = text.getBytes(StandardCharsets.UTF_16BE);
          table.putShort((short) 3).putShort((short) 1).putShort((short) 0x409);
          table.putShort(id.shortValue()).putShort((short) bytes.length);
          table.putShort((short) texts.size());
          texts.writeBytes(bytes);
        });
    return ByteBuffer.allocate(table.capacity() + texts.size())
        .put(table.array())
        .put(texts.toByteArray())
        .array();
  }

  private static byte[] file(Map<String, byte[]> tables) {
    int n = tables.size();
    int log = 31 - Integer.numberOfLeadingZeros(n);
    int size = 12 + 16 * n;
    for (byte[] table : tables.values()) {
      size += table.length + padding(table.length);
    }
    ByteBuffer out = ByteBuffer.allocate(size);
    out.putInt(0x00010000).putShort((short) n).putShort((short) (16 << log));
    out.putShort((short) log).putShort((short) (16 * n - (16 << log)));
    int at = 12 + 16 * n;
    int head = 0;
    for (Map.Entry<String, byte[]> entry : tables.entrySet()) {
      byte[] table = entry.getValue();
      out.put(entry.getKey().getBytes(StandardCharsets.US_ASCII));
      out.putInt(checksum(ByteBuffer.wrap(table))).putInt(at).putInt(table.length);
      out.put(at, table);
      head = entry.getKey().equals("head") ? at : head;
      at += table.length + padding(table.length);
    }
    out.putInt(head + 8, MAGIC - checksum(ByteBuffer.wrap(out.array())));
    return out.array();
  }

  private static int padding(int length) {
    return -length & 3;
  }

  private static int checksum(ByteBuffer bytes) {
    int sum = 0;
    for (int i = 0; i < bytes.capacity(); i += 4) {
      int word = 0;
      for (int k = 0; k < 4; k++) {
        word = word << 8 | (i + k < bytes.capacity() ? bytes.get(i + k) & 0xff : 0);
      }
      sum += word;
    }
    return sum;
  }
}
