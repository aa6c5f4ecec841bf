package foilwright.placement;

import foilwright.anatomy.Side;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.LinearValues;
import foilwright.geometry.surface.Region;
import foilwright.head.Head;
import foilwright.pattern.FoilPlace;
import foilwright.pattern.Pattern;
import foilwright.pattern.Section;
import foilwright.units.Length;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Which foils to give up first when there are too many for the time: those least seen, and among
 * them those that pick the fewest hairs.
 *
 * <p>A foil and its partner on the other side go one after the other, so that whatever number is
 * given up, left and right lose the same within one foil as long as there are foils on both sides
 * to choose from.
 *
 * <p>Where nobody has simulated the look, how much of a foil's hair is seen is estimated from where
 * it roots, and only from that: neither the haircut nor the fall of the hair changes it. It is
 * meant to put foils in an order and to be replaced by a look.
 */
public final class Thinning {
  /** Hair that roots this near to the part line or to the hairline of the face is seen. */
  public static final Length EDGE = Length.ofMillimetres(25);

  /** Mirrored foils of one section lie no farther from each other's image than this. */
  private static final double PARTNER_MM = 12;

  private Thinning() {}

  /**
   * How much of a foil's hair is seen.
   *
   * @param share of its hair that lies on the surface that shows; 0 to 1
   * @param why in words, to follow "it": {@code roots on top}
   */
  public record Seen(Share share, String why) {}

  /**
   * One foil in the order of giving up.
   *
   * @param partner number of the foil on the other side that goes with it
   */
  public record Choice(PlacedFoil foil, Seen seen, Optional<Integer> partner) {

    /** Why it stands where it does, in one sentence. */
    public String reason() {
      String with = partner.map(n -> ", with foil " + n + " on the other side").orElse("");
      return String.format(
          Locale.ROOT,
          "foil %d%s: about %.0f %% of its hair is seen, for it %s; it picks %.0f hairs",
          foil.number(),
          with,
          seen.share().toPercent(),
          seen.why(),
          foil.pickedHairs());
    }
  }

  /** Where hair roots, with the share of it that is taken to be seen (our estimate). */
  private enum Place {
    PART("roots within 25 mm of the part line", 1),
    FACE("roots within 25 mm of the hairline of the face", 1),
    TOP("roots on top, above the parietal ridge", 0.85),
    MIDDLE("roots at the sides or the upper back, under hair of the top", 0.5),
    NAPE("roots below the occipital line, under the hair above", 0.15);

    private final String words;
    private final double seen;

    Place(String words, double seen) {
      this.words = words;
      this.seen = seen;
    }
  }

  /** All foils, the first to be given up first, by the estimate from where they root. */
  public static List<Choice> rank(Placement placement, Head head) {
    return rank(placement, foil -> estimate(foil, head));
  }

  /**
   * All foils, the first to be given up first.
   *
   * @param seen how much of a foil's hair is seen; shares that agree to a hundredth are taken as
   *     equal
   */
  public static List<Choice> rank(Placement placement, Function<PlacedFoil, Seen> seen) {
    Map<Integer, Seen> bySeen = new HashMap<>();
    placement.foils().forEach(foil -> bySeen.put(foil.number(), seen.apply(foil)));
    Map<Integer, PlacedFoil> partners = partners(placement);
    List<List<PlacedFoil>> units = new ArrayList<>();
    for (PlacedFoil foil : placement.foils()) {
      PlacedFoil partner = partners.get(foil.number());
      if (partner == null) {
        units.add(List.of(foil));
      } else if (foil.number() < partner.number()) {
        units.add(List.of(foil, partner));
      }
    }
    units.sort(
        Comparator.comparingLong(
                (List<PlacedFoil> unit) ->
                    Math.round(
                        unit.stream()
                            .mapToDouble(f -> bySeen.get(f.number()).share().toPercent())
                            .average()
                            .orElseThrow()))
            .thenComparingDouble(
                unit -> unit.stream().mapToDouble(PlacedFoil::pickedHairs).average().orElseThrow())
            .thenComparingInt(unit -> unit.get(0).number()));
    List<Choice> order = new ArrayList<>();
    for (PlacedFoil foil : balanced(units)) {
      Optional<Integer> partner =
          Optional.ofNullable(partners.get(foil.number())).map(PlacedFoil::number);
      order.add(new Choice(foil, bySeen.get(foil.number()), partner));
    }
    return order;
  }

  /** Takes the units in turn, passing over those that would take two foils more off one side. */
  private static List<PlacedFoil> balanced(List<List<PlacedFoil>> units) {
    List<List<PlacedFoil>> open = new ArrayList<>(units);
    List<PlacedFoil> order = new ArrayList<>();
    int balance = 0;
    while (!open.isEmpty()) {
      int now = balance;
      List<PlacedFoil> unit =
          open.stream().filter(u -> Math.abs(now + weight(u)) <= 1).findFirst().orElse(open.get(0));
      open.remove(unit);
      List<PlacedFoil> foils = new ArrayList<>(unit);
      foils.sort(Comparator.comparingInt(f -> Math.abs(now + weight(f))));
      order.addAll(foils);
      balance += weight(unit);
    }
    return order;
  }

  private static int weight(List<PlacedFoil> unit) {
    return unit.stream().mapToInt(Thinning::weight).sum();
  }

  private static int weight(PlacedFoil foil) {
    return switch (foil.side()) {
      case LEFT -> -1;
      case MIDDLE -> 0;
      case RIGHT -> 1;
    };
  }

