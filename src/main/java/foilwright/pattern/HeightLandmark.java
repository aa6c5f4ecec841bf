package foilwright.pattern;

/** Named heights of the head. */
public enum HeightLandmark {
  /** The isoline at the back below which the head curves in. */
  OCCIPITAL_LINE("occipital line"),
  /** The isoline above which hair lies and below which it hangs. */
  PARIETAL_RIDGE("parietal ridge"),
  /** The level of the top of the ear. */
  EAR_TOP("ear top"),
  /** The level of the most prominent point at the back. */
  BACK_POINT("back point");

  private final String words;

  HeightLandmark(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
