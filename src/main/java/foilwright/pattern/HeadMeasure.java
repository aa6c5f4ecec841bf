package foilwright.pattern;

/** The three tape lengths that a proportion of the head may refer to. */
public enum HeadMeasure {
  /** Over the top along the centre line, front hairline to nape hairline. */
  FRONT_TO_BACK("front-to-back"),
  /** Over the apex, from in front of one ear to in front of the other. */
  EAR_TO_EAR("ear-to-ear"),
  /** The largest way round. */
  AROUND("around");

  private final String words;

  HeadMeasure(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
