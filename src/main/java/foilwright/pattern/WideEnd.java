package foilwright.pattern;

/** The end at which a wedge of background is widest; it closes to a point at the other. */
public enum WideEnd {
  FACE("face"),
  BACK("back"),
  UP("up"),
  DOWN("down"),
  EAR("ear"),
  CENTRE("centre"),
  LEFT("left"),
  RIGHT("right");

  private final String words;

  WideEnd(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  public WideEnd mirrored() {
    return switch (this) {
      case LEFT -> RIGHT;
      case RIGHT -> LEFT;
      default -> this;
    };
  }
}
