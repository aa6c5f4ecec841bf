package foilwright.pattern;

import foilwright.anatomy.Side;

/**
 * Which of the client's sides a region keeps. A zone that crosses the middle is cut at the centre
 * line.
 */
public enum RegionSide {
  LEFT("left"),
  RIGHT("right"),
  BOTH("both");

  private final String words;

  RegionSide(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  public RegionSide mirrored() {
    return switch (this) {
      case LEFT -> RIGHT;
      case RIGHT -> LEFT;
      case BOTH -> BOTH;
    };
  }

  /** Middle for both. */
  public Side side() {
    return switch (this) {
      case LEFT -> Side.LEFT;
      case RIGHT -> Side.RIGHT;
      case BOTH -> Side.MIDDLE;
    };
  }
}
