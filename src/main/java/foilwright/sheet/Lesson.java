package foilwright.sheet;

import foilwright.anatomy.Zone;
import foilwright.drawing.View;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.SurfacePoint;
import foilwright.head.Head;
import foilwright.head.TapeDirections;
import foilwright.pattern.Background;
import foilwright.pattern.Pattern;
import foilwright.pattern.Section;
import foilwright.pattern.WideEnd;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.placement.Placement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A plan told as a lesson: one step for each section, or for both halves of a pair that are worked
 * in turn; the turns of a pivot are parted where the person has to walk on. Everything said is read
 * off the placed foils and the way the hair falls.
 */
final class Lesson {
  /** Nearer than this to a right angle with the fall, partings are said to cross it, degrees. */
  private static final double CROSSES_DEG = 60;

  /** Nearer than this to the fall, partings are said to follow it, degrees. */
  private static final double FOLLOWS_DEG = 30;

  /** Where hair is drawn along the scalp less than this (1 is hanging straight), it has no fall. */
  private static final double LEAST_FALL = 0.15;

  /** Share of the middle line that an edge must have to stand for its slice. */
  private static final double LEAST_EDGE = 0.8;

  private static final double LEVEL_DEG = 1;
  private static final double SAME_DEG = 2;
  private static final double FROM_ABOVE = 0.72;

  private final Pattern pattern;
  private final Head head;
  private final DirectionField fall;
  private final Wording wording;

  /**
   * One step.
   *
   * @param number from 1
   * @param name of its section or sections
   * @param sections one, or the two halves of a pair
   * @param foils in working order
   * @param angle of the partings, in words
   * @param acrossFallDeg mean angle between partings and fall, 0 along it and 90 across; absent
   *     where the hair has no fall
   * @param start where the first parting lies, in tape terms
   * @param startAt a point of that parting
   */
  record Step(
      int number,
      String name,
      List<PlacedSection> sections,
      List<PlacedFoil> foils,
      String angle,
      OptionalDouble acrossFallDeg,
      String slice,
      String picks,
      String background,
      String start,
      Vector3 startAt,
      String posture,
      String standing,
      String hands,
      String why) {
    Step {
      sections = List.copyOf(sections);
      foils = List.copyOf(foils);
    }
  }

  private Lesson(Pattern pattern, Head head, DirectionField fall, Wording wording) {
    this.pattern = pattern;
    this.head = head;
    this.fall = fall;
    this.wording = wording;
  }

  /** The steps of a placement of a pattern on a head. */
  static List<Step> of(
      Pattern pattern, Head head, Placement placement, DirectionField fall, Wording wording) {
    Lesson lesson = new Lesson(pattern, head, fall, wording);
    Map<String, PlacedSection> sections = new LinkedHashMap<>();
    placement.sections().forEach(s -> sections.put(s.name(), s));
    List<Step> steps = new ArrayList<>();
    for (List<PlacedFoil> foils : lesson.parts(placement.foils())) {
      Set<PlacedSection> held = new LinkedHashSet<>();
      foils.forEach(f -> held.add(sections.get(f.section())));
      steps.add(lesson.step(steps.size() + 1, List.copyOf(held), foils));
    }
    return List.copyOf(steps);
  }

  /** The foils of each step. */
  private List<List<PlacedFoil>> parts(List<PlacedFoil> foils) {
    Map<Integer, Integer> runs = new LinkedHashMap<>();
    Map<Integer, Set<String>> names = new LinkedHashMap<>();
    String last = "";
    for (PlacedFoil foil : foils) {
      names.computeIfAbsent(foil.sectionIndex(), i -> new LinkedHashSet<>()).add(foil.section());
      if (!foil.section().equals(last)) {
        runs.merge(foil.sectionIndex(), 1, Integer::sum);
      }
      last = foil.section();
    }
    Map<String, List<PlacedFoil>> groups = new LinkedHashMap<>();
    for (PlacedFoil foil : foils) {
      int index = foil.sectionIndex();
      boolean inTurn = runs.get(index) > names.get(index).size();
      String key = inTurn ? index + "" : index + foil.section();
      groups.computeIfAbsent(key, k -> new ArrayList<>()).add(foil);
    }
    List<List<PlacedFoil>> parts = new ArrayList<>();
    for (List<PlacedFoil> group : groups.values()) {
      if (group.get(0).shape().equals("pivot")) {
        parts.addAll(bySide(group));
      } else {
        parts.add(group);
      }
    }
    return parts;
  }

