package foilwright.fall;

/**
 * Hairs as chains of points, head frame in millimetres.
 *
 * <p>The points of a hair are one step apart along it; the last link may be shorter. The first
 * point is the root.
 */
public final class Strands {
  private final Roots roots;
  private final Body body;
  private final FallSettings settings;
  private final int[] starts;
  private final float[] points;

  Strands(Roots roots, Body body, FallSettings settings, int[] starts, float[] points) {
    this.roots = roots;
    this.body = body;
    this.settings = settings;
    this.starts = starts;
    this.points = points;
  }

  public Roots roots() {
    return roots;
  }

  public Body body() {
    return body;
  }

  public FallSettings settings() {
    return settings;
  }

  /** How many hairs there are. */
  public int count() {
    return starts.length - 1;
  }

  /** How many points all hairs have together. */
  public int pointCount() {
    return starts[starts.length - 1];
  }

  /** Number of the first point of a hair; that of the next hair ends it. */
  public int start(int hair) {
    return starts[hair];
  }

  /** How many points a hair has, at least two. */
  public int size(int hair) {
    return starts[hair + 1] - starts[hair];
  }

  /**
   * The coordinates themselves, x, y, z one after another, for loops over all of them, which never
   * write them.
   */
  public float[] points() {
    return points;
  }

  public float x(int point) {
    return points[3 * point];
  }

  public float y(int point) {
    return points[3 * point + 1];
  }

  public float z(int point) {
    return points[3 * point + 2];
  }

  /** Distance along the hair between two of its points, millimetres. */
  public double stepMm() {
    return settings.step().toMillimetres();
  }
}
