package foilwright.head;

import foilwright.anatomy.Zone;
import foilwright.geometry.Plane;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.LinearValues;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.SurfacePoint;
import foilwright.geometry.surface.TriangleMesh;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Divides the scalp into its zones by a fixed order of cuts, each along a level of a field, so that
 * every fragment of every triangle falls into exactly one.
 *
 * @param fringeBack positive in front of the straight partings from the fringe point to the front
 *     corners
 * @param fringeSide positive between the front corners
 * @param ridge elevation of the normal less that of the parietal ridge, radians
 * @param earLine positive in front of the ear line
 * @param top positive to the client's right of the part, or of the centre line without one
 * @param occipital elevation of the normal less that of the occipital line, radians
 */
record ZoneDivision(
    TriangleMesh mesh,
    ScalarField fringeBack,
    ScalarField fringeSide,
    ScalarField ridge,
    ScalarField earLine,
    ScalarField top,
    ScalarField occipital) {

  /** Positive where a plane that stands on the client's right, mirrored to the left, says so. */
  static ScalarField mirroredPlane(TriangleMesh mesh, Vector3 centre, Vector3 normal) {
    Plane plane = Plane.through(centre, normal);
    return ScalarField.compute(
        mesh, p -> plane.distance(new Vector3(Math.abs(p.x()), p.y(), p.z())));
  }

  private boolean right(int triangle) {
    return mesh.x(mesh.corner(triangle, 0))
            + mesh.x(mesh.corner(triangle, 1))
            + mesh.x(mesh.corner(triangle, 2))
        > 0;
  }

  Map<Zone, Region> regions() {
    Map<Zone, List<Region>> parts = new EnumMap<>(Zone.class);
    for (Zone zone : Zone.values()) {
      parts.put(zone, new ArrayList<>());
    }
    for (boolean right : new boolean[] {true, false}) {
      Region half = Region.ofTriangles(mesh, t -> right(t) == right);
      Region between = above(half, fringeSide);
      parts.get(Zone.FRINGE).add(above(between, fringeBack));
      Region rest = Region.join(mesh, List.of(below(half, fringeSide), below(between, fringeBack)));
      Region high = above(rest, ridge);
      Region top = above(high, earLine);
      parts.get(Zone.TOP_RIGHT).add(above(top, this.top));
      parts.get(Zone.TOP_LEFT).add(below(top, this.top));
      parts.get(Zone.CROWN).add(below(high, earLine));
      Region low = below(rest, ridge);
      parts.get(right ? Zone.FRONT_SIDE_RIGHT : Zone.FRONT_SIDE_LEFT).add(above(low, earLine));
      Region back = below(low, earLine);
      parts.get(right ? Zone.BACK_UPPER_RIGHT : Zone.BACK_UPPER_LEFT).add(above(back, occipital));
      parts.get(right ? Zone.NAPE_RIGHT : Zone.NAPE_LEFT).add(below(back, occipital));
    }
    Map<Zone, Region> regions = new EnumMap<>(Zone.class);
    parts.forEach((zone, list) -> regions.put(zone, Region.join(mesh, list)));
    return regions;
  }

  private static Region above(Region region, LinearValues field) {
    return region.clip(field, 0, Double.POSITIVE_INFINITY);
  }

  private static Region below(Region region, LinearValues field) {
    return region.clip(field, Double.NEGATIVE_INFINITY, 0);
  }

  /** The zone of a point, by the same cuts. */
  Zone at(SurfacePoint p) {
    boolean right = right(p.triangle());
    if (p.valueOf(fringeSide) >= 0 && p.valueOf(fringeBack) >= 0) {
      return Zone.FRINGE;
    }
    boolean front = p.valueOf(earLine) >= 0;
    if (p.valueOf(ridge) >= 0) {
      if (!front) {
        return Zone.CROWN;
      }
      return p.valueOf(top) >= 0 ? Zone.TOP_RIGHT : Zone.TOP_LEFT;
    }
    if (front) {
      return right ? Zone.FRONT_SIDE_RIGHT : Zone.FRONT_SIDE_LEFT;
    }
    if (p.valueOf(occipital) >= 0) {
      return right ? Zone.BACK_UPPER_RIGHT : Zone.BACK_UPPER_LEFT;
    }
    return right ? Zone.NAPE_RIGHT : Zone.NAPE_LEFT;
  }
}
