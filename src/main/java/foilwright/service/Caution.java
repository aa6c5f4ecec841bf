package foilwright.service;

/** What every plan says wherever it touches chemistry, whatever is on file. */
public enum Caution {
  AUTHORITY(
      "This plan clears nobody for a service. The maker's instructions come first, then local law"
          + " and licence, the insurer, house policy, and only then this plan."),
  ALERT_TEST(
      "Allergy alert test with each product, as its maker says and at least 48 h before. A clear"
          + " test is no guarantee."),
  SCALP("Look at the scalp: nothing is applied over sore, broken or irritated skin or a rash."),
  REACTIONS(
      "Ask about earlier reactions to colour, lightener or black henna. After one, do not go on."),
  AGE("Keep the age rule of the law, the maker and the house: commonly not under 16."),
  STRAND("Test a strand for metallic salts and for elasticity before any lightener."),
  SHEET("Keep the maker's sheet of every product on file and stay inside its times."),
  AIR("Lightening powder can make skin and airways sensitive: fresh air, gloves, no dust."),
  BURNING("Any burning: take the foils out and rinse at once.");

  private final String text;

  Caution(String text) {
    this.text = text;
  }

  public String text() {
    return text;
  }
}
