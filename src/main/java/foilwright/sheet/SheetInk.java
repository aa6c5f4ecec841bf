package foilwright.sheet;

import foilwright.drawing.Ink;
import foilwright.drawing.LineWeight;
import foilwright.drawing.Pen;

/** The inks and lines that every sheet shares. */
final class SheetInk {
  static final Ink QUIET = new Ink(0x5f5952);
  static final Ink SCALP = new Ink(0xf2efea);
  static final Ink UNTOUCHED = new Ink(0xdcd7cf);

  /** Foils of earlier steps. */
  static final Ink DONE = new Ink(0xc6c1b9);

  static final Ink BACKGROUND = new Ink(0xa9a299);

  /** The one accent: what a person is to look at or to measure. */
  static final Ink ACCENT = new Ink(0x0072b2);

  static final Pen OUTLINE = Pen.of(Ink.BLACK, LineWeight.MEDIUM);
  static final Pen FEATURE = Pen.of(QUIET, LineWeight.FINE);
  static final Pen HAIRLINE = Pen.of(QUIET, LineWeight.MEDIUM);
  static final Pen ZONE_BORDER = Pen.of(QUIET, LineWeight.FINE).dashed(1.2, 0.8);
  static final Pen PART_LINE = Pen.of(Ink.BLACK, LineWeight.STRONG).dashed(2.4, 0.9);

  private SheetInk() {}
}
