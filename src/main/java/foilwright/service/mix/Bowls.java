package foilwright.service.mix;

import foilwright.problem.Problem;
import foilwright.service.MixSettings;
import foilwright.service.ProductEntry;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Which foils are served from which bowl, so that no bowl stands longer than its life at the last
 * foil it serves, with the fewest bowls.
 *
 * <p>Each bowl is mixed as late as it can be, at the first foil that none before it serves, and
 * serves the foils of its slot until it would have stood its time or serves as many as a bowl may.
 * No other choice needs fewer: a bowl that is mixed later lasts to a foil at least as late, so that
 * after every bowl at least as many foils are served as by any other choice.
 *
 * @param bowls by the time at which they are ready, then by name
 * @param problems foils whose own placing takes longer than a bowl stands
 */
public record Bowls(List<Bowl> bowls, List<Problem> problems) {
  private static final double SAME_SECONDS = 1e-6;

  public Bowls {
    bowls = List.copyOf(bowls);
    problems = List.copyOf(problems);
  }

  /**
   * Deals foils to bowls.
   *
   * @param foils in any order; those of a slot without a product are left out
   * @param products by slot
   */
  public static Bowls of(
      List<FoilMix> foils, Map<String, ProductEntry> products, MixSettings settings) {
    return of(foils, products, settings, Set.of());
  }

  /**
   * Deals foils to bowls, with a fresh bowl at certain foils whether one is due or not.
   *
   * @param foils in any order; those of a slot without a product are left out
   * @param products by slot
   * @param fresh numbers of foils at which a bowl is mixed in any case
   */
  public static Bowls of(
      List<FoilMix> foils,
      Map<String, ProductEntry> products,
      MixSettings settings,
      Set<Integer> fresh) {
    Map<String, List<FoilMix>> bySlot = new TreeMap<>();
    foils.stream()
        .sorted(Comparator.comparing(FoilMix::begin))
        .filter(foil -> products.containsKey(foil.slot()))
        .forEach(foil -> bySlot.computeIfAbsent(foil.slot(), s -> new ArrayList<>()).add(foil));
    List<Bowl> bowls = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    bySlot.forEach(
        (slot, its) -> {
          ProductEntry product = products.get(slot);
          int number = 1;
          for (int from = 0; from < its.size(); ) {
            Minutes goodUntil = its.get(from).begin().plus(product.bowlLife());
            int to = from + 1;
            while (to < its.size()
                && to - from < settings.bowlFoils()
                && !fresh.contains(its.get(to).number())
                && !past(its.get(to).end(), goodUntil)) {
              to++;
            }
            bowls.add(Bowl.of(number++, its.subList(from, to), product, settings));
            if (past(its.get(from).end(), goodUntil)) {
              problems.add(tooSlow(its.get(from), product));
            }
            from = to;
          }
        });
    bowls.sort(Comparator.comparing(Bowl::mixedAt).thenComparing(Bowl::name));
    return new Bowls(bowls, problems);
  }

  /**
   * The next try when mixing a bowl takes time out of the very schedule that says when bowls are
   * due, and these bowls come of the times with a bowl at certain foils: all of those before the
   * first foil that needs a bowl and has none, and that foil. A foil once reached can only be
   * replaced by an earlier one, so that trying ends.
   *
   * @param fresh numbers of the foils at which bowls were mixed
   * @return empty when every foil that needs a fresh bowl has it
   */
  public Optional<Set<Integer>> next(Set<Integer> fresh) {
    return firstFoils().stream()
        .filter(number -> !fresh.contains(number))
        .min(Comparator.naturalOrder())
        .map(
            first -> {
              Set<Integer> next = new TreeSet<>(fresh);
              next.removeIf(number -> number > first);
              next.add(first);
              return next;
            });
  }

  private static boolean past(Minutes time, Minutes limit) {
    return time.minus(limit).toSeconds() > SAME_SECONDS;
  }

  private static Problem tooSlow(FoilMix foil, ProductEntry product) {
    return Problem.warning(
        "bowl-stands-too-long",
        "products",
        "foil "
            + foil.number()
            + " alone takes "
            + foil.end().minus(foil.begin())
            + " to place, longer than a bowl of "
            + product.name()
            + " stands ("
            + product.bowlLife()
            + ")",
        "make the foil smaller, or mix a fresh bowl half way through it");
  }

  /** Numbers of the foils at which a bowl is mixed. */
  public Set<Integer> firstFoils() {
    Set<Integer> numbers = new TreeSet<>();
    bowls.forEach(bowl -> numbers.add(bowl.firstFoil()));
    return numbers;
  }

  /** The bowls of one slot, in order. */
  public List<Bowl> of(String slot) {
    return bowls.stream().filter(bowl -> bowl.slot().equals(slot)).toList();
  }
}
