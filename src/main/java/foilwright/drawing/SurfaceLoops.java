package foilwright.drawing;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * The border of a part of a surface, ready to be seen from any side: closed loops with the part on
 * their left, seen from outside, and the outward normal at each point. Head frame, millimetres. A
 * loop does not repeat its first point.
 */
public final class SurfaceLoops {
  /**
   * A point of a line on a surface.
   *
   * @param normal outward unit normal of the surface
   */
  public record At(Vector3 point, Vector3 normal) {}

  private final List<List<At>> loops;

  private SurfaceLoops(List<List<At>> loops) {
    this.loops = loops;
  }

  /**
   * The border of a region with as few points as keep every other within a distance of what is left
   * (Douglas-Peucker in space).
   *
   * @param normal outward unit normal of the surface at a point of it
   * @param distanceMm most distance of a left-out point from the chords that remain
   */
  public static SurfaceLoops of(Region region, UnaryOperator<Vector3> normal, double distanceMm) {
    return of(region.outline(), normal, distanceMm);
  }

  /** The same from closed lines that have the part on their left, seen from outside. */
  public static SurfaceLoops of(
      List<Polyline> borders, UnaryOperator<Vector3> normal, double distanceMm) {
    List<List<At>> loops = new ArrayList<>();
    for (Polyline border : borders) {
      List<Vector3> ring = simplifiedRing(border.points(), distanceMm);
      if (ring.size() >= 3) {
        loops.add(ring.stream().map(p -> new At(p, normal.apply(p))).toList());
      }
    }
    return new SurfaceLoops(List.copyOf(loops));
  }

  public List<List<At>> loops() {
    return loops;
  }

  private static List<Vector3> simplifiedRing(List<Vector3> closed, double distance) {
    int n = closed.size();
    int far = 0;
    for (int i = 1; i < n; i++) {
      if (closed.get(0).distance(closed.get(i)) > closed.get(0).distance(closed.get(far))) {
        far = i;
      }
    }
    List<Vector3> ring = new ArrayList<>(simplified(closed.subList(0, far + 1), distance));
    List<Vector3> back = simplified(closed.subList(far, n), distance);
    if (back.size() > 2) {
      ring.addAll(back.subList(1, back.size() - 1));
    }
    return ring;
  }

  /**
   * An open chain with as few points as keep every other within a distance of what is left; both
   * ends stay.
   */
  public static List<Vector3> simplified(List<Vector3> chain, double distanceMm) {
    int n = chain.size();
    if (n < 3) {
      return List.copyOf(chain);
    }
    boolean[] keep = new boolean[n];
    keep[0] = true;
    keep[n - 1] = true;
    int[] stack = new int[2 * n];
    int depth = 0;
    stack[depth++] = 0;
    stack[depth++] = n - 1;
    while (depth > 0) {
      int to = stack[--depth];
      int from = stack[--depth];
      int worst = farthestFrom(chain, from, to, distanceMm);
      if (worst > 0) {
        keep[worst] = true;
        stack[depth++] = from;
        stack[depth++] = worst;
        stack[depth++] = worst;
        stack[depth++] = to;
      }
    }
    List<Vector3> kept = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      if (keep[i]) {
        kept.add(chain.get(i));
      }
    }
    return kept;
  }

  /** Number of the point farthest from the chord, or 0 when all are within the distance. */
  private static int farthestFrom(List<Vector3> chain, int from, int to, double distance) {
    Vector3 a = chain.get(from);
    Vector3 b = chain.get(to);
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double dz = b.z() - a.z();
    double square = dx * dx + dy * dy + dz * dz;
    double most = distance * distance;
    int worst = 0;
    for (int i = from + 1; i < to; i++) {
      Vector3 p = chain.get(i);
      double px = p.x() - a.x();
      double py = p.y() - a.y();
      double pz = p.z() - a.z();
      double t = square > 0 ? (px * dx + py * dy + pz * dz) / square : 0;
      t = Math.min(1, Math.max(0, t));
      double ex = px - t * dx;
      double ey = py - t * dy;
      double ez = pz - t * dz;
      double off = ex * ex + ey * ey + ez * ez;
      if (off > most) {
        most = off;
        worst = i;
      }
    }
    return worst;
  }
}
