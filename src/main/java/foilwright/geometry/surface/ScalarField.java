package foilwright.geometry.surface;

import foilwright.geometry.Plane;
import foilwright.geometry.Vector3;
import java.util.function.ToDoubleFunction;

/**
 * A continuous scalar field: one value for each vertex of a mesh, linear in each triangle. The unit
 * of the values is whatever the field measures (millimetres for distances and heights, radians for
 * elevations).
 */
public final class ScalarField implements LinearValues {
  private final TriangleMesh mesh;
  private final double[] values;

  private ScalarField(TriangleMesh mesh, double[] values) {
    this.mesh = mesh;
    this.values = values;
  }

  /**
   * A field of given vertex values.
   *
   * @throws IllegalArgumentException when the number of values is not the number of vertices
   */
  public static ScalarField of(TriangleMesh mesh, double[] vertexValues) {
    if (vertexValues.length != mesh.vertexCount()) {
      throw new IllegalArgumentException(
          vertexValues.length + " values for " + mesh.vertexCount() + " vertices");
    }
    return new ScalarField(mesh, vertexValues.clone());
  }

  /** A field computed from the position of each vertex. */
  public static ScalarField compute(TriangleMesh mesh, ToDoubleFunction<Vector3> function) {
    double[] values = new double[mesh.vertexCount()];
    for (int v = 0; v < values.length; v++) {
      values[v] = function.applyAsDouble(mesh.vertex(v));
    }
    return new ScalarField(mesh, values);
  }

  /** Signed distance from a plane in millimetres; exact, since it is linear in space. */
  public static ScalarField distanceFrom(TriangleMesh mesh, Plane plane) {
    double nx = plane.normal().x();
    double ny = plane.normal().y();
    double nz = plane.normal().z();
    double[] values = new double[mesh.vertexCount()];
    for (int v = 0; v < values.length; v++) {
      values[v] = nx * mesh.x(v) + ny * mesh.y(v) + nz * mesh.z(v) - plane.offset();
    }
    return new ScalarField(mesh, values);
  }

  public TriangleMesh mesh() {
    return mesh;
  }

  public double at(int vertex) {
    return values[vertex];
  }

  @Override
  public double at(int triangle, int corner) {
    return values[mesh.corner(triangle, corner)];
  }

  /** A copy of the vertex values. */
  public double[] toArray() {
    return values.clone();
  }

  /** The vertex values themselves, for this package's loops, which never write them. */
  double[] values() {
    return values;
  }
}
