package foilwright.placement;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.problem.Problem;
import foilwright.problem.Problems;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * Proves a placement by means other than those that made it: sums of areas, points scattered over
 * the scalp that must each lie in exactly one part of a section and in at most one foil, partings
 * tried against each other for crossings, halves of a pair held against each other's mirror image,
 * numbers counted. Findings are faults of the program, not of the pattern.
 */
public final class PlacementValidator {
  private static final double AREA_SHARE = 1e-9;
  private static final double MIRROR_MM = 1e-6;
  private static final double TOUCH_MM = 1.5;
  private static final int POINTS = 4000;
  private static final double BORDER = 1e-6;

  private final Placement placement;
  private final Problems problems = new Problems();

  private PlacementValidator(Placement placement) {
    this.placement = placement;
  }

  /**
   * Every fault found; empty for a sound placement.
   *
   * @param seed of the scattered points
   */
  public static List<Problem> faults(Placement placement, long seed) {
    PlacementValidator validator = new PlacementValidator(placement);
    validator.numbers();
    for (PlacedSection section : placement.sections()) {
      validator.areas(section);
      validator.crossings(section);
      validator.leftOut(section);
    }
    validator.points(seed);
    validator.mirrors();
    return validator.problems.toList();
  }

  private void fault(String code, PlacedSection section, String message, Vector3 place) {
    problems.add(
        Problem.error(
                code,
                "sections[" + section.index() + "]",
                "Section \"" + section.name() + "\": " + message,
                "This is a fault of the program: please report it with the pattern and the guest.")
            .at(place));
  }

  private void numbers() {
    for (int i = 0; i < placement.foils().size(); i++) {
      PlacedFoil foil = placement.foils().get(i);
      if (foil.number() != i + 1) {
        problems.add(
            Problem.error(
                "fault-number",
                "",
                "Foil " + foil.number() + " stands at place " + (i + 1) + " of the working order.",
                "This is a fault of the program: please report it."));
      }
    }
  }

  private void leftOut(PlacedSection section) {
    for (PlacedFoil foil : section.foils()) {
      if (isLeftOut(section, foil)) {
        fault(
            "fault-left-out",
            section,
            "foil " + foil.number() + " stands where one is left out.",
            foil.centre());
      }
    }
  }

  private static boolean isLeftOut(PlacedSection section, PlacedFoil foil) {
    return section.leftOut().stream()
        .anyMatch(p -> p.row() == foil.row() && p.foil() == foil.inRow());
  }

  private static List<Region> parts(PlacedSection section) {
    List<Region> parts = new ArrayList<>();
    section.foils().forEach(foil -> parts.add(foil.region()));
    parts.addAll(section.remainders());
    parts.addAll(section.backgrounds());
    parts.add(section.untouched());
    return parts;
  }

  private void areas(PlacedSection section) {
    double whole = section.region().area();
    double sum = parts(section).stream().mapToDouble(Region::area).sum();
    if (Math.abs(sum - whole) > AREA_SHARE * Math.max(whole, 1)) {
      fault(
          "fault-area",
          section,
          String.format(Locale.ROOT, "its parts cover %.9f mm2 of its %.9f mm2.", sum, whole),
          section.region().isEmpty() ? Vector3.ZERO : section.region().areaCentroid());
    }
  }

  /** Edges of slices must not cross; they may touch near their ends. */
  private void crossings(PlacedSection section) {
    List<Polyline> lines = section.partings();
    for (int i = 0; i < lines.size(); i++) {
      for (int j = i + 1; j < lines.size(); j++) {
        Polyline a = lines.get(i);
        Polyline b = lines.get(j);
        if (far(a, b)) {
          continue;
        }
        Vector3 crossing = crossing(a, b);
        if (crossing != null && !nearEnd(a, crossing) && !nearEnd(b, crossing)) {
          fault("fault-crossing", section, "two of its partings cross.", crossing);
          return;
        }
      }
    }
  }

  private static boolean nearEnd(Polyline line, Vector3 p) {
    return line.first().distance(p) < TOUCH_MM || line.last().distance(p) < TOUCH_MM;
  }

  private static boolean far(Polyline a, Polyline b) {
    Vector3 middle = a.at(a.length() / 2);
    return b.at(b.nearestArc(middle)).distance(middle) > a.length();
  }

  /**
   * A point where two lines pass through each other within a hundredth of a millimetre, or null.
   */
  private static Vector3 crossing(Polyline a, Polyline b) {
    for (int i = 0; i + 1 < a.size(); i++) {
      Vector3 p = a.points().get(i);
      Vector3 u = a.points().get(i + 1).minus(p);
      for (int j = 0; j + 1 < b.size(); j++) {
        Vector3 q = b.points().get(j);
        Vector3 v = b.points().get(j + 1).minus(q);
        Vector3 w = q.minus(p);
        Vector3 n = u.cross(v);
        double square = n.dot(n);
        if (square < 1e-12 || w.norm() > u.norm() + v.norm()) {
          continue;
        }
        double s = w.cross(v).dot(n) / square;
        double t = w.cross(u).dot(n) / square;
        if (s > 1e-6 && s < 1 - 1e-6 && t > 1e-6 && t < 1 - 1e-6) {
          Vector3 x = p.plus(u.times(s));
          if (x.distance(q.plus(v.times(t))) < 0.01) {
            return x;
          }
        }
      }
    }
    return null;
  }