  /** Parted where the foils turn to another side of the head; a single foil goes with the next. */
  private static List<List<PlacedFoil>> bySide(List<PlacedFoil> foils) {
    List<List<PlacedFoil>> parts = new ArrayList<>();
    View side = null;
    for (PlacedFoil foil : foils) {
      View here = levelSide(foil.outward());
      if (parts.isEmpty() || (here != side && parts.get(parts.size() - 1).size() > 1)) {
        parts.add(new ArrayList<>());
      }
      side = here;
      parts.get(parts.size() - 1).add(foil);
    }
    int n = parts.size();
    if (n > 1 && parts.get(n - 1).size() == 1) {
      parts.get(n - 2).addAll(parts.remove(n - 1));
    }
    return parts;
  }

  private static View levelSide(Vector3 outward) {
    if (Math.abs(outward.x()) > Math.abs(outward.y())) {
      return outward.x() > 0 ? View.RIGHT : View.LEFT;
    }
    return outward.y() > 0 ? View.FRONT : View.BACK;
  }

  private Step step(int number, List<PlacedSection> sections, List<PlacedFoil> foils) {
    List<String> names = sections.stream().map(PlacedSection::name).toList();
    Polyline first = firstParting(foils);
    OptionalDouble across = acrossFall(foils, head, fall);
    Optional<Section> section =
        pattern.sections().stream().skip(foils.get(0).sectionIndex()).findFirst();
    Vector3 at = startPoint(first);
    return new Step(
        number,
        String.join(" and ", names) + (names.size() > 1 ? ", in turn" : ""),
        sections,
        foils,
        angle(foils),
        across,
        slice(foils),
        picks(foils, section),
        background(foils, section),
        start(foils, first),
        at,
        posture(foils),
        standing(foils),
        hands(foils),
        why(across, section, foils));
  }

  /** The first parting of a step as one line: the first edges of its first row, end to end. */
  private static Polyline firstParting(List<PlacedFoil> foils) {
    PlacedFoil first = foils.get(0);
    List<Vector3> points = new ArrayList<>();
    for (PlacedFoil foil : foils) {
      if (foil.row() == first.row() && foil.section().equals(first.section())) {
        points.addAll(edge(foil).points());
      }
    }
    return Polyline.of(points);
  }

  /**
   * The first edge of a foil's slice; its middle line where the edge is cut short, as it is where a
   * slice reaches over the part.
   */
  static Polyline edge(PlacedFoil foil) {
    return foil.parting().length() < LEAST_EDGE * foil.middle().length()
        ? foil.middle()
        : foil.parting();
  }

  /** Where the first parting crosses the centre line, else its end nearest to that line. */
  private static Vector3 startPoint(Polyline parting) {
    return crossing(parting)
        .orElseGet(
            () ->
                Math.abs(parting.first().x()) <= Math.abs(parting.last().x())
                    ? parting.first()
                    : parting.last());
  }

  private static Optional<Vector3> crossing(Polyline parting) {
    List<Vector3> points = parting.points();
    for (int i = 1; i < points.size(); i++) {
      double a = points.get(i - 1).x();
      double b = points.get(i).x();
      if (a != b && a * b <= 0) {
        return Optional.of(points.get(i - 1).lerp(points.get(i), a / (a - b)));
      }
    }
    return Optional.empty();
  }

