package foilwright.app;

import foilwright.document.Documents;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.head.Head;
import foilwright.head.HeadForm;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

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

  private final HeadForm form;

  private HeadModel(HeadForm form) {
    this.form = form;
  }

  /**
   * JSON: the form, the hair-bearing scalp, backgrounds and foils, each with its points (x, y, z in
   * turn) and the places of its triangles' corners among them, and lines.
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
              .put("centre", coordinates(List.of(foil.centre().plus(foil.outward().times(4)))));
      model.put(group, foil.region(), ABOVE_MM);
      foils.add(group.members());
    }
    List<Object> backgrounds = new ArrayList<>();
    for (PlacedSection section : plan.placement().sections()) {
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
            .put("lines", lines)
            .members());
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
