package foilwright.placement;

import foilwright.problem.Problem;
import java.util.List;

/**
 * A pattern laid on a head: the result of placing, with its problems.
 *
 * @param sections in working order
 * @param foils all foils in working order, numbered from 1 without gaps
 * @param problems what is wrong or worth knowing, each with its place on the head where it has one
 */
public record Placement(
    List<PlacedSection> sections, List<PlacedFoil> foils, List<Problem> problems) {
  public Placement {
    sections = List.copyOf(sections);
    foils = List.copyOf(foils);
    problems = List.copyOf(problems);
  }
}
