package foilwright.hair;

/** How readily the hair takes up liquid. */
public enum Porosity {
  LOW("low"),
  MEDIUM("medium"),
  HIGH("high");

  private final String words;

  Porosity(String words) {
    this.words = words;
  }

  /** The word used in documents and on sheets. */
  public String words() {
    return words;
  }
}
