package foilwright.geometry.surface;

import foilwright.geometry.Vector3;

/**
 * A point of a triangle mesh.
 *
 * @param triangle the triangle it lies in
 * @param w1 weight of the triangle's second corner, 0 to 1
 * @param w2 weight of the third corner; the first has the rest
 * @param point the same point in the head frame, millimetres
 */
public record SurfacePoint(int triangle, double w1, double w2, Vector3 point) {
  /** Value of a field here. */
  public double valueOf(LinearValues field) {
    double a = field.at(triangle, 0);
    return a + w1 * (field.at(triangle, 1) - a) + w2 * (field.at(triangle, 2) - a);
  }
}