  /** Each foil that has one on the other side, with that one, both ways. */
  private static Map<Integer, PlacedFoil> partners(Placement placement) {
    Map<Integer, PlacedFoil> partners = new HashMap<>();
    for (int s = 0; s < placement.sections().size(); s++) {
      PlacedSection section = placement.sections().get(s);
      Optional<PlacedSection> other =
          placement.sections().stream()
              .filter(o -> o.index() == section.index() && !o.name().equals(section.name()))
              .findFirst();
      for (PlacedFoil foil : section.foils()) {
        Optional<PlacedFoil> partner =
            other.isPresent()
                ? other.get().foils().stream()
                    .filter(f -> f.row() == foil.row() && f.inRow() == foil.inRow())
                    .findFirst()
                : nearest(section, foil)
                    .filter(
                        near ->
                            nearest(section, near)
                                .filter(back -> back.number() == foil.number())
                                .isPresent());
        partner.ifPresent(p -> partners.put(foil.number(), p));
      }
    }
    return partners;
  }

  /** The foil on the other side of a section that is nearest to a foil's mirror image. */
  private static Optional<PlacedFoil> nearest(PlacedSection section, PlacedFoil foil) {
    if (foil.side() == Side.MIDDLE) {
      return Optional.empty();
    }
    Vector3 image = foil.centre().mirrored();
    return section.foils().stream()
        .filter(f -> f.side() == foil.side().mirrored())
        .filter(f -> f.centre().distance(image) <= PARTNER_MM)
        .min(Comparator.comparingDouble(f -> f.centre().distance(image)));
  }

  // ---- how much is seen

  /**
   * How much of a foil's hair is taken to be seen: all within 25 mm of the part line or the
   * hairline of the face, most on top, half at the sides and the upper back, little below the
   * occipital line; by the scalp area that the foil has in each.
   */
  public static Seen estimate(PlacedFoil foil, Head head) {
    double edge = EDGE.toMillimetres();
    Map<Place, Double> areas = new TreeMap<>();
    Region rest = foil.region();
    if (head.distanceFromPart().isPresent()) {
      LinearValues part = head.distanceFromPart().get();
      areas.put(Place.PART, below(rest, part, edge).area());
      rest = above(rest, part, edge);
    }
    Region front = above(rest, head.beforeEarLine(), 0);
    areas.put(Place.FACE, below(front, head.distanceFromHairline(), edge).area());
    front = above(front, head.distanceFromHairline(), edge);
    Region back = below(rest, head.beforeEarLine(), 0);
    double ridge = head.settings().ridgeElevation().toRadians();
    double occipital = head.settings().occipitalElevation().toRadians();
    LinearValues elevation = head.normalElevation();
    areas.put(
        Place.TOP, above(front, elevation, ridge).area() + above(back, elevation, ridge).area());
    areas.put(
        Place.MIDDLE,
        below(front, elevation, ridge).area() + back.clip(elevation, occipital, ridge).area());
    areas.put(Place.NAPE, below(back, elevation, occipital).area());
    double sum = areas.values().stream().mapToDouble(Double::doubleValue).sum();
    double seen =
        areas.entrySet().stream().mapToDouble(e -> e.getKey().seen * e.getValue()).sum() / sum;
    Place most = areas.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
    return new Seen(Share.ofFraction(seen), most.words);
  }

  private static Region below(Region region, LinearValues field, double level) {
    return region.clip(field, Double.NEGATIVE_INFINITY, level);
  }

  private static Region above(Region region, LinearValues field, double level) {
    return region.clip(field, level, Double.POSITIVE_INFINITY);
  }

  // ---- giving up

  /**
   * A pattern that leaves foils out beside those it leaves out already. Laid again on the same
   * head, hair and settings it gives all the other foils, each as it was but for its number and for
   * the background before it.
   *
   * @param foils of a placement of this pattern
   * @throws IllegalArgumentException when a foil's section is not in the pattern
   */
  public static Pattern leaveOut(Pattern pattern, Collection<PlacedFoil> foils) {
    List<Section> sections = new ArrayList<>();
    for (int i = 0; i < pattern.sections().size(); i++) {
      Section section = pattern.sections().get(i);
      TreeSet<FoilPlace> places = new TreeSet<>(section.leaveOut());
      for (PlacedFoil foil : foils) {
        if (foil.sectionIndex() == i) {
          places.add(place(section, foil));
        }
      }
      sections.add(section.withLeaveOut(joined(places)));
    }
    for (PlacedFoil foil : foils) {
      if (foil.sectionIndex() >= sections.size()) {
        throw new IllegalArgumentException(
            "foil " + foil.number() + " is of section " + foil.sectionIndex());
      }
    }
    return pattern.withSections(sections);
  }

  private static FoilPlace place(Section section, PlacedFoil foil) {
    boolean first = foil.section().equals(section.name());
    if (!first && !foil.section().equals(section.mirroredName())) {
      throw new IllegalArgumentException(
          "foil "
              + foil.number()
              + " is of the section \""
              + foil.section()
              + "\", not of \""
              + section.name()
              + "\"");
    }
    if (!section.mirror()) {
      return FoilPlace.of(foil.row(), foil.inRow());
    }
    Side side = section.region().keptSide();
    return FoilPlace.of(first ? side : side.mirrored(), foil.row(), foil.inRow());
  }

  /** Names a place that is left out left and right only once, without a side. */
  private static List<FoilPlace> joined(Set<FoilPlace> places) {
    TreeSet<FoilPlace> joined = new TreeSet<>();
    for (FoilPlace place : places) {
      FoilPlace both = FoilPlace.of(place.row(), place.foil());
      boolean left = places.contains(FoilPlace.of(Side.LEFT, place.row(), place.foil()));
      boolean right = places.contains(FoilPlace.of(Side.RIGHT, place.row(), place.foil()));
      joined.add(places.contains(both) || (left && right) ? both : place);
    }
    return List.copyOf(joined);
  }
}
