package foilwright.head;

import foilwright.anatomy.HairlineStretch;
import foilwright.anatomy.Landmark;
import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.geometry.Plane;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Isolines;
import foilwright.geometry.surface.LinearValues;
import foilwright.geometry.surface.NearestOnMesh;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.SurfaceDistance;
import foilwright.geometry.surface.SurfacePoint;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.problem.Problem;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.Supplier;

/**
 * One head, ready to be worked on: its form, and its scalp as a mesh that carries landmarks, lines,
 * zones and fields.
 *
 * <p>Head frame, millimetres and radians; left and right are the client's. Immutable; fields and
 * zones are computed when first asked for and kept. Distances along the surface are accurate to
 * about 1 %; the mesh lies within 0.02 mm of the form at the usual edge length, and its vertices
 * lie on it. The mesh is mirror-symmetric to the bit.
 */
public final class Head {
  /** Where a part ends, as a share of the front-to-back arc: a little behind the apex. */
  private static final double PART_END = 0.42;

  /** How much lower than the apex a point may be and still belong to its flat. */
  private static final double FLAT_MM = 1;

  /**
   * What came of measuring a head.
   *
   * @param head present when no problem is an error
   * @param problems what stands in the way or is worth knowing
   */
  public record Fitted(Optional<Head> head, List<Problem> problems) {
    public Fitted {
      problems = List.copyOf(problems);
    }
  }

  private final HeadKind kind;
  private final TapeMeasurements tapes;
  private final HairlineSettings hairlineSettings;
  private final PartSetting part;
  private final HeadSettings settings;
  private final HeadForm form;
  private final double frontRad;
  private final double napeRad;
  private final double partEndRad;
  private final HairlineCurve curve;
  private final Optional<PartCurve> partCurve;
  private final TriangleMesh mesh;
  private final Region scalp;
  private final Map<Tape, Length> readings;
  private final Map<Landmark, Vector3> landmarks;
  private final Polyline hairline;
  private final List<Integer> hairlineVertices;
  private final Polyline centreLine;
  private final Optional<List<Integer>> partVertices;
  private final ScalarField normalElevation;
  private final ScalarField beforeEarLine;
  private final Lazy<Polyline> earLine;
  private final Lazy<NearestOnMesh> nearest = lazy(() -> NearestOnMesh.of(mesh()));
  private final Lazy<ZoneDivision> division = lazy(this::divide);
  private final Lazy<Map<Zone, Region>> zones = lazy(() -> division.get().regions());
  private final Lazy<ScalarField> fromHairline = lazy(this::measureFromHairline);
  private final Lazy<ScalarField> fromCentreLine = lazy(this::measureFromCentreLine);
  private final Lazy<Optional<ScalarField>> fromPart = lazy(this::measureFromPart);
  private final Lazy<ScalarField> fromEarLine = lazy(this::measureFromEarLine);
  private final Lazy<ScalarField> alongCentreLine = lazy(this::measureAlongCentreLine);
  private final Lazy<List<HairlineStretch>> nearestStretch = lazy(this::nameNearestStretch);
  private final Lazy<Map<Landmark, ScalarField>> fromLandmarks = lazy(this::measureFromLandmarks);

  private static <T> Lazy<T> lazy(Supplier<T> source) {
    return new Lazy<>(source);
  }

  private Head(
      HeadKind kind,
      TapeMeasurements tapes,
      HairlineSettings hairlineSettings,
      PartSetting part,
      HeadSettings settings,
      TapeFit.Solution solution) {
    this.kind = kind;
    this.tapes = tapes;
    this.hairlineSettings = hairlineSettings;
    this.part = part;
    this.settings = settings;
    form = solution.form();
    frontRad = solution.frontRad();
    napeRad = solution.napeRad();
    readings = new EnumMap<>(Tape.class);
    for (Tape tape : Tape.values()) {
      readings.put(tape, Length.ofMillimetres(solution.read(tape)));
    }
    partEndRad = Tapes.midAngleAfter(form, frontRad, PART_END * frontToBack().toMillimetres());
    curve = HairlineCurve.of(form, frontRad, napeRad, hairlineSettings);
    partCurve =
        part.side() == PartSide.LEFT || part.side() == PartSide.RIGHT
            ? Optional.of(
                PartCurve.of(form, frontRad, partEndRad, part.fromCentre().toMillimetres()))
            : Optional.empty();
    ScalpMesher.Result meshed =
        ScalpMesher.mesh(form, curve, partCurve.orElse(null), settings.meshEdge().toMillimetres());
    mesh = meshed.mesh();
    scalp = Region.whole(mesh);
    landmarks = Collections.unmodifiableMap(findLandmarks());
    hairlineVertices = walkBorder();
    hairline = polyline(hairlineVertices);
    List<Integer> middle = alongTheTop(v -> mesh.x(v) == 0);
    centreLine = polyline(middle);
    partVertices = findPart(middle, meshed.onPart());
    normalElevation = ScalarField.compute(mesh, form::normalElevation);
    beforeEarLine = divideAtEars();
    earLine = lazy(this::traceEarLine);
  }

