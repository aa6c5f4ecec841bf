package foilwright.drawing;

/**
 * An upright rectangle of the sheet, millimetres; ({@code x}, {@code y}) is its top left corner.
 */
public record Box(double x, double y, double width, double height) {
  public Box {
    if (!(width >= 0 && height >= 0)) {
      throw new IllegalArgumentException("a box of " + width + " by " + height + " mm");
    }
  }

  public static Box centredOn(Point centre, double width, double height) {
    return new Box(centre.x() - width / 2, centre.y() - height / 2, width, height);
  }

  public double right() {
    return x + width;
  }

  public double bottom() {
    return y + height;
  }

  public Point centre() {
    return new Point(x + width / 2, y + height / 2);
  }

  /** The box grown on every side; a negative margin shrinks it, at most to its centre. */
  public Box grown(double margin) {
    double w = Math.max(0, width + 2 * margin);
    double h = Math.max(0, height + 2 * margin);
    return centredOn(centre(), w, h);
  }

  /** Whether the interiors have a point in common; touching edges do not overlap. */
  public boolean overlaps(Box o) {
    return x < o.right() && o.x < right() && y < o.bottom() && o.y < bottom();
  }

  public boolean contains(Box o) {
    return o.x >= x && o.y >= y && o.right() <= right() && o.bottom() <= bottom();
  }

  public boolean contains(Point p) {
    return p.x() >= x && p.x() <= right() && p.y() >= y && p.y() <= bottom();
  }

  /** The least box that holds both. */
  public Box union(Box o) {
    double left = Math.min(x, o.x);
    double top = Math.min(y, o.y);
    return new Box(
        left, top, Math.max(right(), o.right()) - left, Math.max(bottom(), o.bottom()) - top);
  }

  /** Whether a straight segment meets the interior of this box. */
  public boolean meets(Point from, Point to) {
    double low = 0;
    double high = 1;
    double[] start = {from.x(), from.y()};
    double[] step = {to.x() - from.x(), to.y() - from.y()};
    double[] least = {x, y};
    double[] most = {right(), bottom()};
    for (int axis = 0; axis < 2; axis++) {
      if (step[axis] == 0) {
        if (start[axis] <= least[axis] || start[axis] >= most[axis]) {
          return false;
        }
        continue;
      }
      double a = (least[axis] - start[axis]) / step[axis];
      double b = (most[axis] - start[axis]) / step[axis];
      low = Math.max(low, Math.min(a, b));
      high = Math.min(high, Math.max(a, b));
    }
    return low < high;
  }
}
