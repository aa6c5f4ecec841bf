package foilwright.anatomy;

/** Named stretches of the hairline, as a person would call the nearest bit of it. */
public enum HairlineStretch {
  FRONT("front hairline"),
  RECESSION("recession"),
  TEMPLE("temple hairline"),
  SIDEBURN("sideburn"),
  OVER_EAR("hairline over the ear"),
  BEHIND_EAR("hairline behind the ear"),
  NAPE("nape hairline");

  private final String words;

  HairlineStretch(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