  /**
   * The head that the tapes describe; what they do not say comes from the default head of a kind.
   */
  public static Fitted fit(
      HeadKind kind,
      TapeMeasurements tapes,
      HairlineSettings hairline,
      PartSetting part,
      HeadSettings settings) {
    TapeFit.Result result = TapeFit.solve(kind, hairline.nape(), tapes);
    return new Fitted(
        result.solution().map(s -> new Head(kind, tapes, hairline, part, settings, s)),
        result.problems());
  }

  /** The default head of a kind, with no part and the usual settings. */
  public static Head usual(HeadKind kind) {
    return fit(
            kind,
            TapeMeasurements.NONE,
            HairlineSettings.USUAL,
            PartSetting.NONE,
            HeadSettings.USUAL)
        .head()
        .orElseThrow();
  }

  /** The same head with another part. */
  public Head withPart(PartSetting other) {
    return new Head(
        kind,
        tapes,
        hairlineSettings,
        other,
        settings,
        new TapeFit.Solution(form, frontRad, napeRad));
  }

  // ---- What it was made from

  public HeadKind kind() {
    return kind;
  }

  public TapeMeasurements tapes() {
    return tapes;
  }

  public HairlineSettings hairlineSettings() {
    return hairlineSettings;
  }

  public PartSetting part() {
    return part;
  }

  public HeadSettings settings() {
    return settings;
  }

  // ---- Lengths

  /** What a tape reads on this head, whether it was given or not. */
  public Length reading(Tape tape) {
    return readings.get(tape);
  }

  public Length around() {
    return reading(Tape.AROUND);
  }

  /** Over the top along the centre line, front hairline to nape hairline. */
  public Length frontToBack() {
    return reading(Tape.FRONT_TO_BACK);
  }

  public Length earToEar() {
    return reading(Tape.EAR_TO_EAR);
  }

  /** The values that no tape gave. */
  public List<TapeFit.Assumed> assumed() {
    List<TapeFit.Assumed> assumed = new ArrayList<>();
    for (Tape tape : Tape.values()) {
      if (tape.in(tapes).isEmpty()) {
        assumed.add(new TapeFit.Assumed(tape, reading(tape)));
      }
    }
    return List.copyOf(assumed);
  }

  /**
   * Length along the centre line, front to back, over which the head is within 1 mm as high as the
   * apex: the apex is no sharper than this.
   */
  public Length apexFlat() {
    double apex = Tapes.apexAngle(form);
    double level = Tapes.midPoint(form, apex).z() - FLAT_MM;
    return Length.ofMillimetres(
        Tapes.alongMidLine(form, lowered(apex, -1, level), lowered(apex, 1, level)));
  }

  private double lowered(double apex, int direction, double level) {
    double near = 0;
    double far = 0.6;
    while (far - near > 1e-9) {
      double middle = (near + far) / 2;
      if (Tapes.midPoint(form, apex + direction * middle).z() > level) {
        near = middle;
      } else {
        far = middle;
      }
    }
    return apex + direction * near;
  }

  // ---- Form, mesh, landmarks and lines

  public HeadForm form() {
    return form;
  }

  public TriangleMesh mesh() {
    return mesh;
  }

  /** The whole hair-bearing scalp. */
  public Region scalp() {
    return scalp;
  }

  /** Every landmark; brow and ears lie on the form, outside the scalp. */
  public Map<Landmark, Vector3> landmarks() {
    return landmarks;
  }

  public Vector3 landmark(Landmark landmark) {
    return landmarks.get(landmark);
  }

