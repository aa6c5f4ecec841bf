package foilwright.service;

/** What a product entry does to the hair. */
public enum ProductKind {
  LIGHTENER("lightener", true),
  LOWLIGHT("lowlight", false);

  private final String words;
  private final boolean lightens;

  ProductKind(String words, boolean lightens) {
    this.words = words;
    this.lightens = lightens;
  }

  /** The word used in documents and on sheets. */
  public String words() {
    return words;
  }

  public boolean lightens() {
    return lightens;
  }
}
