package foilwright.drawing;

import java.util.Arrays;
import java.util.List;

/**
 * An immutable chain of lines and cubic curves in sheet millimetres, with any number of closed or
 * open strands; the inside is decided by the even-odd rule.
 */
public final class Curve {
  private static final byte MOVE = 0;
  private static final byte LINE = 1;
  private static final byte CURVE = 2;
  private static final byte CLOSE = 3;

  /** Takes the parts of a curve one after another. */
  public interface Sink {
    void moveTo(double x, double y);

    void lineTo(double x, double y);

    void curveTo(double x1, double y1, double x2, double y2, double x, double y);

    void close();
  }

  private final byte[] steps;
  private final double[] coordinates;

  private Curve(byte[] steps, double[] coordinates) {
    this.steps = steps;
    this.coordinates = coordinates;
  }

  public static Builder builder() {
    return new Builder();
  }

  public static Curve line(Point from, Point to) {
    return builder().move(from).line(to).build();
  }

  /** Straight lines through points, open. */
  public static Curve chain(List<Point> points) {
    return builder().strand(points, false).build();
  }

  /** Straight lines through points and back to the first. */
  public static Curve polygon(List<Point> points) {
    return builder().strand(points, true).build();
  }

  /**
   * A smooth curve through points: each tangent is parallel to the chord between the neighbours,
   * its handles a sixth of that chord, shortened where a neighbour is near.
   */
  public static Curve smooth(List<Point> points, boolean closed) {
    return builder().smooth(points, closed).build();
  }

  public static Curve rectangle(Box box) {
    return builder()
        .move(new Point(box.x(), box.y()))
        .line(new Point(box.right(), box.y()))
        .line(new Point(box.right(), box.bottom()))
        .line(new Point(box.x(), box.bottom()))
        .closed()
        .build();
  }

  /** A rectangle with rounded corners; the radius is at most half of the shorter side. */
  public static Curve roundedRectangle(Box box, double radius) {
    double r = Math.min(radius, Math.min(box.width(), box.height()) / 2);
    double k = r * (1 - CIRCLE_HANDLE);
    double l = box.x();
    double t = box.y();
    double rt = box.right();
    double b = box.bottom();
    Builder curve = builder();
    curve.moveTo(l + r, t);
    curve.lineTo(rt - r, t);
    curve.curveTo(rt - k, t, rt, t + k, rt, t + r);
    curve.lineTo(rt, b - r);
    curve.curveTo(rt, b - k, rt - k, b, rt - r, b);
    curve.lineTo(l + r, b);
    curve.curveTo(l + k, b, l, b - k, l, b - r);
    curve.lineTo(l, t + r);
    curve.curveTo(l, t + k, l + k, t, l + r, t);
    curve.close();
    return curve.build();
  }

  /** Handle length of a quarter circle of radius 1; the curve is true within 0.03 percent. */
  private static final double CIRCLE_HANDLE = 0.5522847498;

  public static Curve circle(Point centre, double radius) {
    return ellipse(centre, radius, radius);
  }

  public static Curve ellipse(Point centre, double radiusX, double radiusY) {
    double x = centre.x();
    double y = centre.y();
    double kx = radiusX * CIRCLE_HANDLE;
    double ky = radiusY * CIRCLE_HANDLE;
    Builder curve = builder();
    curve.moveTo(x + radiusX, y);
    curve.curveTo(x + radiusX, y + ky, x + kx, y + radiusY, x, y + radiusY);
    curve.curveTo(x - kx, y + radiusY, x - radiusX, y + ky, x - radiusX, y);
    curve.curveTo(x - radiusX, y - ky, x - kx, y - radiusY, x, y - radiusY);
    curve.curveTo(x + kx, y - radiusY, x + radiusX, y - ky, x + radiusX, y);
    curve.close();
    return curve.build();
  }

  public boolean isEmpty() {
    return steps.length == 0;
  }

  /** Hands every part to a sink, in order. */
  public void visit(Sink sink) {
    int i = 0;
    double[] c = coordinates;
    for (byte step : steps) {
      switch (step) {
        case MOVE -> {
          sink.moveTo(c[i], c[i + 1]);
          i += 2;
        }
        case LINE -> {
          sink.lineTo(c[i], c[i + 1]);
          i += 2;
        }
        case CURVE -> {
          sink.curveTo(c[i], c[i + 1], c[i + 2], c[i + 3], c[i + 4], c[i + 5]);
          i += 6;
        }
        default -> sink.close();
      }
    }
  }

