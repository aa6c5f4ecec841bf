package foilwright.drawing;

/** What lies over what, from the paper upwards. */
public enum Layer {
  PAPER,
  FIGURE,
  SCALP,
  BACKGROUND,
  FOILS,
  LINES,
  NUMBERS,
  NOTES
}
