package foilwright.pattern;

/** What becomes of the strip that is left when no further slice fits. */
public enum Remainder {
  LEAVE("leave at the end"),
  BALANCE("balance at both ends"),
  STRETCH("stretch the background");

  private final String words;

  Remainder(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
