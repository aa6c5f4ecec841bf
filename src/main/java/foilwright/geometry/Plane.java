package foilwright.geometry;

/**
 * The oriented plane of points p with {@code normal . p = offset}; the normal is a unit vector, the
 * offset is in millimetres.
 */
public record Plane(Vector3 normal, double offset) {
  public Plane {
    if (Math.abs(normal.norm() - 1) > 1e-9) {
      throw new IllegalArgumentException(
          "a plane's normal must have length 1, not " + normal.norm());
    }
  }

  /** The plane through a point across a direction of any length. */
  public static Plane through(Vector3 point, Vector3 direction) {
    Vector3 normal = direction.unit();
    return new Plane(normal, normal.dot(point));
  }

  /** Signed distance in millimetres, positive on the side that the normal points to. */
  public double distance(Vector3 point) {
    return normal.dot(point) - offset;
  }
}
