package foilwright.placement;

import static java.util.stream.Collectors.toSet;

import foilwright.problem.Problem;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * A pattern laid on a head: the result of placing, with its problems.
 *
 * @param sections in working order
 * @param foils all foils in working order, numbers rising; from 1 without gaps unless only some of
 *     them were kept
 * @param problems what is wrong or worth knowing, each with its place on the head where it has one
 */
public record Placement(
    List<PlacedSection> sections, List<PlacedFoil> foils, List<Problem> problems) {
  public Placement {
    sections = List.copyOf(sections);
    foils = List.copyOf(foils);
    problems = List.copyOf(problems);
  }

  /**
   * The same foils worked in another order and numbered in it.
   *
   * @param numbers each foil's number here, in the new order; every number once
   * @throws IllegalArgumentException when a number is missing or stands twice
   */
  public Placement inOrder(List<Integer> numbers) {
    Map<Integer, Integer> newNumbers = new HashMap<>();
    for (int i = 0; i < numbers.size(); i++) {
      newNumbers.put(numbers.get(i), i + 1);
    }
    if (numbers.size() != foils.size()
        || !newNumbers.keySet().equals(foils.stream().map(PlacedFoil::number).collect(toSet()))) {
      throw new IllegalArgumentException(
          "an order of " + foils.size() + " foils names each once, not " + numbers);
    }
    return with(foil -> foil.withNumber(newNumbers.get(foil.number())));
  }

  /**
   * The same foils, some of them with another mix.
   *
   * @param mixes mix slot by foil number; foils left out keep theirs
   */
  public Placement withMixes(Map<Integer, String> mixes) {
    return with(foil -> foil.withMix(mixes.getOrDefault(foil.number(), foil.mix())));
  }

  /**
   * Some of the foils, under the same numbers; the sections stay whole.
   *
   * @param numbers of the foils to keep
   */
  public Placement keeping(Set<Integer> numbers) {
    return new Placement(
        sections.stream().map(s -> s.withFoils(kept(s.foils(), numbers))).toList(),
        kept(foils, numbers),
        problems);
  }

  private static List<PlacedFoil> kept(List<PlacedFoil> foils, Set<Integer> numbers) {
    return foils.stream().filter(foil -> numbers.contains(foil.number())).toList();
  }

  private Placement with(UnaryOperator<PlacedFoil> change) {
    return new Placement(
        sections.stream().map(s -> s.withFoils(changed(s.foils(), change))).toList(),
        changed(foils, change),
        problems);
  }

  private static List<PlacedFoil> changed(
      List<PlacedFoil> foils, UnaryOperator<PlacedFoil> change) {
    return foils.stream().map(change).sorted(Comparator.comparingInt(PlacedFoil::number)).toList();
  }
}
