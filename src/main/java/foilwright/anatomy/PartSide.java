package foilwright.anatomy;

/** Where the part is worn: the client's left or right, the centre, or none. */
public enum PartSide {
  LEFT("left"),
  CENTRE("centre"),
  RIGHT("right"),
  NONE("none");

  private final String words;

  PartSide(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
