package foilwright.service;

import foilwright.anatomy.Zone;
import foilwright.hair.Fineness;
import foilwright.hair.HairNature;
import foilwright.hair.HairProfile;
import foilwright.hair.Level;
import foilwright.hair.Porosity;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import foilwright.units.Length;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;

/**
 * What lifting the hair of each zone asks for: levels wanted, the part of the maker's window that
 * goes with them, the warmth to expect, where to begin, where a weaker mix is wise. Common practice
 * by the house's tables, never a promise about a result: the maker's sheet and the checks decide.
 *
 * @param wish level that was asked for
 * @param zones those with foils that lighten, in the order to work them: dark, coarse, of low
 *     porosity first; fine, porous, lightened before last
 * @param problems warnings and notes, in that order
 * @param mostLevels that one visit may lift, by the house's tables
 */
public record LiftAdvice(
    Optional<Level> wish, List<ZoneLift> zones, List<Problem> problems, int mostLevels) {
  /** Product that starts nearer than this touches the scalp. */
  public static final Length AT_SCALP = Length.ofMillimetres(10);

  /** Label strength above which product at the scalp is a caution. */
  public static final Share MOST_AT_SCALP = Share.ofPercent(6);

  /** Label strength up to which nothing weaker is advised. */
  public static final Share WEAK = Share.ofPercent(3);

  /**
   * One zone.
   *
   * @param foils that lighten in it
   * @param nature of its hair, as far as known
   * @param lightenedBefore whether some of it was
   * @param levels lift wanted; 0 or less when the hair is at the wish already; empty when the level
   *     or the wish is missing
   * @param windows by mix slot, for the slots with foils here
   * @param warmth to expect at the wish, in the house's words
   */
  public record ZoneLift(
      Zone zone,
      int foils,
      HairNature nature,
      boolean lightenedBefore,
      Optional<Integer> levels,
      Map<String, TimeWindow> windows,
      Optional<String> warmth) {
    public ZoneLift {
      windows = Collections.unmodifiableMap(new TreeMap<>(windows));
    }

    /** What speaks for a weaker mix; empty when nothing does. */
    public List<String> delicate() {
      List<String> why = new ArrayList<>();
      if (nature.fineness().equals(Optional.of(Fineness.FINE))) {
        why.add("fine");
      }
      if (nature.porosity().equals(Optional.of(Porosity.HIGH))) {
        why.add("porous");
      }
      if (lightenedBefore) {
        why.add("lightened before");
      }
      return why;
    }

    /**
     * Rank in the order of work, small first: half a point a level, a point each step from coarse
     * to fine and from low to high porosity, two for hair lightened before; what is missing counts
     * as middling. The points are this program's.
     */
    double rank() {
      return nature.level().map(Level::number).orElse(5) / 2.0
          + points(nature.fineness(), Fineness.COARSE, Fineness.FINE)
          + points(nature.porosity(), Porosity.LOW, Porosity.HIGH)
          + (lightenedBefore ? 2 : 0);
    }

    private static <E> int points(Optional<E> found, E first, E last) {
      if (found.equals(Optional.of(first))) {
        return 0;
      }
      return found.equals(Optional.of(last)) ? 2 : 1;
    }

    /** Such as {@code level 5, coarse hair, low porosity}. */
    String words() {
      List<String> words = new ArrayList<>();
      words.add(nature.level().map(Level::toString).orElse("level missing"));
      nature.fineness().ifPresent(f -> words.add(f.words() + " hair"));
      nature.porosity().ifPresent(p -> words.add(p.words() + " porosity"));
      if (lightenedBefore) {
        words.add("lightened before");
      }
      return String.join(", ", words);
    }
  }

  public LiftAdvice {
    zones = List.copyOf(zones);
    problems = List.copyOf(problems);
  }

  /**
   * @param products by mix slot
   * @param tables the house's
   */
  public static LiftAdvice of(
      Placement placement,
      HairProfile hair,
      Optional<Level> wish,
      Map<String, ProductEntry> products,
      LiftTables tables) {
    Map<Zone, List<PlacedFoil>> foils = new EnumMap<>(Zone.class);
    for (PlacedFoil foil : placement.foils()) {
      ProductEntry product = products.get(foil.mix());
      if (product != null && product.kind().lightens()) {
        foils.computeIfAbsent(foil.zone(), z -> new ArrayList<>()).add(foil);
      }
    }
    List<ZoneLift> zones = new ArrayList<>();
    foils.forEach((zone, its) -> zones.add(zone(zone, its, hair, wish, products, tables)));
    zones.sort(Comparator.comparing(ZoneLift::rank).thenComparing(ZoneLift::zone));
    List<Problem> problems = new ArrayList<>();
    atScalp(placement, products).ifPresent(problems::add);
    wish.ifPresent(level -> problems.addAll(wanted(zones, level, tables)));
    order(zones).ifPresent(problems::add);
    problems.addAll(strength(zones, foils, products));
    return new LiftAdvice(wish, zones, problems, tables.mostLevelsInOneVisit());
  }

  private static ZoneLift zone(
      Zone zone,
      List<PlacedFoil> foils,
      HairProfile hair,
      Optional<Level> wish,
      Map<String, ProductEntry> products,
      LiftTables tables) {
    HairNature nature = hair.natureIn(zone);
    Optional<Integer> levels =
        wish.flatMap(to -> nature.level().map(from -> to.number() - from.number()));
    Map<String, TimeWindow> windows = new TreeMap<>();
    for (PlacedFoil foil : foils) {
      ProductEntry product = products.get(foil.mix());
      windows.put(
          foil.mix(),
          levels.map(l -> product.windowForLift(Math.max(1, l))).orElse(product.window()));
    }
    boolean before =
        hair.oldLightener().containsKey(zone)
            && hair.oldLightener().get(zone).share().toFraction() > 0;
    return new ZoneLift(
        zone, foils.size(), nature, before, levels, windows, wish.map(tables::warmthAt));
  }

  /**
   * The level that a product brings hair to: the wish, as far as one visit and the product's
   * entries by lift reach; empty without a wish. Hair that is at the wish stays as it is.
   */
  public Optional<Level> expected(Level natural, ProductEntry product) {
    int reach =
        product.windowsByLift().stream().mapToInt(LiftWindow::levels).max().orElse(mostLevels);
    return wish.map(
        to ->
            new Level(
                natural.number()
                    + Math.max(
                        0, Math.min(to.number() - natural.number(), Math.min(reach, mostLevels)))));
  }

  /** The window for a foil: that of its zone's lift; empty for a foil that does not lighten. */
  public Optional<TimeWindow> window(PlacedFoil foil) {
    return zones.stream()
        .filter(zone -> zone.zone() == foil.zone())
        .findFirst()
        .flatMap(zone -> Optional.ofNullable(zone.windows().get(foil.mix())));
  }

  private static List<Problem> wanted(List<ZoneLift> zones, Level wish, LiftTables tables) {
    List<Problem> problems = new ArrayList<>();
    List<ZoneLift> missing = zones.stream().filter(z -> z.nature().level().isEmpty()).toList();
    if (!missing.isEmpty()) {
      problems.add(
          Problem.warning(
              "level-missing",
              "hair",
              "the natural level is MISSING in "
                  + names(missing)
                  + ": the lift to "
                  + wish
                  + " cannot be told there, and the maker's whole window stands",
              "look at the level and write it down"));
    }
    int most = tables.mostLevelsInOneVisit();
    grouped(zones, levels -> levels > most)
        .forEach(
            (levels, its) ->
                problems.add(
                    Problem.warning(
                        "lift-too-much",
                        "wish.level",
                        names(its)
                            + ": "
                            + wish
                            + " asks for "
                            + levels
                            + " levels of lift, more than the "
                            + most
                            + " that one visit may take; expect "
                            + tables.warmthAt(new Level(wish.number() - levels + most))
                            + " at the most",
                        "plan two visits or more, or a wish of level "
                            + (wish.number() - levels + most)
                            + " for this one")));
    grouped(zones, levels -> levels <= 0)
        .forEach(
            (levels, its) ->
                problems.add(
                    Problem.warning(
                        "lift-not-needed",
                        "wish.level",
                        names(its)
                            + ": the hair is at level "
                            + (wish.number() - levels)
                            + " already, and "
                            + wish
                            + " is asked for",
                        "leave it, or tone it without lightening")));
    grouped(zones, levels -> levels > 0 && levels <= most)
        .forEach(
            (levels, its) ->
                problems.add(
                    Problem.note(
                        "lift-wanted",
                        "wish.level",
                        names(its)
                            + ": "
                            + levels
                            + (levels == 1 ? " level" : " levels")
                            + " of lift, "
                            + windows(its)
                            + "; expect "
                            + tables.warmthAt(wish)
                            + " before toning",
                        "go by the maker's sheet and by the checks; no time promises a result")));
    return problems;
  }

  /** Zones by levels wanted, most first, for levels of a kind. */
  private static Map<Integer, List<ZoneLift>> grouped(List<ZoneLift> zones, IntPredicate kind) {
    Map<Integer, List<ZoneLift>> groups = new TreeMap<>(Comparator.reverseOrder());
    for (ZoneLift zone : zones) {
      zone.levels()
          .filter(kind::test)
          .ifPresent(l -> groups.computeIfAbsent(l, k -> new ArrayList<>()).add(zone));
    }
    return groups;
  }

  private static String windows(List<ZoneLift> zones) {
    Map<String, TimeWindow> all = new TreeMap<>();
    zones.forEach(zone -> all.putAll(zone.windows()));
    return all.entrySet().stream()
        .map(e -> "mix " + e.getKey() + " for " + e.getValue().words())
        .collect(Collectors.joining(", "));
  }

  private static Optional<Problem> order(List<ZoneLift> zones) {
    if (zones.isEmpty()) {
      return Optional.empty();
    }
    double first = zones.get(0).rank();
    double last = zones.get(zones.size() - 1).rank();
    if (first == last) {
      return Optional.empty();
    }
    return Optional.of(
        Problem.note(
            "lift-order",
            "hair",
            "begin with "
                + described(zones.stream().filter(z -> z.rank() == first).toList())
                + "; leave "
                + described(zones.stream().filter(z -> z.rank() == last).toList())
                + " to the end",
            "change the working order where the pattern allows it, or check those foils first"));
  }

  private static String described(List<ZoneLift> zones) {
    Map<String, List<ZoneLift>> byWords = new LinkedHashMap<>();
    zones.forEach(z -> byWords.computeIfAbsent(z.words(), w -> new ArrayList<>()).add(z));
    return byWords.entrySet().stream()
        .map(e -> names(e.getValue()) + " (" + e.getKey() + ")")
        .collect(Collectors.joining(", "));
  }

  private static List<Problem> strength(
      List<ZoneLift> zones, Map<Zone, List<PlacedFoil>> foils, Map<String, ProductEntry> products) {
    Map<String, List<ZoneLift>> delicate = new TreeMap<>();
    for (ZoneLift zone : zones) {
      if (!zone.delicate().isEmpty()) {
        foils.get(zone.zone()).stream()
            .map(PlacedFoil::mix)
            .distinct()
            .filter(slot -> products.get(slot).developerStrength().compareTo(WEAK) > 0)
            .forEach(slot -> delicate.computeIfAbsent(slot, s -> new ArrayList<>()).add(zone));
      }
    }
    List<Problem> problems = new ArrayList<>();
    delicate.forEach(
        (slot, its) -> {
          ProductEntry used = products.get(slot);
          Set<String> why = new LinkedHashSet<>();
          its.forEach(zone -> why.addAll(zone.delicate()));
          Optional<Map.Entry<String, ProductEntry>> weaker =
              products.entrySet().stream()
                  .filter(e -> e.getValue().kind().lightens())
                  .filter(
                      e -> e.getValue().developerStrength().compareTo(used.developerStrength()) < 0)
                  .max(Comparator.comparing(e -> e.getValue().developerStrength()));
          problems.add(
              Problem.note(
                  "lift-strength",
                  "hair",
                  names(its)
                      + ": hair that is "
                      + String.join(" or ", why)
                      + " lifts faster and takes harm sooner; mix "
                      + slot
                      + " has a developer of "
                      + used.developerStrength(),
                  weaker
                          .map(
                              e ->
                                  "take mix "
                                      + e.getKey()
                                      + " there ("
                                      + e.getValue().name()
                                      + ", "
                                      + e.getValue().developerStrength()
                                      + ")")
                          .orElse(
                              "take a weaker developer there, where the maker's sheet allows it")
                      + ", or check it first; never stronger than the maker says"));
        });
    return problems;
  }

  private static Optional<Problem> atScalp(
      Placement placement, Map<String, ProductEntry> products) {
    List<PlacedFoil> strong =
        placement.foils().stream()
            .filter(
                foil ->
                    foil.startFromScalp().compareTo(AT_SCALP) < 0
                        && products.containsKey(foil.mix())
                        && products.get(foil.mix()).developerStrength().toFraction()
                            > MOST_AT_SCALP.toFraction() + 1e-9)
            .toList();
    return strong.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Problem.warning(
                "strong-at-scalp",
                "products",
                strong.size()
                    + (strong.size() == 1 ? " foil carries" : " foils carry")
                    + " a developer above "
                    + MOST_AT_SCALP
                    + " nearer than "
                    + AT_SCALP
                    + " to the scalp, beginning with foil "
                    + strong.get(0).number(),
                "start product "
                    + AT_SCALP
                    + " or more from the scalp, or take a weaker developer"));
  }

  /** Names of zones, a left and right pair by its common word. */
  private static String names(List<ZoneLift> zones) {
    Set<Zone> all = zones.stream().map(ZoneLift::zone).collect(Collectors.toSet());
    return zones.stream()
        .map(ZoneLift::zone)
        .map(
            zone ->
                zone.mirrored() != zone && all.contains(zone.mirrored())
                    ? zone.words().replaceFirst(" (left|right)$", "")
                    : zone.words())
        .distinct()
        .collect(Collectors.joining(", "));
  }
}
