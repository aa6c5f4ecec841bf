package foilwright.service;

/** What must be asked or tested before a lightening service; a missing answer is never a pass. */
public enum SafetyQuestion {
  ALLERGY_ALERT_TEST(
      "allergyAlertTest",
      "allergy alert test, each product, at least 48 h before",
      "clear",
      "reaction",
      "the allergy alert test showed a reaction",
      "use none of the products that were tested; send the guest to a doctor"),
  SCALP_CONDITION(
      "scalpCondition",
      "scalp condition",
      "clear",
      "irritated",
      "the scalp is sore, broken, irritated or has a rash",
      "wait until it has healed and look again"),
  EARLIER_REACTIONS(
      "earlierReactions",
      "earlier reactions",
      "none",
      "reaction",
      "there was an earlier reaction to colour, lightener or black henna",
      "leave it to a doctor whether there can be another time"),
  AGE_RULE(
      "ageRule",
      "age rule",
      "kept",
      "not kept",
      "the age rule of the law, the maker or the house is not kept",
      "wait until the guest is of age for it"),
  METALLIC_SALTS(
      "metallicSalts",
      "metallic-salt test",
      "clear",
      "found",
      "metallic salts were found in the hair",
      "put nothing with hydrogen peroxide on this hair until it has grown or been cut out"),
  ELASTICITY(
      "elasticity",
      "elasticity test",
      "sound",
      "failed",
      "the hair failed the elasticity test",
      "do not lighten this hair; build it up or cut it, and test again");

  private static final String NOT_DONE = "not done";

  private final String key;
  private final String words;
  private final String clear;
  private final String stop;
  private final String stopSentence;
  private final String stopCure;

  SafetyQuestion(
      String key, String words, String clear, String stop, String stopSentence, String stopCure) {
    this.key = key;
    this.words = words;
    this.clear = clear;
    this.stop = stop;
    this.stopSentence = stopSentence;
    this.stopCure = stopCure;
  }

  /** The key used in documents. */
  public String key() {
    return key;
  }

  /** The words used on sheets. */
  public String words() {
    return words;
  }

  /** The word for a result of this question, in documents and on sheets. */
  public String word(SafetyResult result) {
    return switch (result) {
      case CLEAR -> clear;
      case STOP -> stop;
      case NOT_DONE -> NOT_DONE;
    };
  }

  /** What a result that stops the work says. */
  String stopSentence() {
    return stopSentence;
  }

  String stopCure() {
    return stopCure;
  }
}
