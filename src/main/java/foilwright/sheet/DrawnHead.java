package foilwright.sheet;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.Zone;
import foilwright.drawing.Horizon;
import foilwright.drawing.SurfaceLoops;
import foilwright.drawing.View;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.head.Head;
import foilwright.head.HeadForm;
import foilwright.head.UnrolledScalp;
import foilwright.placement.PlacedFoil;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.WeakHashMap;

/**
 * A head prepared for drawing: its pictures, and its lines with their normals. Made once for a head
 * and used for every plan on it; may be shared between threads.
 */
public final class DrawnHead {
  /** The few lines of the head itself are drawn more closely. */
  private static final double HEAD_SIMPLIFIED_MM = 0.05;

  /** Border points are left out where the drawing would differ by less than a tenth of a mm. */
  static final double SIMPLIFIED_MM = 0.2;

  private final Head head;
  private final HeadForm form;
  private final double worstStretch;
  private final Map<View, SideView> views;
  private final FlatMap flat;
  private final SurfaceLoops scalp;

  /** A plan that is changed in one place keeps most of its parts. */
  private final Map<Region, SurfaceLoops> loops = new WeakHashMap<>();

  private final Map<Region, Strip> strips = new WeakHashMap<>();
  private final List<SurfaceLoops.At> hairline;
  private final List<List<SurfaceLoops.At>> zoneBorders;
  private final Optional<List<SurfaceLoops.At>> partLine;

  private DrawnHead(Head head) {
    this.head = head;
    form = head.form();
    // The hairline runs by the client's right, with the scalp on its right.
    Polyline border = head.hairline().reversed();
    scalp = SurfaceLoops.of(List.of(border), form::normal, HEAD_SIMPLIFIED_MM);
    hairline = closeLine(head.hairline());
    partLine = head.partLine().map(this::closeLine);
    zoneBorders = borders(head);
    UnrolledScalp unrolled = UnrolledScalp.of(head);
    flat = new FlatMap(unrolled, scalp);
    worstStretch = unrolled.worstStretch(head.mesh());
    HeadFigure figure = new HeadFigure(form, head.landmark(Landmark.NAPE_HAIRLINE).z());
    views = new EnumMap<>(View.class);
    for (View view : View.values()) {
      Horizon horizon = Horizon.of(view, view.project(form.centre()), figure.horizon(view));
      Vector3 nearest = form.surfacePoint(form.centre().plus(view.toViewer()));
      views.put(
          view,
          new SideView(
              horizon,
              figure.strokes(view),
              nearest,
              held -> flat.area(held.part()).contains(flat.at(held.point()))));
    }
  }

  public static DrawnHead of(Head head) {
    return new DrawnHead(head);
  }

  /** The head itself. */
  public Head head() {
    return head;
  }

  /** The greatest factor by which the unrolled scalp lengthens or shortens anything. */
  double worstStretch() {
    return worstStretch;
  }

  /** The border of a part of the scalp, with normals; kept as long as the part itself. */
  SurfaceLoops loops(Region region) {
    synchronized (loops) {
      SurfaceLoops known = loops.get(region);
      if (known != null) {
        return known;
      }
    }
    SurfaceLoops made = SurfaceLoops.of(region, form::normal, SIMPLIFIED_MM);
    synchronized (loops) {
      loops.put(region, made);
    }
    return made;
  }

  /**
   * A foil's strip with normals.
   *
   * @param middle the line half way through it
   * @param spots at shares of the length of that line
   */
  record Strip(SurfaceLoops border, List<SurfaceLoops.At> middle, List<SurfaceLoops.At> spots) {
    Strip {
      middle = List.copyOf(middle);
      spots = List.copyOf(spots);
    }
  }

  /** A foil's strip; kept as long as its region, so the shares are always the same. */
  Strip strip(PlacedFoil foil, List<Double> shares) {
    synchronized (strips) {
      Strip known = strips.get(foil.region());
      if (known != null) {
        return known;
      }
    }
    Polyline middle = foil.middle();
    Strip made =
        new Strip(
            loops(foil.region()),
            line(middle),
            shares.stream().map(share -> at(middle.at(share * middle.length()))).toList());
    synchronized (strips) {
      strips.put(foil.region(), made);
    }
    return made;
  }

  /** A line on the scalp, with normals. */
  List<SurfaceLoops.At> line(Polyline line) {
    return SurfaceLoops.simplified(line.points(), SIMPLIFIED_MM).stream().map(this::at).toList();
  }

  private List<SurfaceLoops.At> closeLine(Polyline line) {
    return SurfaceLoops.simplified(line.points(), HEAD_SIMPLIFIED_MM).stream()
        .map(this::at)
        .toList();
  }

  SurfaceLoops.At at(Vector3 point) {
    return new SurfaceLoops.At(point, form.normal(point));
  }

  SideView view(View view) {
    return views.get(view);
  }

  FlatMap flat() {
    return flat;
  }

  SurfaceLoops scalp() {
    return scalp;
  }

  List<SurfaceLoops.At> hairline() {
    return hairline;
  }

  List<List<SurfaceLoops.At>> zoneBorders() {
    return zoneBorders;
  }

  Optional<List<SurfaceLoops.At>> partLine() {
    return partLine;
  }

  /** A border piece whichever way it runs, to a thousandth of a millimetre. */
  private record Piece(Vector3 low, Vector3 high) {
    static Piece of(Vector3 a, Vector3 b) {
      Vector3 p = rounded(a);
      Vector3 q = rounded(b);
      boolean inOrder =
          p.x() != q.x() ? p.x() < q.x() : p.y() != q.y() ? p.y() < q.y() : p.z() < q.z();
      return inOrder ? new Piece(p, q) : new Piece(q, p);
    }

    private static Vector3 rounded(Vector3 v) {
      return new Vector3(
          Math.rint(v.x() * 1000) / 1000 + 0.0,
          Math.rint(v.y() * 1000) / 1000 + 0.0,
          Math.rint(v.z() * 1000) / 1000 + 0.0);
    }
  }

  /** The borders between zones, each drawn once, without the hairline. */
  private List<List<SurfaceLoops.At>> borders(Head head) {
    Set<Piece> drawn = new HashSet<>();
    List<Vector3> hairPoints = head.hairline().points();
    for (int i = 1; i < hairPoints.size(); i++) {
      drawn.add(Piece.of(hairPoints.get(i - 1), hairPoints.get(i)));
    }
    List<List<SurfaceLoops.At>> lines = new ArrayList<>();
    for (Zone zone : Zone.values()) {
      for (Polyline loop : head.zone(zone).outline()) {
        List<Vector3> open = new ArrayList<>();
        for (int i = 1; i < loop.size(); i++) {
          Vector3 from = loop.points().get(i - 1);
          Vector3 to = loop.points().get(i);
          if (drawn.add(Piece.of(from, to))) {
            if (open.isEmpty()) {
              open.add(from);
            }
            open.add(to);
          } else if (!open.isEmpty()) {
            lines.add(closeLine(Polyline.of(open)));
            open = new ArrayList<>();
          }
        }
        if (!open.isEmpty()) {
          lines.add(closeLine(Polyline.of(open)));
        }
      }
    }
    return List.copyOf(lines);
  }
}