  private String start(List<PlacedFoil> foils, Polyline parting) {
    PlacedFoil one = foils.get(0);
    String what =
        (one.row() == 1 ? "first " : "next ")
            + (edge(one).equals(one.parting()) ? "parting" : "slice, along its middle,");
    Optional<Vector3> middle = crossing(parting);
    if (middle.isPresent()) {
      Polyline line = head.centreLine();
      double fromFront = line.nearestArc(middle.get());
      double fromNape = line.length() - fromFront;
      return what
          + " "
          + (fromNape < fromFront
              ? wording.distance(Math.rint(fromNape)) + " up from the nape hairline"
              : wording.distance(Math.rint(fromFront)) + " back from the front hairline")
          + ", on the centre line";
    }
    Vector3 near = startPoint(parting);
    Vector3 far = near.equals(parting.first()) ? parting.last() : parting.first();
    return what.replace(",", "") + ": from " + place(near) + ", to " + place(far);
  }

  private String place(Vector3 point) {
    TapeDirections tape = head.find(point);
    double aside = Math.rint(tape.fromCentre().toMillimetres());
    return wording.distance(Math.rint(tape.fromHairline().toMillimetres()))
        + " off the "
        + tape.stretch().words()
        + ", "
        + wording.distance(Math.abs(aside))
        + (aside < 0 ? " left" : " right")
        + " of centre";
  }

  static String angle(Collection<PlacedFoil> foils) {
    double least = foils.stream().mapToDouble(f -> f.partingAngle().toDegrees()).min().orElse(0);
    double most = foils.stream().mapToDouble(f -> f.partingAngle().toDegrees()).max().orElse(0);
    Set<String> ends =
        foils.stream()
            .flatMap(f -> f.lowerEnd().stream())
            .collect(Collectors.toCollection(LinkedHashSet::new));
    String lower = ends.size() == 1 ? ", " + ends.iterator().next() + " end lower" : "";
    if (most <= LEVEL_DEG) {
      return "level";
    }
    if (least >= 90 - LEVEL_DEG) {
      return "90 deg";
    }
    if (most - least <= SAME_DEG) {
      return String.format(Locale.ROOT, "%.0f deg%s", (least + most) / 2, lower);
    }
    return String.format(Locale.ROOT, "%.0f to %.0f deg%s", least, most, lower);
  }

  /** How hair is taken out of the slices, each way once, and the mixes when there are several. */
  static String picks(List<PlacedFoil> foils, Optional<Section> section) {
    List<String> ways =
        section.stream()
            .flatMap(s -> s.fill().picks().stream())
            .map(
                pick ->
                    pick.match(
                        solid -> "solid, all of the slice",
                        weave ->
                            "weave, "
                                + Wording.both(weave.pick().toMillimetres())
                                + " picked, "
                                + Wording.both(weave.gap().toMillimetres())
                                + " left",
                        zigzag ->
                            "zigzag, teeth of "
                                + Wording.both(zigzag.tooth().toMillimetres())
                                + ", "
                                + Wording.both(zigzag.gap().toMillimetres())
                                + " left"))
            .toList();
    List<String> mixes = foils.stream().map(PlacedFoil::mix).distinct().sorted().toList();
    return String.join(", then ", ways)
        + (mixes.size() > 1 ? "; a letter by the number is the mix" : "");
  }

  static String slice(Collection<PlacedFoil> foils) {
    double least =
        foils.stream()
            .mapToDouble(
                f -> Math.min(f.sliceAtStart().toMillimetres(), f.sliceAtEnd().toMillimetres()))
            .min()
            .orElse(0);
    double most =
        foils.stream()
            .mapToDouble(
                f -> Math.max(f.sliceAtStart().toMillimetres(), f.sliceAtEnd().toMillimetres()))
            .max()
            .orElse(0);
    return Wording.both(least, most);
  }

