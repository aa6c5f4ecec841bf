package foilwright.pattern;

/** Where the work on a section starts; the slices travel away from there. */
public enum TravelFrom {
  /** The shape's own start: a pivot's first angle, a halo's boundary. */
  START("start"),
  NAPE("nape"),
  HAIRLINE("hairline"),
  EAR("ear"),
  CENTRE("centre"),
  TOP("top"),
  BOTTOM("bottom"),
  FRONT("front"),
  BACK("back"),
  LEFT("left"),
  RIGHT("right"),
  PART("part");

  private final String words;

  TravelFrom(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  public TravelFrom mirrored() {
    return switch (this) {
      case LEFT -> RIGHT;
      case RIGHT -> LEFT;
      default -> this;
    };
  }
}