  /**
   * The least box that holds every point and handle; it can exceed the curve itself.
   *
   * @throws IllegalArgumentException when the curve is empty
   */
  public Box bounds() {
    if (isEmpty()) {
      throw new IllegalArgumentException("an empty curve has no bounds");
    }
    double left = Double.POSITIVE_INFINITY;
    double top = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    double bottom = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < coordinates.length; i += 2) {
      left = Math.min(left, coordinates[i]);
      right = Math.max(right, coordinates[i]);
      top = Math.min(top, coordinates[i + 1]);
      bottom = Math.max(bottom, coordinates[i + 1]);
    }
    return new Box(left, top, right - left, bottom - top);
  }

  /** The curve scaled about the origin and then moved. */
  public Curve placed(double scaleX, double scaleY, double dx, double dy) {
    double[] moved = new double[coordinates.length];
    for (int i = 0; i < moved.length; i += 2) {
      moved[i] = coordinates[i] * scaleX + dx;
      moved[i + 1] = coordinates[i + 1] * scaleY + dy;
    }
    return new Curve(steps, moved);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Curve that
        && Arrays.equals(steps, that.steps)
        && Arrays.equals(coordinates, that.coordinates);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(steps) + Arrays.hashCode(coordinates);
  }

  @Override
  public String toString() {
    return "Curve of " + steps.length + " steps" + (isEmpty() ? "" : " in " + bounds());
  }

  /** Grows a curve; confined to one calculation. */
  public static final class Builder implements Sink {
    private final Store store = new Store();

    private Builder() {}

    @Override
    public void moveTo(double x, double y) {
      store.add(MOVE, x, y);
    }

    @Override
    public void lineTo(double x, double y) {
      store.add(LINE, x, y);
    }

    @Override
    public void curveTo(double x1, double y1, double x2, double y2, double x, double y) {
      store.add(CURVE, x1, y1, x2, y2, x, y);
    }

    @Override
    public void close() {
      store.add(CLOSE);
    }

    public Builder move(Point p) {
      moveTo(p.x(), p.y());
      return this;
    }

    public Builder line(Point p) {
      lineTo(p.x(), p.y());
      return this;
    }

    public Builder curve(Point handle1, Point handle2, Point p) {
      curveTo(handle1.x(), handle1.y(), handle2.x(), handle2.y(), p.x(), p.y());
      return this;
    }

    public Builder closed() {
      close();
      return this;
    }

    /** Every part of another curve. */
    public Builder every(Curve curve) {
      curve.visit(this);
      return this;
    }

    /** Straight lines through points, as a strand of their own. */
    public Builder strand(List<Point> points, boolean closed) {
      for (int i = 0; i < points.size(); i++) {
        Point p = points.get(i);
        store.add(i == 0 ? MOVE : LINE, p.x(), p.y());
      }
      if (closed && !points.isEmpty()) {
        close();
      }
      return this;
    }

    /** A smooth curve through points, as a strand of its own. */
    public Builder smooth(List<Point> points, boolean closed) {
      int n = points.size();
      if (n < 3) {
        return strand(points, closed);
      }
      move(points.get(0));
      int spans = closed ? n : n - 1;
      for (int i = 0; i < spans; i++) {
        Point before = closed ? points.get((i + n - 1) % n) : points.get(Math.max(0, i - 1));
        Point from = points.get(i);
        Point to = points.get((i + 1) % n);
        Point after = closed ? points.get((i + 2) % n) : points.get(Math.min(n - 1, i + 2));
        double span = from.distance(to);
        Point h1 = handle(from, before, to, span);
        Point h2 = handle(to, after, from, span);
        curve(h1, h2, to);
      }
      if (closed) {
        close();
      }
      return this;
    }

    private static Point handle(Point at, Point behind, Point ahead, double span) {
      double chord = behind.distance(ahead);
      if (chord == 0) {
        return at;
      }
      double length = span / 3 / chord;
      return at.plus((ahead.x() - behind.x()) * length, (ahead.y() - behind.y()) * length);
    }

    public Curve build() {
      return store.build();
    }
  }

  /** Growing arrays. */
  private static final class Store {
    private byte[] steps = new byte[32];
    private double[] coordinates = new double[64];
    private int stepCount;
    private int coordinateCount;

    void add(byte step, double... values) {
      if (stepCount == steps.length) {
        steps = Arrays.copyOf(steps, 2 * stepCount);
      }
      if (coordinateCount + values.length > coordinates.length) {
        coordinates = Arrays.copyOf(coordinates, 2 * coordinates.length);
      }
      steps[stepCount++] = step;
      for (double value : values) {
        if (!Double.isFinite(value)) {
          throw new IllegalArgumentException("a curve cannot pass through " + value);
        }
        coordinates[coordinateCount++] = value;
      }
    }

    Curve build() {
      return new Curve(
          Arrays.copyOf(steps, stepCount), Arrays.copyOf(coordinates, coordinateCount));
    }
  }
}
