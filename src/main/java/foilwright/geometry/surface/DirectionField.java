package foilwright.geometry.surface;

import foilwright.geometry.Vector3;
import java.util.function.IntFunction;

/**
 * A tangent direction with its strength in every triangle of a mesh; constant in each triangle. The
 * strength is kept, since a scalar is fitted to it: a unit field would weigh places where nothing
 * pulls as much as others.
 */
public final class DirectionField {
  private final TriangleMesh mesh;
  private final Vector3[] directions;

  private DirectionField(TriangleMesh mesh, Vector3[] directions) {
    this.mesh = mesh;
    this.directions = directions;
  }

  /** A field computed for each triangle; what leans out of the triangle's plane is taken off. */
  public static DirectionField compute(TriangleMesh mesh, IntFunction<Vector3> direction) {
    Vector3[] directions = new Vector3[mesh.triangleCount()];
    for (int t = 0; t < directions.length; t++) {
      Vector3 n = mesh.normal(t);
      Vector3 d = direction.apply(t);
      directions[t] = d.minus(n.times(d.dot(n)));
    }
    return new DirectionField(mesh, directions);
  }

  public TriangleMesh mesh() {
    return mesh;
  }

  public Vector3 at(int triangle) {
    return directions[triangle];
  }

  /** The field turned a quarter to the left in every triangle, seen from outside. */
  public DirectionField turned() {
    return compute(mesh, t -> mesh.normal(t).cross(directions[t]));
  }

  /** The field of steepest ascent of a scalar: its gradient in every triangle. */
  public static DirectionField gradient(TriangleMesh mesh, LinearValues scalar) {
    return compute(mesh, t -> gradientIn(mesh, scalar, t));
  }

  /** The gradient of a scalar in one triangle, unit of the scalar per millimetre. */
  public static Vector3 gradientIn(TriangleMesh mesh, LinearValues scalar, int t) {
    Vector3 a = mesh.vertex(mesh.corner(t, 0));
    Vector3 b = mesh.vertex(mesh.corner(t, 1));
    Vector3 c = mesh.vertex(mesh.corner(t, 2));
    Vector3 n = mesh.normal(t);
    double twice = 2 * mesh.area(t);
    return n.cross(c.minus(b))
        .times(scalar.at(t, 0))
        .plus(n.cross(a.minus(c)).times(scalar.at(t, 1)))
        .plus(n.cross(b.minus(a)).times(scalar.at(t, 2)))
        .times(1 / twice);
  }
}
