package foilwright.service;

/** By what a house charges for the foils of a visit. */
public enum PriceRule {
  /** The price of the smallest band that holds all the foils. */
  BAND("band"),
  /** So much for each foil. */
  FOIL("foil"),
  /** So much for each hour of chair time. */
  HOUR("hour");

  private final String words;

  PriceRule(String words) {
    this.words = words;
  }

  /** The word used in documents. */
  public String words() {
    return words;
  }
}