  private Map<Landmark, Vector3> findLandmarks() {
    Map<Landmark, Vector3> found = new EnumMap<>(Landmark.class);
    found.put(Landmark.APEX, Tapes.midPoint(form, Tapes.apexAngle(form)));
    found.put(Landmark.BACK_POINT, Tapes.midPoint(form, Tapes.backAngle(form)));
    found.put(Landmark.BROW, Tapes.midPoint(form, Template.BROW_RAD));
    found.put(Landmark.FRONT_HAIRLINE, Tapes.midPoint(form, frontRad));
    found.put(Landmark.NAPE_HAIRLINE, Tapes.midPoint(form, napeRad));
    Vector3 ear = Tapes.rightEar(form);
    found.put(Landmark.EAR_RIGHT, ear);
    found.put(Landmark.EAR_LEFT, ear.mirrored());
    return found;
  }

  /**
   * The hairline, closed, along edges of the mesh: from the front centre by the client's right ear
   * to the nape and back by the left.
   */
  public Polyline hairline() {
    return hairline;
  }

  /** The stretch of hairline at an arc length in millimetres along {@link #hairline()}. */
  public HairlineStretch hairlineStretch(double arcMm) {
    return curve.stretchAt(form.templateDirection(hairline.at(arcMm)));
  }

  /** From the front hairline over the top to the nape hairline, along edges of the mesh. */
  public Polyline centreLine() {
    return centreLine;
  }

  /** From the front hairline to near the crown, along edges of the mesh. */
  public Optional<Polyline> partLine() {
    return partVertices.map(this::polyline);
  }

  /** From the left hairline behind the ear over the apex to the right. */
  public Polyline earLine() {
    return earLine.get();
  }

  /**
   * The occipital line at the back, from the client's left to the right; in pieces if it breaks.
   */
  public List<Polyline> occipitalLine() {
    return Isolines.of(
        scalp.clip(beforeEarLine, Double.NEGATIVE_INFINITY, 0),
        normalElevation,
        settings.occipitalElevation().toRadians());
  }

  /** The parietal ridge; in pieces where the hairline interrupts it. */
  public List<Polyline> parietalRidge() {
    return Isolines.of(scalp, normalElevation, settings.ridgeElevation().toRadians());
  }

  private Polyline polyline(List<Integer> vertices) {
    return Polyline.of(vertices.stream().map(mesh::vertex).toList());
  }

