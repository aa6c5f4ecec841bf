package foilwright.pattern;

/** How a person looks at a section while parting it. */
public enum ViewedFrom {
  /** Level for back, sides and nape; from above for top, crown and fringe. */
  AUTO("by zone"),
  LEVEL("level"),
  ABOVE("from above");

  private final String words;

  ViewedFrom(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
