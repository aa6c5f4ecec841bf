package foilwright.fall;

/** How the hair is combed and worn. */
public enum HairStyle {
  NATURAL("natural"),
  SWEPT_BACK("swept back"),
  FRINGE_FORWARD("fringe forward"),
  TUCKED("tucked"),
  TIED_UP("tied up");

  private final String words;

  HairStyle(String words) {
    this.words = words;
  }

  /** The words used on sheets and the command line. */
  public String words() {
    return words;
  }
}