  private List<Integer> walkBorder() {
    Map<Integer, Integer> next = new HashMap<>();
    int front = -1;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        if (mesh.neighbour(t, k) < 0) {
          // The border runs counter-clockwise seen from above, the client's left first: turn it.
          int from = mesh.corner(t, (k + 2) % 3);
          next.put(from, mesh.corner(t, (k + 1) % 3));
          if (mesh.x(from) == 0 && (front < 0 || mesh.y(from) > mesh.y(front))) {
            front = from;
          }
        }
      }
    }
    List<Integer> walk = new ArrayList<>();
    int at = front;
    do {
      walk.add(at);
      at = next.get(at);
    } while (at != front);
    walk.add(front);
    return List.copyOf(walk);
  }

  /** The vertices that a test accepts, ordered from the front over the top. */
  private List<Integer> alongTheTop(IntPredicate accepted) {
    List<Integer> found = new ArrayList<>();
    for (int v = 0; v < mesh.vertexCount(); v++) {
      if (accepted.test(v)) {
        found.add(v);
      }
    }
    found.sort(Comparator.comparingDouble(this::fan));
    return List.copyOf(found);
  }

  private double fan(int vertex) {
    return PartCurve.fan(form.templateDirection(mesh.vertex(vertex)));
  }

  private Optional<List<Integer>> findPart(List<Integer> middle, BitSet onPart) {
    return switch (part.side()) {
      case NONE -> Optional.empty();
      case CENTRE -> Optional.of(middle.stream().filter(v -> fan(v) <= partEndRad + 1e-9).toList());
      case RIGHT -> Optional.of(alongTheTop(v -> onPart.get(v) && mesh.x(v) > 0));
      case LEFT -> Optional.of(alongTheTop(v -> onPart.get(v) && mesh.x(v) < 0));
    };
  }

  /**
   * The plane through the apex and behind both ears; below its end behind the ear, where the
   * hairline runs on close beside it, everything on the nape's side counts as behind.
   */
  private ScalarField divideAtEars() {
    Vector3 apex = landmark(Landmark.APEX);
    Vector3 end = form.fromTemplate(curve.behindEar());
    Vector3 down = end.minus(apex);
    Plane above = Plane.through(end, new Vector3(0, -down.z(), down.y()));
    Plane below = Plane.through(end, new Vector3(0, 1, 0.5));
    return ScalarField.compute(mesh, p -> Math.min(above.distance(p), below.distance(p)));
  }

  private Polyline traceEarLine() {
    Polyline longest =
        Isolines.of(scalp, beforeEarLine, 0).stream()
            .max(Comparator.comparingDouble(Polyline::length))
            .orElseThrow();
    return longest.first().x() < 0 ? longest : longest.reversed();
  }

  // ---- Zones

  /** A zone; the zones do not overlap and add up to the scalp. */
  public Region zone(Zone zone) {
    return zones.get().get(zone);
  }

  /** The zone of the scalp point nearest to a point. */
  public Zone zoneAt(Vector3 point) {
    return division.get().at(nearestOnScalp(point));
  }

  /** The zone of a scalp point. */
  public Zone zoneAt(SurfacePoint point) {
    return division.get().at(point);
  }

  private ZoneDivision divide() {
    double depth = settings.fringeDepth().toFraction() * frontToBack().toMillimetres();
    Vector3 point = Tapes.midPoint(form, Tapes.midAngleAfter(form, frontRad, depth));
    Vector3 centre = form.centre();
    Vector3 frontCorner = form.fromTemplate(curve.frontCorner());
    Vector3 corner = frontCorner.minus(centre);
    Vector3 back = corner.cross(point.minus(centre));
    Vector3 front = landmark(Landmark.FRONT_HAIRLINE).minus(centre);
    return new ZoneDivision(
        mesh,
        ZoneDivision.mirroredPlane(mesh, centre, towards(back, front)),
        ScalarField.compute(mesh, p -> frontCorner.x() - Math.abs(p.x())),
        less(normalElevation, settings.ridgeElevation().toRadians()),
        beforeEarLine,
        besidePart(),
        less(normalElevation, settings.occipitalElevation().toRadians()));
  }

  private static Vector3 towards(Vector3 normal, Vector3 side) {
    return normal.dot(side) < 0 ? normal.negated() : normal;
  }

  private ScalarField less(ScalarField field, double level) {
    double[] values = field.toArray();
    for (int v = 0; v < values.length; v++) {
      values[v] -= level;
    }
    return ScalarField.of(mesh, values);
  }

  /**
   * Positive to the client's right of the part or its prolongation, or of the centre line where
   * there is no side part; zero on it. The values have no unit.
   */
  public ScalarField besidePart() {
    if (partCurve.isEmpty()) {
      return ScalarField.compute(mesh, Vector3::x);
    }
    double side = part.side() == PartSide.RIGHT ? 1 : -1;
    double[] values = new double[mesh.vertexCount()];
    for (int v = 0; v < values.length; v++) {
      Vector3 p = mesh.vertex(v).scaled(new Vector3(side, 1, 1));
      values[v] = side * partCurve.get().excess(form.templateDirection(p));
    }
    for (int v : partVertices.orElseThrow()) {
      values[v] = 0;
    }
    return ScalarField.of(mesh, values);
  }

  // ---- Fields

  /** Elevation of the outward normal above the horizontal, radians. */
  public ScalarField normalElevation() {
    return normalElevation;
  }

  /** Distance along the surface from the hairline, millimetres. */
  public ScalarField distanceFromHairline() {
    return fromHairline.get();
  }

  /**
   * Distance along the surface from the centre line, millimetres; positive to the client's right.
   */
  public ScalarField distanceFromCentreLine() {
    return fromCentreLine.get();
  }

  /**
   * Distance along the surface from the part line, millimetres, not signed; empty without a part.
   */
  public Optional<ScalarField> distanceFromPart() {
    return fromPart.get();
  }

  /** Straight distance from the plane of the ear line, millimetres; positive in front of it. */
  public ScalarField beforeEarLine() {
    return beforeEarLine;
  }

  /** Distance along the surface from the ear line, millimetres; positive in front of it. */
  public ScalarField distanceFromEarLine() {
    return fromEarLine.get();
  }

  /**
   * How far along the centre line, in millimetres from the front hairline, lies the point of the
   * mid-line that shares a point's plane through the ear-to-ear direction and the form's centre.
   * Negative for points whose plane meets the mid-line on the face. Without meaning within some
   * millimetres of the axis itself, which leaves the head just over the front of the ear.
   */
  public ScalarField alongCentreLine() {
    return alongCentreLine.get();
  }

  private ScalarField measureFromHairline() {
    BitSet border = new BitSet();
    hairlineVertices.forEach(border::set);
    return SurfaceDistance.fromVertices(mesh, border::get);
  }

  private ScalarField measureFromCentreLine() {
    double[] values = SurfaceDistance.fromVertices(mesh, v -> mesh.x(v) == 0).toArray();
    for (int v = 0; v < values.length; v++) {
      values[v] = mesh.x(v) < 0 ? -values[v] : values[v];
    }
    return ScalarField.of(mesh, values);
  }

  private Optional<ScalarField> measureFromPart() {
    return partVertices.map(
        vertices -> {
          BitSet line = new BitSet();
          vertices.forEach(line::set);
          return SurfaceDistance.fromVertices(mesh, line::get);
        });
  }

  private ScalarField measureFromEarLine() {
    double reach = 2 * settings.meshEdge().toMillimetres();
    double[] values = SurfaceDistance.fromCurve(mesh, earLine(), reach).toArray();
    for (int v = 0; v < values.length; v++) {
      values[v] = beforeEarLine.at(v) < 0 ? -values[v] : values[v];
    }
    return ScalarField.of(mesh, values);
  }

  private ScalarField measureAlongCentreLine() {
    // The fan is cut where it meets no scalp: downwards, a little to the back, through the ear.
    double cut = Math.toRadians(250);
    int steps = 180;
    double[] arc = new double[steps + 1];
    double step = 2 * Math.PI / steps;
    for (int i = 1; i <= steps; i++) {
      arc[i] =
          arc[i - 1] + Tapes.alongMidLine(form, cut - 2 * Math.PI + (i - 1) * step, fanAt(cut, i));
    }
    double front = interpolated(arc, (frontRad - cut + 2 * Math.PI) / step);
    return ScalarField.compute(
        mesh,
        p -> {
          Vector3 d = form.templateDirection(p);
          double rad = Math.atan2(d.z(), d.y());
          rad = rad > cut - 2 * Math.PI ? rad : rad + 2 * Math.PI;
          return interpolated(arc, (rad - cut + 2 * Math.PI) / step) - front;
        });
  }

  private static double fanAt(double cut, int i) {
    return cut - 2 * Math.PI + i * 2 * Math.PI / 180;
  }

  private static double interpolated(double[] values, double at) {
    int i = (int) Math.min(Math.max(at, 0), values.length - 2);
    return values[i] + (at - i) * (values[i + 1] - values[i]);
  }

  // ---- Places

  /** The nearest point of the scalp to a point anywhere. */
  public SurfacePoint nearestOnScalp(Vector3 point) {
    return nearest.get().nearest(point);
  }

  /** Where the scalp point nearest to a point is, in tape measure terms. */
  public TapeDirections find(Vector3 point) {
    SurfacePoint at = nearestOnScalp(point);
    Landmark landmark = Landmark.APEX;
    double nearestMm = Double.POSITIVE_INFINITY;
    for (Landmark candidate : Landmark.values()) {
      Vector3 from = landmark(candidate);
      // No tape is shorter than the straight way through the head.
      if (from.distance(at.point()) >= nearestMm) {
        continue;
      }
      double mm = form.straightTape(from, at.point());
      if (mm < nearestMm) {
        nearestMm = mm;
        landmark = candidate;
      }
    }
    return new TapeDirections(
        zoneAt(at),
        stretchNearest(at),
        Length.ofMillimetres(at.valueOf(distanceFromHairline())),
        Length.ofMillimetres(at.valueOf(distanceFromCentreLine())),
        Length.ofMillimetres(at.valueOf(distanceFromEarLine())),
        landmark,
        Length.ofMillimetres(nearestMm));
  }

  private HairlineStretch stretchNearest(SurfacePoint at) {
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 3; k++) {
      int v = mesh.corner(at.triangle(), k);
      double mm = distanceFromHairline().at(v) + mesh.vertex(v).distance(at.point());
      if (mm < least) {
        least = mm;
        best = v;
      }
    }
    return nearestStretch.get().get(best);
  }

  /**
   * For each vertex, the stretch of hairline that its distance from the hairline was taken from.
   */
  private List<HairlineStretch> nameNearestStretch() {
    ScalarField distance = distanceFromHairline();
    HairlineStretch[] names = new HairlineStretch[mesh.vertexCount()];
    for (int v : hairlineVertices) {
      names[v] = curve.stretchAt(form.templateDirection(mesh.vertex(v)));
    }
    List<Integer> order = new ArrayList<>(names.length);
    for (int v = 0; v < names.length; v++) {
      order.add(v);
    }
    order.sort(Comparator.comparingDouble(distance::at));
    for (int v : order) {
      double least = Double.POSITIVE_INFINITY;
      HairlineStretch name = names[v];
      for (int i = 0; i < mesh.fanSize(v) && distance.at(v) > 0; i++) {
        for (int k = 0; k < 3; k++) {
          int w = mesh.corner(mesh.fan(v, i), k);
          double mm = distance.at(w) + mesh.vertex(w).distance(mesh.vertex(v));
          if (names[w] != null && w != v && mm < least) {
            least = mm;
            name = names[w];
          }
        }
      }
      names[v] = name;
    }
    return List.of(names);
  }

  private Map<Landmark, ScalarField> measureFromLandmarks() {
    Map<Landmark, ScalarField> fields = new EnumMap<>(Landmark.class);
    for (Landmark landmark : Landmark.values()) {
      Vector3 from = landmark(landmark);
      fields.put(landmark, ScalarField.compute(mesh, p -> form.straightTape(from, p)));
    }
    return fields;
  }

  /**
   * The scalp point that directions lead to: the one where all four distances agree best (least sum
   * of squared differences). Directions to the millimetre lead back within 3 mm.
   */
  public SurfacePoint walk(TapeDirections directions) {
    LinearValues[] fields = {
      distanceFromHairline(),
      distanceFromCentreLine(),
      distanceFromEarLine(),
      fromLandmarks.get().get(directions.landmark())
    };
    double[] wanted = {
      directions.fromHairline().toMillimetres(),
      directions.fromCentre().toMillimetres(),
      directions.fromEarLine().toMillimetres(),
      directions.fromLandmark().toMillimetres()
    };
    double side = Math.signum(wanted[1]);
    Agreement best = new Agreement();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      double x = mesh.x(mesh.corner(t, 0)) + mesh.x(mesh.corner(t, 1)) + mesh.x(mesh.corner(t, 2));
      if (x * side < 0) {
        continue;
      }
      best.offer(t, fields, wanted);
    }
    return new SurfacePoint(
        best.triangle, best.w1, best.w2, mesh.point(best.triangle, best.w1, best.w2));
  }

  /** The point of least squared disagreement found so far; fields are linear in each triangle. */
  private static final class Agreement {
    private int triangle;
    private double w1;
    private double w2;
    private double least = Double.POSITIVE_INFINITY;

    void offer(int t, LinearValues[] fields, double[] wanted) {
      double uu = 0;
      double uv = 0;
      double vv = 0;
      double ud = 0;
      double vd = 0;
      double dd = 0;
      for (int i = 0; i < fields.length; i++) {
        double a = fields[i].at(t, 0);
        double u = fields[i].at(t, 1) - a;
        double v = fields[i].at(t, 2) - a;
        double d = wanted[i] - a;
        uu += u * u;
        uv += u * v;
        vv += v * v;
        ud += u * d;
        vd += v * d;
        dd += d * d;
      }
      double det = uu * vv - uv * uv;
      double s = (vv * ud - uv * vd) / det;
      double r = (uu * vd - uv * ud) / det;
      if (s >= 0 && r >= 0 && s + r <= 1) {
        take(t, s, r, dd - s * ud - r * vd);
        return;
      }
      edge(t, held(ud / uu), 0, uu, uv, vv, ud, vd, dd);
      edge(t, 0, held(vd / vv), uu, uv, vv, ud, vd, dd);
      double along = held((vd - ud + uu - uv) / (uu - 2 * uv + vv));
      edge(t, 1 - along, along, uu, uv, vv, ud, vd, dd);
    }

    private static double held(double share) {
      return Math.min(Math.max(share, 0), 1);
    }

    private void edge(
        int t,
        double s,
        double r,
        double uu,
        double uv,
        double vv,
        double ud,
        double vd,
        double dd) {
      take(t, s, r, dd - 2 * (s * ud + r * vd) + s * s * uu + 2 * s * r * uv + r * r * vv);
    }

    private void take(int t, double s, double r, double disagreement) {
      if (disagreement < least) {
        least = disagreement;
        triangle = t;
        w1 = s;
        w2 = r;
      }
    }
  }
}
