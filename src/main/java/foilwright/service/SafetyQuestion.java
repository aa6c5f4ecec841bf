package foilwright.service;

/** What must be asked or tested before a lightening service; a missing answer is never a pass. */
public enum SafetyQuestion {
  ALLERGY_ALERT_TEST("allergyAlertTest", "allergy alert test, each product, at least 48 h before"),
  SCALP_CONDITION("scalpCondition", "scalp condition"),
  EARLIER_REACTIONS("earlierReactions", "earlier reactions"),
  AGE_RULE("ageRule", "age rule"),
  METALLIC_SALTS("metallicSalts", "metallic-salt test"),
  ELASTICITY("elasticity", "elasticity test");

  private final String key;
  private final String words;

  SafetyQuestion(String key, String words) {
    this.key = key;
    this.words = words;
  }

  /** The key used in documents. */
  public String key() {
    return key;
  }

  /** The words used on sheets. */
  public String words() {
    return words;
  }
}
