package foilwright.pattern;

/** Which end of a diagonal parting is the lower one. */
public enum LowerEnd {
  /** The face end: the diagonal runs toward the face. */
  FACE("face"),
  /** The back end: the diagonal runs toward the back. */
  BACK("back"),
  /** The end at the ear. */
  EAR("ear"),
  /** The end at the centre line. */
  CENTRE("centre"),
  CLIENTS_LEFT("client's left"),
  CLIENTS_RIGHT("client's right");

  private final String words;

  LowerEnd(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  public LowerEnd mirrored() {
    return switch (this) {
      case CLIENTS_LEFT -> CLIENTS_RIGHT;
      case CLIENTS_RIGHT -> CLIENTS_LEFT;
      default -> this;
    };
  }
}
