package foilwright.hair;

/** How thick a single hair feels between two fingers. */
public enum Fineness {
  FINE("fine"),
  MEDIUM("medium"),
  COARSE("coarse");

  private final String words;

  Fineness(String words) {
    this.words = words;
  }

  /** The word used in documents and on sheets. */
  public String words() {
    return words;
  }
}