  /** Scatters points over all sections and counts in how many parts and foils each lies. */
  private void points(long seed) {
    List<Map<Integer, List<int[]>>> index = new ArrayList<>();
    List<List<Region>> all = new ArrayList<>();
    for (PlacedSection section : placement.sections()) {
      List<Region> parts = parts(section);
      all.add(parts);
      Map<Integer, List<int[]>> byTriangle = new HashMap<>();
      for (int p = 0; p < parts.size(); p++) {
        for (int f = 0; f < parts.get(p).fragmentCount(); f++) {
          byTriangle
              .computeIfAbsent(parts.get(p).triangle(f), t -> new ArrayList<>())
              .add(new int[] {p, f});
        }
      }
      index.add(byTriangle);
    }
    Random random = new Random(seed);
    for (int s = 0; s < placement.sections().size(); s++) {
      PlacedSection section = placement.sections().get(s);
      Region region = section.region();
      int tries = region.isEmpty() ? 0 : POINTS / placement.sections().size();
      for (int n = 0; n < tries; n++) {
        int f = random.nextInt(region.fragmentCount());
        Vector3 point = inside(region, f, random);
        int t = region.triangle(f);
        int found =
            hits(all.get(s), index.get(s).getOrDefault(t, List.of()), point, Integer.MAX_VALUE);
        if (found >= 0 && found != 1) {
          fault(
              "fault-part",
              section,
              "a point lies in " + found + " of its parts instead of one.",
              point);
          return;
        }
        int foils = 0;
        for (int o = 0; o < all.size(); o++) {
          int held =
              hits(
                  all.get(o),
                  index.get(o).getOrDefault(t, List.of()),
                  point,
                  placement.sections().get(o).foils().size());
          foils = held < 0 || foils < 0 ? -1 : foils + held;
        }
        if (foils > 1
            && placement.problems().stream().noneMatch(p -> p.code().equals("sections-overlap"))) {
          fault("fault-overlap", section, "a point lies in " + foils + " foils.", point);
          return;
        }
      }
    }
  }

  private static Vector3 inside(Region region, int f, Random random) {
    int size = region.size(f);
    int i = 1 + random.nextInt(size - 2);
    double a = Math.sqrt(random.nextDouble());
    double b = random.nextDouble();
    return region
        .vertex(f, 0)
        .times(1 - a)
        .plus(region.vertex(f, i).times(a * (1 - b)))
        .plus(region.vertex(f, i + 1).times(a * b));
  }

  /** How many of the listed fragments hold a point; -1 when it lies on the border of one. */
  private static int hits(
      List<Region> parts, List<int[]> fragments, Vector3 point, int partsBelow) {
    int hits = 0;
    for (int[] pair : fragments) {
      if (pair[0] >= partsBelow) {
        continue;
      }
      Region part = parts.get(pair[0]);
      int f = pair[1];
      int size = part.size(f);
      Vector3 normal = part.mesh().normal(part.triangle(f));
      double least = Double.POSITIVE_INFINITY;
      for (int i = 0; i < size; i++) {
        Vector3 a = part.vertex(f, i);
        Vector3 edge = part.vertex(f, (i + 1) % size).minus(a);
        double length = edge.norm();
        if (length > 1e-12) {
          least = Math.min(least, edge.cross(point.minus(a)).dot(normal) / length);
        }
      }
      if (Math.abs(least) < BORDER) {
        return -1;
      }
      hits += least > 0 ? 1 : 0;
    }
    return hits;
  }

  /**
   * Whether two halves must mirror each other: not where a side part divides the zones unevenly, or
   * where the partings go by a fall that a side part turns.
   */
  private static boolean mayMirror(PlacedSection a, PlacedSection b) {
    return !a.shape().endsWith("fall")
        && !a.region().isEmpty()
        && !b.region().isEmpty()
        && a.region().areaCentroid().mirrored().distance(b.region().areaCentroid()) < MIRROR_MM;
  }

  private void mirrors() {
    Map<Integer, PlacedSection> first = new HashMap<>();
    for (PlacedSection section : placement.sections()) {
      PlacedSection other = first.putIfAbsent(section.index(), section);
      if (other == null || !mayMirror(other, section)) {
        continue;
      }
      // A foil that one half leaves out has nothing to mirror on the other.
      List<PlacedFoil> here = section.foils().stream().filter(f -> !isLeftOut(other, f)).toList();
      List<PlacedFoil> there = other.foils().stream().filter(f -> !isLeftOut(section, f)).toList();
      if (there.size() != here.size()) {
        fault(
            "fault-mirror",
            section,
            here.size() + " foils on one side, " + there.size() + " on the other.",
            section.region().areaCentroid());
        continue;
      }
      for (int i = 0; i < here.size(); i++) {
        PlacedFoil a = there.get(i);
        PlacedFoil b = here.get(i);
        if (a.centre().mirrored().distance(b.centre()) > MIRROR_MM
            || Math.abs(a.area().minus(b.area()).toSquareMillimetres()) > MIRROR_MM * 100) {
          fault(
              "fault-mirror",
              section,
              "foil " + b.number() + " is not the mirror image of foil " + a.number() + ".",
              b.centre());
          break;
        }
      }
    }
  }
}
