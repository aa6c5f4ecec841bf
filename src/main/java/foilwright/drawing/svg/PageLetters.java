package foilwright.drawing.svg;

import foilwright.drawing.Typeface;
import java.util.NavigableSet;
import java.util.TreeSet;

/**
 * The shipped typeface for pages that supply the letters of {@link SvgLetters#LINKED} drawings: the
 * characters of western and central European writing, usual marks and arrows, a fraction of the
 * whole.
 */
public final class PageLetters {
  /** From and to, both included. The page's style sheet says the same. */
  private static final int[][] RANGES = {
    {0x0020, 0x007e},
    {0x00a0, 0x017f},
    {0x2010, 0x2026},
    {0x2030, 0x2033},
    {0x20ac, 0x20ac},
    {0x2190, 0x2193},
    {0x2212, 0x2212},
    {0x2248, 0x2248},
    {0x2264, 0x2265}
  };

  private PageLetters() {}

  /** A TrueType file. */
  public static byte[] file() {
    NavigableSet<Integer> characters = new TreeSet<>();
    for (int[] range : RANGES) {
      for (int c = range[0]; c <= range[1]; c++) {
        characters.add(c);
      }
    }
    return FontSubset.of(Typeface.shipped(), characters);
  }
}
