package foilwright.drawing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;

/**
 * A flat area of the sheet bounded by closed rings, inside by the even-odd rule; millimetres. A
 * ring does not repeat its first point.
 */
public final class Polygon {
  private final List<List<Point>> rings;

  /** Made when it is first asked what lies inside; the same for every thread that makes it. */
  private final AtomicReference<Bands> bands = new AtomicReference<>();

  private Polygon(List<List<Point>> rings) {
    this.rings = rings;
  }

  /** Rings of fewer than three points are left out. */
  public static Polygon of(List<List<Point>> rings) {
    return new Polygon(rings.stream().filter(r -> r.size() >= 3).map(List::copyOf).toList());
  }

  /** A rectangle. */
  public static Polygon of(Box box) {
    return of(
        List.of(
            List.of(
                new Point(box.x(), box.y()),
                new Point(box.right(), box.y()),
                new Point(box.right(), box.bottom()),
                new Point(box.x(), box.bottom()))));
  }

  public List<List<Point>> rings() {
    return rings;
  }

  public boolean isEmpty() {
    return rings.isEmpty();
  }

  /** Area in square millimetres of rings that do not cross: holes count against what holds them. */
  public double area() {
    return Math.abs(rings.stream().mapToDouble(Polygon::signedArea).sum());
  }

  private static double signedArea(List<Point> ring) {
    double twice = 0;
    Point before = ring.get(ring.size() - 1);
    for (Point p : ring) {
      twice += before.x() * p.y() - p.x() * before.y();
      before = p;
    }
    return twice / 2;
  }

  public boolean contains(Point p) {
    Bands known = bands.get();
    if (known == null) {
      known = Bands.of(rings);
      bands.set(known);
    }
    return known.contains(p.x(), p.y());
  }

  /**
   * The edges by level bands of equal height, so that a point is held only against the edges beside
   * it.
   */
  private static final class Bands {
    private static final int EDGES_IN_BAND = 4;
    private static final int MOST_BANDS = 256;

    private final double top;
    private final double perMm;

    /** Of every band: x and y of the first end of each edge, x and y of its second. */
    private final double[][] edges;

    private Bands(double top, double perMm, double[][] edges) {
      this.top = top;
      this.perMm = perMm;
      this.edges = edges;
    }

    static Bands of(List<List<Point>> rings) {
      double top = Double.POSITIVE_INFINITY;
      double bottom = Double.NEGATIVE_INFINITY;
      int count = 0;
      for (List<Point> ring : rings) {
        count += ring.size();
        for (Point p : ring) {
          top = Math.min(top, p.y());
          bottom = Math.max(bottom, p.y());
        }
      }
      int bands = Math.max(1, Math.min(MOST_BANDS, count / EDGES_IN_BAND));
      double perMm = bottom > top ? bands / (bottom - top) : 0;
      Bands empty = new Bands(top, perMm, new double[bands][]);
      int[] filled = new int[bands];
      for (boolean counting : new boolean[] {true, false}) {
        for (List<Point> ring : rings) {
          Point a = ring.get(ring.size() - 1);
          for (Point b : ring) {
            int last = empty.band(Math.max(a.y(), b.y()));
            for (int i = empty.band(Math.min(a.y(), b.y())); i <= last; i++) {
              if (!counting) {
                double[] its = empty.edges[i];
                its[filled[i]] = a.x();
                its[filled[i] + 1] = a.y();
                its[filled[i] + 2] = b.x();
                its[filled[i] + 3] = b.y();
              }
              filled[i] += 4;
            }
            a = b;
          }
        }
        for (int i = 0; counting && i < bands; i++) {
          empty.edges[i] = new double[filled[i]];
          filled[i] = 0;
        }
      }
      return empty;
    }

    private int band(double y) {
      return (int) Math.max(0, Math.min(edges.length - 1, (y - top) * perMm));
    }

    boolean contains(double x, double y) {
      boolean inside = false;
      double[] its = edges[band(y)];
      for (int i = 0; i < its.length; i += 4) {
        if (its[i + 1] > y != its[i + 3] > y
            && x < its[i] + (y - its[i + 1]) / (its[i + 3] - its[i + 1]) * (its[i + 2] - its[i])) {
          inside = !inside;
        }
      }
      return inside;
    }
  }

  /**
   * The part on one side of a straight line.
   *
   * @param through a point of the line
   * @param toward square to the line, to the side that is kept; any length but 0
   */
  public Polygon half(Point through, Point toward) {
    List<List<Point>> kept = new ArrayList<>();
    for (List<Point> ring : rings) {
      List<Point> cut = new ArrayList<>();
      Point a = ring.get(ring.size() - 1);
      double va = beyond(a, through, toward);
      for (Point b : ring) {
        double vb = beyond(b, through, toward);
        if (va >= 0 != vb >= 0) {
          cut.add(a.lerp(b, va / (va - vb)));
        }
        if (vb >= 0) {
          cut.add(b);
        }
        a = b;
        va = vb;
      }
      kept.add(cut);
    }
    return of(kept);
  }

  private static double beyond(Point p, Point through, Point toward) {
    return (p.x() - through.x()) * toward.x() + (p.y() - through.y()) * toward.y();
  }

  /**
   * Parallel lines across the area, cut at its border.
   *
   * @param angleRad direction of the lines on the sheet, clockwise from +x
   * @param spacing between neighbouring lines, millimetres
   */
  public Curve hatched(double angleRad, double spacing) {
    double cos = Math.cos(angleRad);
    double sin = Math.sin(angleRad);
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (List<Point> ring : rings) {
      for (Point p : ring) {
        double v = -sin * p.x() + cos * p.y();
        least = Math.min(least, v);
        most = Math.max(most, v);
      }
    }
    Curve.Builder lines = Curve.builder();
    for (double v = Math.ceil(least / spacing) * spacing; v < most; v += spacing) {
      double[] cuts = cuts(v, cos, sin);
      for (int i = 0; i + 1 < cuts.length; i += 2) {
        lines.moveTo(cos * cuts[i] - sin * v, sin * cuts[i] + cos * v);
        lines.lineTo(cos * cuts[i + 1] - sin * v, sin * cuts[i + 1] + cos * v);
      }
    }
    return lines.build();
  }

  private double[] cuts(double v, double cos, double sin) {
    double[] found = new double[8];
    int count = 0;
    for (List<Point> ring : rings) {
      Point a = ring.get(ring.size() - 1);
      double va = -sin * a.x() + cos * a.y() - v;
      for (Point b : ring) {
        double vb = -sin * b.x() + cos * b.y() - v;
        if (va > 0 != vb > 0) {
          if (count == found.length) {
            found = Arrays.copyOf(found, 2 * count);
          }
          Point p = a.lerp(b, va / (va - vb));
          found[count++] = cos * p.x() + sin * p.y();
        }
        a = b;
        va = vb;
      }
    }
    double[] cuts = Arrays.copyOf(found, count);
    Arrays.sort(cuts);
    return cuts;
  }

  /** The border as straight lines. */
  public Curve curve() {
    Curve.Builder curve = Curve.builder();
    rings.forEach(ring -> curve.strand(ring, true));
    return curve.build();
  }
}
