package foilwright.web;

import java.util.List;

/**
 * Fields that belong together.
 *
 * @param id its name as part of a page
 * @param about what they are used for; may be empty
 * @param acts buttons of the group
 */
public record FormGroup(
    String id, String title, String about, List<FormField> fields, List<Act> acts) {

  /** A button; {@code act} is what a form sends as {@code do}. */
  public record Act(String act, String words) {}

  public FormGroup {
    fields = List.copyOf(fields);
    acts = List.copyOf(acts);
  }
}
