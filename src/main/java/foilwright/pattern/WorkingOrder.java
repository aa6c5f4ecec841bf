package foilwright.pattern;

/** The order in which the foils of a pattern are placed. */
public enum WorkingOrder {
  /** As the sections are written; both halves of a pair one after the other. */
  SECTION_BY_SECTION("section by section"),
  /** As the sections are written; the rows of a pair in turn, left and right. */
  ALTERNATE_SIDES("alternate sides"),
  /** As the sections are written, but those that touch the fringe or hairline last. */
  HAIRLINE_LAST("fringe and hairline last");

  private final String words;

  WorkingOrder(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
