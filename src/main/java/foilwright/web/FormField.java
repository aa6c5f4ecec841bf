package foilwright.web;

import java.util.List;

/**
 * One field of a form over a document.
 *
 * @param key its name in the form, the same for the same thing in every document
 * @param look how it is drawn
 * @param value as shown, without its unit; of several the chosen ones, a line each
 * @param unit what stands behind the field; empty for a choice or a count
 * @param step by how much an arrow key changes it; empty where it does not
 * @param hint what else is to be known; may be empty
 * @param choices to choose from; empty for a field to type in
 * @param error what is wrong with it; empty when nothing is
 * @param drawing name of the drawing that it lights; empty when there is none
 */
public record FormField(
    String key,
    Look look,
    String label,
    String value,
    String unit,
    String step,
    String hint,
    List<Choice> choices,
    String error,
    String drawing) {

  /** Stands between the values of several. */
  static final String AND = "\n";

  /** How a field is drawn. */
  public enum Look {
    TYPED,
    CHOSEN,
    YES_NO,
    SEVERAL
  }

  /** One thing to choose; {@code words} are shown. */
  public record Choice(String value, String words) {
    static Choice of(String word) {
      return new Choice(word, word);
    }
  }

  public FormField {
    choices = List.copyOf(choices);
  }

  /** Its name as part of a page. */
  public String id() {
    return "f-" + key.replace(' ', '_');
  }

  /** Whether a choice is chosen. */
  public boolean has(Choice choice) {
    return look == Look.SEVERAL
        ? List.of(value.split(AND, -1)).contains(choice.value())
        : value.equals(choice.value());
  }

  FormField wrong(String typed, String why) {
    return new FormField(key, look, label, typed, unit, step, hint, choices, why, drawing);
  }
}