  /** What the pattern asks for at the wide end of a wedge; else what lies before the foils. */
  static String background(Collection<PlacedFoil> foils, Optional<Section> section) {
    List<Double> widths =
        foils.stream()
            .filter(f -> f.row() > 1)
            .map(f -> f.backgroundBefore().toMillimetres())
            .sorted()
            .toList();
    String measured =
        widths.isEmpty() ? "" : Wording.both(widths.get(0), widths.get(widths.size() - 1));
    return section
        .map(Section::fill)
        .map(
            fill ->
                fill.background()
                    .match(
                        even -> measured.isEmpty() ? "one slice only" : measured,
                        wedge ->
                            (measured.isEmpty() ? "" : measured + " in the middle of a foil, ")
                                + "wide at the "
                                + end(wedge.wideEnd())
                                + (wedge.points() == Background.Points.SAME_END
                                    ? ", closing to a point"
                                    : " and at the other end in turn"),
                        none -> "none: foil on foil"))
        .orElse(measured);
  }

  static String end(WideEnd end) {
    return switch (end) {
      case UP -> "upper end";
      case DOWN -> "lower end";
      default -> end.words() + " end";
    };
  }

  private static WideEnd opposite(WideEnd end) {
    return switch (end) {
      case FACE -> WideEnd.BACK;
      case BACK -> WideEnd.FACE;
      case UP -> WideEnd.DOWN;
      case DOWN -> WideEnd.UP;
      case EAR -> WideEnd.CENTRE;
      case CENTRE -> WideEnd.EAR;
      case LEFT -> WideEnd.RIGHT;
      case RIGHT -> WideEnd.LEFT;
    };
  }

  /** The zone that holds most of the foils; of equals the first in the order of zones. */
  private static Zone zone(List<PlacedFoil> foils) {
    Map<Zone, Integer> counts = new EnumMap<>(Zone.class);
    foils.forEach(f -> counts.merge(f.zone(), 1, Integer::sum));
    return counts.entrySet().stream()
        .max(Comparator.comparingInt(Map.Entry::getValue))
        .orElseThrow()
        .getKey();
  }

  private static String posture(List<PlacedFoil> foils) {
    return switch (zone(foils)) {
      case NAPE_LEFT, NAPE_RIGHT -> "level to draw the parting, then chin down to the chest";
      case BACK_UPPER_LEFT, BACK_UPPER_RIGHT ->
          "level to draw the parting, then chin a little down";
      case FRONT_SIDE_LEFT, FRONT_SIDE_RIGHT ->
          "level to draw the parting, then tilted a little away from you";
      case FRINGE -> "level, chin a little up";
      default -> "level";
    };
  }

  /** Mean direction out of the head; of both halves of a pair as if they lay on one side. */
  private static Vector3 outward(List<PlacedFoil> foils, boolean pair) {
    Vector3 sum = Vector3.ZERO;
    for (PlacedFoil foil : foils) {
      Vector3 out = foil.outward();
      Vector3 one = pair && out.x() < 0 ? out.mirrored() : out;
      sum = sum.plus(one.times(foil.area().toSquareMillimetres()));
    }
    return sum.norm() > 0 ? sum.unit() : Vector3.UP;
  }

  private String standing(List<PlacedFoil> foils) {
    boolean twoSides = foils.stream().map(PlacedFoil::section).distinct().count() > 1;
    Vector3 out = outward(foils, twoSides);
    if (zone(foils) == Zone.FRINGE) {
      return wording.leftHanded()
          ? "in front, at the client's left"
          : "in front, at the client's right";
    }
    if (out.z() > FROM_ABOVE && out.y() > -0.5 && (twoSides || Math.abs(out.x()) < 0.4)) {
      return "behind, looking down on the head";
    }
    String side = out.x() < 0 ? "client's left" : "client's right";
    if (twoSides) {
      side = "each side in turn";
    }
    double turn = Math.toDegrees(Math.atan2(Math.abs(out.x()), -out.y()));
    if (turn < 25) {
      return "straight behind";
    }
    if (turn < 65) {
      return "behind, a step to " + (twoSides ? side : "the " + side);
    }
    return turn < 125
        ? "at " + (twoSides ? side : "the " + side) + ", square to the ear"
        : "in front, at " + (twoSides ? side : "the " + side);
  }

