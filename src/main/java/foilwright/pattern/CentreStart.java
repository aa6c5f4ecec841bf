package foilwright.pattern;

/** Where a distance along the centre line is counted from. */
public enum CentreStart {
  /** Up from the nape hairline. */
  NAPE_HAIRLINE("nape hairline"),
  /** Back from the front hairline. */
  FRONT_HAIRLINE("front hairline"),
  /** From the apex toward the back. */
  APEX("apex");

  private final String words;

  CentreStart(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
