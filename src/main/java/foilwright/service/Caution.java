package foilwright.service;

import java.util.List;

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

  /** All of it in a few lines, for a sheet without room; what is on file is told beside. */
  public static final List<String> IN_SHORT =
      List.of(
          "This plan clears nobody. The maker's instructions come first, then law and licence, the"
              + " insurer, house policy, and only then this plan.",
          "Allergy alert test of each product at least 48 h before. Ask about scalp, earlier"
              + " reactions and age; test for metallic salts and elasticity; have the maker's"
              + " sheet. Fresh air and gloves.",
          BURNING.text);

  private final String text;

  Caution(String text) {
    this.text = text;
  }

  public String text() {
    return text;
  }
}
