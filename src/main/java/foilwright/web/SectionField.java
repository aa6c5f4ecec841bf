package foilwright.web;

import java.util.List;

/**
 * One thing of a section that can be changed in place.
 *
 * @param key the same for the same thing in every section
 * @param value as shown, without its unit
 * @param unit what stands behind the field; empty for a choice or a count
 * @param step by how much an arrow key changes it; empty where it does not
 * @param hint what else is to be known; may be empty
 * @param choices words to choose from; empty for a field to type in
 * @param error what is wrong with it; empty when nothing is
 */
public record SectionField(
    String key,
    String label,
    String value,
    String unit,
    String step,
    String hint,
    List<String> choices,
    String error) {
  public SectionField {
    choices = List.copyOf(choices);
  }

  static SectionField typed(
      String key, String label, String value, String unit, String step, String hint) {
    return new SectionField(key, label, value, unit, step, hint, List.of(), "");
  }

  static SectionField chosen(String key, String label, String value, List<String> choices) {
    return new SectionField(key, label, value, "", "", "", choices, "");
  }

  SectionField withHint(String words) {
    return new SectionField(key, label, value, unit, step, words, choices, error);
  }

  SectionField wrong(String typed, String why) {
    return new SectionField(key, label, typed, unit, step, hint, choices, why);
  }
}
