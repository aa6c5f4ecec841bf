package foilwright.head;

/** The default head that fills in what the tape did not measure. */
public enum HeadKind {
  WOMAN("woman"),
  MAN("man"),
  CHILD("child"),
  TRAINING_HEAD("training head");

  private final String words;

  HeadKind(String words) {
    this.words = words;
  }

  /** The words used in documents and on sheets. */
  public String words() {
    return words;
  }
}
