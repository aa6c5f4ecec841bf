package foilwright.anatomy;

/** The zones of the scalp: an exact partition, so that every hair belongs to one. */
public enum Zone {
  FRINGE("fringe", Side.MIDDLE),
  TOP_LEFT("top left", Side.LEFT),
  TOP_RIGHT("top right", Side.RIGHT),
  CROWN("crown", Side.MIDDLE),
  FRONT_SIDE_LEFT("front side left", Side.LEFT),
  FRONT_SIDE_RIGHT("front side right", Side.RIGHT),
  BACK_UPPER_LEFT("back upper left", Side.LEFT),
  BACK_UPPER_RIGHT("back upper right", Side.RIGHT),
  NAPE_LEFT("nape left", Side.LEFT),
  NAPE_RIGHT("nape right", Side.RIGHT);

  private final String words;
  private final Side side;

  Zone(String words, Side side) {
    this.words = words;
    this.side = side;
  }

  /** The words used in documents and on sheets. */
  public String words() {
    return words;
  }

  public Side side() {
    return side;
  }

  /** Whether a person looks at this zone from above (top, crown, fringe) rather than level. */
  public boolean seenFromAbove() {
    return switch (this) {
      case FRINGE, TOP_LEFT, TOP_RIGHT, CROWN -> true;
      default -> false;
    };
  }

  public Zone mirrored() {
    return switch (this) {
      case FRINGE -> FRINGE;
      case CROWN -> CROWN;
      case TOP_LEFT -> TOP_RIGHT;
      case TOP_RIGHT -> TOP_LEFT;
      case FRONT_SIDE_LEFT -> FRONT_SIDE_RIGHT;
      case FRONT_SIDE_RIGHT -> FRONT_SIDE_LEFT;
      case BACK_UPPER_LEFT -> BACK_UPPER_RIGHT;
      case BACK_UPPER_RIGHT -> BACK_UPPER_LEFT;
      case NAPE_LEFT -> NAPE_RIGHT;
      case NAPE_RIGHT -> NAPE_LEFT;
    };
  }
}
