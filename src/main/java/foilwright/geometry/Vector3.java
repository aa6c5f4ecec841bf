package foilwright.geometry;

/**
 * A point or direction of the head frame, millimetres for points (+x the client's right, +y front,
 * +z up).
 */
public record Vector3(double x, double y, double z) {
  public static final Vector3 ZERO = new Vector3(0, 0, 0);
  public static final Vector3 RIGHT = new Vector3(1, 0, 0);
  public static final Vector3 FRONT = new Vector3(0, 1, 0);
  public static final Vector3 UP = new Vector3(0, 0, 1);

  public Vector3 plus(Vector3 o) {
    return new Vector3(x + o.x, y + o.y, z + o.z);
  }

  public Vector3 minus(Vector3 o) {
    return new Vector3(x - o.x, y - o.y, z - o.z);
  }

  public Vector3 times(double f) {
    return new Vector3(x * f, y * f, z * f);
  }

  /** Component by component product: an axis scaling about the origin. */
  public Vector3 scaled(Vector3 factors) {
    return new Vector3(x * factors.x, y * factors.y, z * factors.z);
  }

  public Vector3 negated() {
    return new Vector3(-x, -y, -z);
  }

  public double dot(Vector3 o) {
    return x * o.x + y * o.y + z * o.z;
  }

  public Vector3 cross(Vector3 o) {
    return new Vector3(y * o.z - z * o.y, z * o.x - x * o.z, x * o.y - y * o.x);
  }

  public double norm() {
    return Math.sqrt(dot(this));
  }

  public double distance(Vector3 o) {
    return minus(o).norm();
  }

  /** The point at fraction {@code t} of the way to {@code o}; 0 gives this, 1 gives {@code o}. */
  public Vector3 lerp(Vector3 o, double t) {
    return new Vector3(x + (o.x - x) * t, y + (o.y - y) * t, z + (o.z - z) * t);
  }

  /** The reflection in the plane x = 0: left becomes right. */
  public Vector3 mirrored() {
    return new Vector3(-x, y, z);
  }

  /**
   * The unit vector of this direction.
   *
   * @throws IllegalArgumentException when the vector is shorter than 1e-300
   */
  public Vector3 unit() {
    double n = norm();
    if (!(n > 1e-300)) {
      throw new IllegalArgumentException("a vector of length " + n + " has no direction");
    }
    return times(1 / n);
  }
}
