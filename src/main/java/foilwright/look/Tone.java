package foilwright.look;

/**
 * Whether a colour leans to gold or to ash; how far it leans (red up by a tenth and blue down by a
 * fifth when warm, a little over half of that the other way when cool) is this program's choice.
 */
public enum Tone {
  COOL("cool", -0.6),
  NEUTRAL("neutral", 0),
  WARM("warm", 1);

  private final String words;
  private final double warmth;

  Tone(String words, double warmth) {
    this.words = words;
    this.warmth = warmth;
  }

  /** The word used on sheets and the command line. */
  public String words() {
    return words;
  }

  double warmth() {
    return warmth;
  }
}
