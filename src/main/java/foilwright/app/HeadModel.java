package foilwright.app;

import foilwright.document.Documents;
import foilwright.geometry.Plane;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.head.Head;
import foilwright.head.HeadForm;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.sheet.MapSheet;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A plan's head with its foils as triangles, for a picture that can be turned. Coordinates are
 * millimetres of the head frame (x to the client's right, y to the front, z up), to a tenth.
 */
public final class HeadModel {
  private static final int ROUND = 72;
  private static final int RISE = 40;
  private static final double LOWEST_DEG = -62;

  /** How far foils and lines lie above the surface, so that they are not hidden by it. */
  private static final double ABOVE_MM = 0.7;

  /** A parting that bends less than this over its length, mm, tells no plane. */
  private static final double LEAST_BEND = 0.5;

  private static final double OFF_PLANE_MM = 0.3;

  /** How far a section's plane is drawn beyond its parting. */
  private static final double BEYOND_MM = 22;

  private final HeadForm form;

  private HeadModel(HeadForm form) {
    this.form = form;
  }

  /**
   * JSON: the form, the hair-bearing scalp, backgrounds and foils, each with its points (x, y, z in
   * turn) and the places of its triangles' corners among them, and lines; for each section, and for
   * each half of a pair, its partings and, where they are straight, four corners of the plane of
   * the first. Colours are those of the maps.
   */
  public static byte[] json(Plan plan) {
    Head head = plan.head();
    HeadModel model = new HeadModel(head.form());
    List<Object> foils = new ArrayList<>();
    for (PlacedFoil foil : plan.placement().foils()) {
      Group group =
          new Group()
              .put("number", foil.number())
              .put("section", foil.sectionIndex())
              .put("colour", String.format("#%06x", MapSheet.ground(foil.sectionIndex()).rgb()))
              .put("centre", coordinates(List.of(foil.centre().plus(foil.outward().times(4)))));
      model.put(group, foil.region(), ABOVE_MM);
      foils.add(group.members());
    }
    List<Object> backgrounds = new ArrayList<>();
    List<Object> sections = new ArrayList<>();
    for (PlacedSection section : plan.placement().sections()) {
      Group drawn = new Group().put("section", section.index());
      drawn.put("partings", section.partings().stream().map(model::line).toList());
      model.planeOfFirst(section).ifPresent(corners -> drawn.put("plane", coordinates(corners)));
      sections.add(drawn.members());
      for (Region background : section.backgrounds()) {
        backgrounds.add(model.put(new Group(), background, ABOVE_MM / 2).members());
      }
    }
    List<Object> lines = new ArrayList<>();
    lines.add(model.line(head.hairline()));
    head.partLine().ifPresent(line -> lines.add(model.line(line)));
    return Documents.write(
        new Group()
            .put("form", model.grid())
            .put("scalp", model.put(new Group(), head.scalp(), ABOVE_MM / 4).members())
            .put("backgrounds", backgrounds)
            .put("foils", foils)
            .put("sections", sections)
            .put("lines", lines)
            .members());
  }

  /**
   * Corners, in turn, of a piece of the plane in which a section's first parting lies; empty when
   * it lies in none. It stands out of the head and reaches as far into it.
   */
  private Optional<List<Vector3>> planeOfFirst(PlacedSection section) {
    if (section.partings().isEmpty()) {
      return Optional.empty();
    }
    Polyline line = section.partings().get(0);
    Vector3 middle = line.at(line.length() / 2);
    Vector3 chord = line.last().minus(line.first());
    Vector3 square = middle.minus(line.first()).cross(chord);
    if (line.closed() || square.norm() < LEAST_BEND * chord.norm()) {
      return Optional.empty();
    }
    Plane plane = Plane.through(middle, square.unit());
    if (line.points().stream().anyMatch(p -> Math.abs(plane.distance(p)) > OFF_PLANE_MM)) {
      return Optional.empty();
    }
    Vector3 along = chord.unit();
    Vector3 out = form.normal(middle);
    out = out.minus(along.times(out.dot(along)));
    out = out.minus(plane.normal().times(out.dot(plane.normal()))).unit();
    Vector3 aside = along.times(chord.norm() / 2 + BEYOND_MM);
    Vector3 rise = out.times(BEYOND_MM);
    Vector3 from = line.first().lerp(line.last(), 0.5);
    double high = middle.minus(from).dot(out);
    return Optional.of(
        List.of(
            from.minus(aside).minus(rise),
            from.plus(aside).minus(rise),
            from.plus(aside).plus(rise).plus(out.times(high)),
            from.minus(aside).plus(rise).plus(out.times(high))));
  }

  private Map<String, Object> grid() {
    List<Vector3> points = new ArrayList<>();
    List<Integer> corners = new ArrayList<>();
    for (int j = 0; j <= RISE; j++) {
      double rise = Math.toRadians(LOWEST_DEG + (90 - LOWEST_DEG) * j / RISE);
      for (int i = 0; i < ROUND; i++) {
        double turn = 2 * Math.PI * i / ROUND;
        Vector3 direction =
            new Vector3(
                Math.cos(rise) * Math.sin(turn), Math.cos(rise) * Math.cos(turn), Math.sin(rise));
        points.add(form.surfacePoint(form.centre().plus(direction)));
        if (j < RISE) {
          int a = j * ROUND + i;
          int b = j * ROUND + (i + 1) % ROUND;
          corners.addAll(List.of(a, a + ROUND, b, b, a + ROUND, b + ROUND));
        }
      }
    }
    return new Group().put("points", coordinates(points)).put("corners", corners).members();
  }

  private Group put(Group group, Region region, double above) {
    List<Vector3> points = new ArrayList<>();
    List<Integer> corners = new ArrayList<>();
    for (int f = 0; f < region.fragmentCount(); f++) {
      int first = points.size();
      for (int i = 0; i < region.size(f); i++) {
        points.add(lifted(region.vertex(f, i), above));
        if (i >= 2) {
          corners.addAll(List.of(first, first + i - 1, first + i));
        }
      }
    }
    return group.put("points", coordinates(points)).put("corners", corners);
  }

  private List<Object> line(Polyline line) {
    return coordinates(line.points().stream().map(p -> lifted(p, ABOVE_MM)).toList());
  }

  private Vector3 lifted(Vector3 point, double above) {
    return point.plus(form.normal(point).times(above));
  }

  private static List<Object> coordinates(List<Vector3> points) {
    List<Object> numbers = new ArrayList<>(3 * points.size());
    for (Vector3 point : points) {
      numbers.add(Group.rounded(point.x(), 1));
      numbers.add(Group.rounded(point.y(), 1));
      numbers.add(Group.rounded(point.z(), 1));
    }
    return numbers;
  }
}
