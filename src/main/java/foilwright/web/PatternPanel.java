package foilwright.web;

import foilwright.app.Draft;
import foilwright.pattern.Pattern;
import java.util.List;

/**
 * All of a pattern that can be changed beyond the few fields of a card.
 *
 * @param groups of the pattern itself and of each section
 */
public record PatternPanel(List<FormGroup> groups) {
  public PatternPanel {
    groups = List.copyOf(groups);
  }

  static PatternPanel of(Pattern pattern, LengthUnit unit) {
    return new PatternPanel(PatternForm.of(Draft.of(pattern), unit).groups());
  }

  /** What is said of the pattern as a whole. */
  public List<FormGroup> general() {
    return groups.subList(0, 1);
  }

  /** All of one section. */
  public List<FormGroup> of(int section) {
    return groups.stream().filter(group -> PatternForm.belongs(group, section)).toList();
  }

  /** The shapes that a section may have. */
  public static List<String> shapes() {
    return PatternForm.SHAPES;
  }

  /** Where a new section may lie. */
  public static List<String> places() {
    return PatternForm.places();
  }
}
