package foilwright.drawing;

import foilwright.geometry.Vector3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What can be seen of a rounded surface from one side: the part whose normal leans towards the
 * viewer, bounded by the contour along which the surface turns away. Right for a surface that does
 * not hide its own near side, as a scalp does not from the five views of a head.
 *
 * <p>Results are in millimetres of the head as {@link View#project} gives them. A cut border meets
 * the contour within the distance to which it was simplified.
 */
public final class Horizon {
  private final View view;
  private final Point centre;
  private final List<Point> contour;

  /** A stretch of border on the near side, between two crossings of the contour. */
  private static final class Run {
    private final List<Point> points = new ArrayList<>();
    private double enters;
    private double leaves;
    private boolean used;
  }

  private Horizon(View view, Point centre, List<Point> contour) {
    this.view = view;
    this.centre = centre;
    this.contour = contour;
  }

  /**
   * The horizon of a surface.
   *
   * @param centre a point of the picture about which the contour is star-shaped
   * @param contour the closed contour, in any direction, without repeating its first point
   */
  public static Horizon of(View view, Point centre, List<Point> contour) {
    List<Point> ordered = new ArrayList<>(contour);
    ordered.sort(Comparator.comparingDouble(p -> angle(centre, p)));
    return new Horizon(view, centre, List.copyOf(ordered));
  }

  public View view() {
    return view;
  }

  public List<Point> contour() {
    return contour;
  }

  /** Angle about the centre, radians from 0 to 2 pi, as the eye turns against the clock. */
  private static double angle(Point centre, Point p) {
    double a = Math.atan2(centre.y() - p.y(), p.x() - centre.x());
    return a < 0 ? a + 2 * Math.PI : a;
  }

  /** Cosine of the angle between the surface's normal and the direction to the viewer. */
  public double facing(Vector3 normal) {
    return normal.dot(view.toViewer());
  }

  /**
   * The part that can be seen of a region.
   *
   * @param coversAll whether the region, if none of its border can be seen, fills the picture to
   *     the contour
   */
  public Polygon visible(SurfaceLoops region, boolean coversAll) {
    List<List<Point>> rings = new ArrayList<>();
    List<Run> runs = new ArrayList<>();
    boolean seen = false;
    for (List<SurfaceLoops.At> loop : region.loops()) {
      int near = (int) loop.stream().filter(at -> facing(at.normal()) >= 0).count();
      seen |= near > 0;
      if (near == loop.size()) {
        rings.add(loop.stream().map(at -> view.project(at.point())).toList());
      } else if (near > 0) {
        addRuns(loop, runs);
      }
    }
    rings.addAll(joined(runs));
    if (!seen && coversAll) {
      rings.add(contour);
    }
    return Polygon.of(rings);
  }

  private void addRuns(List<SurfaceLoops.At> loop, List<Run> runs) {
    int n = loop.size();
    int start = 0;
    while (facing(loop.get(start).normal()) >= 0) {
      start++;
    }
    Run open = new Run();
    for (int k = 1; k <= n; k++) {
      SurfaceLoops.At before = loop.get((start + k - 1) % n);
      SurfaceLoops.At here = loop.get((start + k) % n);
      double f = facing(before.normal());
      double g = facing(here.normal());
      if (f < 0 && g >= 0) {
        open = new Run();
        Point crossing = crossing(before, here, f, g);
        open.points.add(crossing);
        open.enters = angle(centre, crossing);
        runs.add(open);
      }
      if (g >= 0) {
        open.points.add(view.project(here.point()));
      } else if (f >= 0) {
        Point crossing = crossing(before, here, f, g);
        open.points.add(crossing);
        open.leaves = angle(centre, crossing);
      }
    }
  }

  private Point crossing(SurfaceLoops.At a, SurfaceLoops.At b, double f, double g) {
    return view.project(a.point()).lerp(view.project(b.point()), f / (f - g));
  }

  /**
   * Joins runs along the contour: where a border leaves the near side, the part's border goes on
   * along the contour, against the clock, to where the next border comes in.
   */
  private List<List<Point>> joined(List<Run> runs) {
    List<List<Point>> rings = new ArrayList<>();
    for (Run first : runs) {
      if (first.used) {
        continue;
      }
      List<Point> ring = new ArrayList<>();
      Run run = first;
      do {
        run.used = true;
        ring.addAll(run.points);
        Run next = nextEntry(runs, run.leaves);
        addContour(ring, run.leaves, next.enters);
        run = next;
      } while (!run.used);
      rings.add(ring);
    }
    return rings;
  }

  private static Run nextEntry(List<Run> runs, double from) {
    return runs.stream()
        .min(Comparator.comparingDouble(run -> turn(from, run.enters)))
        .orElseThrow();
  }

  private static double turn(double from, double to) {
    double t = to - from;
    return t < 0 ? t + 2 * Math.PI : t;
  }

  private void addContour(List<Point> ring, double from, double to) {
    double whole = turn(from, to);
    int n = contour.size();
    int start = 0;
    while (start < n && angle(centre, contour.get(start)) <= from) {
      start++;
    }
    for (int k = 0; k < n; k++) {
      Point p = contour.get((start + k) % n);
      if (turn(from, angle(centre, p)) >= whole) {
        break;
      }
      ring.add(p);
    }
  }

  /** The stretches that can be seen of a line on the surface. */
  public List<List<Point>> visible(List<SurfaceLoops.At> line) {
    List<List<Point>> chains = new ArrayList<>();
    List<Point> open = new ArrayList<>();
    for (int i = 0; i < line.size(); i++) {
      SurfaceLoops.At here = line.get(i);
      double g = facing(here.normal());
      if (i > 0) {
        SurfaceLoops.At before = line.get(i - 1);
        double f = facing(before.normal());
        if (f < 0 != g < 0) {
          open.add(crossing(before, here, f, g));
        }
      }
      if (g >= 0) {
        open.add(view.project(here.point()));
      } else if (!open.isEmpty()) {
        chains.add(open);
        open = new ArrayList<>();
      }
    }
    if (!open.isEmpty()) {
      chains.add(open);
    }
    return chains.stream().filter(c -> c.size() > 1).map(List::copyOf).toList();
  }
}
