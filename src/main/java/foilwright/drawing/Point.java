package foilwright.drawing;

/** A point or step of the sheet, millimetres, +x right and +y down. */
public record Point(double x, double y) {
  public Point plus(double dx, double dy) {
    return new Point(x + dx, y + dy);
  }

  public double distance(Point other) {
    return Math.hypot(x - other.x, y - other.y);
  }

  /** The point at fraction {@code t} of the way to {@code other}. */
  public Point lerp(Point other, double t) {
    return new Point(x + (other.x - x) * t, y + (other.y - y) * t);
  }
}