  /** Comb hand and the order within a row; a left-handed person takes each row the other way. */
  private String hands(List<PlacedFoil> foils) {
    String comb =
        wording.leftHanded()
            ? "comb in the left hand, slice in the right"
            : "comb in the right hand, slice in the left";
    Map<String, List<Integer>> rows = new LinkedHashMap<>();
    foils.forEach(
        f -> rows.computeIfAbsent(f.section() + f.row(), k -> new ArrayList<>()).add(f.number()));
    Optional<List<Integer>> row = rows.values().stream().filter(r -> r.size() > 1).findFirst();
    if (row.isEmpty()) {
      return comb;
    }
    List<Integer> order = new ArrayList<>(row.get());
    if (wording.leftHanded()) {
      order.sort(Comparator.reverseOrder());
      return comb + "; each row from its other end: " + list(order);
    }
    return comb + "; along each row: " + list(order);
  }

  private static String list(List<Integer> numbers) {
    return numbers.stream().map(n -> Integer.toString(n)).collect(Collectors.joining(", "));
  }

  /** How partings lie to the fall of the hair. */
  enum Way {
    ACROSS,
    SLANTING,
    ALONG,
    FLAT;

    static Way of(OptionalDouble acrossFallDeg) {
      if (acrossFallDeg.isEmpty()) {
        return FLAT;
      }
      double deg = acrossFallDeg.getAsDouble();
      return deg >= CROSSES_DEG ? ACROSS : deg <= FOLLOWS_DEG ? ALONG : SLANTING;
    }
  }

  /**
   * Mean angle between partings and fall by area, degrees: 0 along it, 90 across; empty where the
   * hair has no fall.
   */
  static OptionalDouble acrossFall(List<PlacedFoil> foils, Head head, DirectionField fall) {
    double sum = 0;
    double weight = 0;
    for (PlacedFoil foil : foils) {
      SurfacePoint at = head.nearestOnScalp(foil.centre());
      Vector3 down = fall.at(at.triangle());
      double strength = down.norm();
      if (strength < LEAST_FALL || foil.middle().size() < 2) {
        continue;
      }
      Vector3 along = foil.middle().tangentAt(foil.middle().length() / 2);
      double cosine = Math.min(1, Math.abs(along.dot(down)) / strength);
      double share = foil.area().toSquareMillimetres();
      sum += share * Math.toDegrees(Math.acos(cosine));
      weight += share;
    }
    return weight > 0 ? OptionalDouble.of(sum / weight) : OptionalDouble.empty();
  }

  private static String why(
      OptionalDouble across, Optional<Section> section, List<PlacedFoil> foils) {
    return direction(across) + "; " + depth(section, foils) + ".";
  }

  private static String direction(OptionalDouble across) {
    String by =
        across.isPresent()
            ? String.format(Locale.ROOT, " (%.0f deg to it)", across.getAsDouble())
            : "";
    return switch (Way.of(across)) {
      case ACROSS -> "Across the fall" + by + ", so each foil falls as a veil over the one below";
      case ALONG -> "Along the fall" + by + ", so the colour hangs as upright ribbons side by side";
      case SLANTING -> "Slanting to the fall" + by + ", so the colour runs as leaning ribbons";
      case FLAT -> "Hair lies flat here, so the parting alone decides which way the colour runs";
    };
  }

  private static String depth(Optional<Section> section, List<PlacedFoil> foils) {
    boolean oneRow = foils.stream().mapToInt(PlacedFoil::row).distinct().count() == 1;
    return section
        .map(Section::fill)
        .map(
            fill ->
                fill.background()
                    .match(
                        even ->
                            oneRow
                                ? "it is a single row, with nothing left out inside it"
                                : "the background is even, so depth stays the same all along",
                        wedge ->
                            wedge.points() == Background.Points.SAME_END
                                ? "the background closes at the "
                                    + end(opposite(wedge.wideEnd()))
                                    + ", where the light gathers, and keeps depth at the "
                                    + end(wedge.wideEnd())
                                : "the background closes at either end in turn, so no end is left"
                                    + " darker",
                        none -> "no background is left, so nothing breaks the light"))
        .orElse("the background is as the foils lie");
  }
}
