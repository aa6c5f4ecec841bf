package foilwright.head;

/** How low the hair grows at the nape. */
public enum NapeHeight {
  LOW("low"),
  MIDDLE("middle"),
  HIGH("high");

  private final String words;

  NapeHeight(String words) {
    this.words = words;
  }

  /** The word used in documents and on sheets. */
  public String words() {
    return words;
  }
}
