package foilwright.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Everything that is meant to be done, without a head, a client or a product.
 *
 * @param summary one or two sentences on what it is for; may be empty
 * @param sections in working order; at least one
 */
public record Pattern(String title, String summary, WorkingOrder order, List<Section> sections) {
  public Pattern {
    Require.text(title, "a pattern's title");
    Objects.requireNonNull(summary);
    Objects.requireNonNull(order);
    sections = List.copyOf(sections);
    if (sections.isEmpty()) {
      throw new IllegalArgumentException("a pattern needs at least one section");
    }
  }

  public static Pattern of(String title, Section... sections) {
    return new Pattern(title, "", WorkingOrder.SECTION_BY_SECTION, List.of(sections));
  }

  public Pattern withSections(List<Section> others) {
    return new Pattern(title, summary, order, others);
  }

  /**
   * With one section changed.
   *
   * @param index of the section, from 0
   */
  public Pattern withSection(int index, UnaryOperator<Section> change) {
    List<Section> changed = new ArrayList<>(sections);
    changed.set(index, change.apply(changed.get(index)));
    return withSections(changed);
  }

  public Optional<Section> findSection(String name) {
    return sections.stream().filter(s -> s.name().equals(name)).findFirst();
  }
}
