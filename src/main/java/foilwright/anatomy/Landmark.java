package foilwright.anatomy;

/** Named points of the head that a tape or a finger finds. */
public enum Landmark {
  APEX("apex"),
  BACK_POINT("most prominent point at the back"),
  BROW("brow point"),
  FRONT_HAIRLINE("front hairline at the centre"),
  NAPE_HAIRLINE("nape hairline at the centre"),
  EAR_LEFT("left ear"),
  EAR_RIGHT("right ear");

  private final String words;

  Landmark(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
