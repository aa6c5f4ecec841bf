package foilwright.pattern;

/** Which side of the ear line a region keeps. */
public enum EarLineSide {
  BOTH,
  IN_FRONT,
  BEHIND
}
