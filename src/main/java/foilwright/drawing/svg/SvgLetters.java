package foilwright.drawing.svg;

/** How an SVG file carries its text. */
public enum SvgLetters {
  /** As text, with the glyphs it needs inside the file: for a file that stands alone. */
  EMBEDDED,
  /** As text in a typeface that the surrounding page supplies. */
  LINKED,
  /** As filled shapes, which need no typeface at all. */
  OUTLINED
}
