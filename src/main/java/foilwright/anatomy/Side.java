package foilwright.anatomy;

/** The client's left or right, or the middle where a thing lies across the centre line. */
public enum Side {
  LEFT("left"),
  RIGHT("right"),
  MIDDLE("middle");

  private final String words;

  Side(String words) {
    this.words = words;
  }

  /** The word used in documents and on sheets. */
  public String words() {
    return words;
  }

  public Side mirrored() {
    return switch (this) {
      case LEFT -> RIGHT;
      case RIGHT -> LEFT;
      case MIDDLE -> MIDDLE;
    };
  }
}
