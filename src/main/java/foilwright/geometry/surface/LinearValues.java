package foilwright.geometry.surface;

/**
 * A function on a mesh that is linear in each triangle, given by its values at the triangle's
 * corners.
 */
@FunctionalInterface
public interface LinearValues {
  /**
   * Value at corner 0, 1 or 2 of a triangle; neighbouring triangles may disagree where the field is
   * cut.
   */
  double at(int triangle, int corner);
}
