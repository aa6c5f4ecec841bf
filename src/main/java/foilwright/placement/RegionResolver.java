package foilwright.placement;

import foilwright.anatomy.HairlineStretch;
import foilwright.anatomy.Landmark;
import foilwright.anatomy.Zone;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.LinearValues;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.SurfaceDistance;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.head.Head;
import foilwright.pattern.EarLineSide;
import foilwright.pattern.Extent;
import foilwright.pattern.HeadDimensions;
import foilwright.pattern.HeightBound;
import foilwright.pattern.NamedArea;
import foilwright.pattern.RegionSide;
import foilwright.pattern.RegionSpec;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Turns the description of a region into the scalp that it takes, by clipping fields one after
 * another.
 */
final class RegionResolver {
  private static final double LEVEL_MM = 1;

  /** What earlier sections took, by name. */
  interface Earlier {
    /** Slices, their remainders and the backgrounds between them, of a section and its pair. */
    Region footprint(String name);

    /** The same for one half of a pair, or for a single section. */
    Region half(String name);

    /** The other half of the named section's pair; the section itself when it has none. */
    Region pair(String name);

    /** Where the section's first parting crosses its guide line. */
    Optional<Vector3> startPoint(String name);

    /** Where the section's last slice ends on its guide line. */
    Optional<Vector3> endPoint(String name);
  }

  private final Head head;
  private final HeadDimensions dimensions;
  private final Earlier earlier;

  RegionResolver(Head head, HeadDimensions dimensions, Earlier earlier) {
    this.head = head;
    this.dimensions = dimensions;
    this.earlier = earlier;
  }

  /** The region of a description; empty when nothing meets all its bounds. */
  Region resolve(RegionSpec spec) {
    TriangleMesh mesh = head.mesh();
    Region region =
        spec.zones().isEmpty()
            ? head.scalp()
            : Region.join(mesh, spec.zones().stream().map(head::zone).toList());
    if (spec.side() != RegionSide.BOTH) {
      ScalarField x = ScalarField.compute(mesh, Vector3::x);
      region =
          spec.side() == RegionSide.LEFT
              ? region.clip(x, Double.NEGATIVE_INFINITY, 0)
              : region.clip(x, 0, Double.POSITIVE_INFINITY);
    }
    if (spec.earLine() != EarLineSide.BOTH) {
      region =
          spec.earLine() == EarLineSide.IN_FRONT
              ? atLeast(region, head.beforeEarLine(), 0)
              : atMost(region, head.beforeEarLine(), 0);
    }
    if (spec.insetFromHairline().isPresent()) {
      region = atLeast(region, head.distanceFromHairline(), mm(spec.insetFromHairline().get()));
    }
    if (spec.insetFromPart().isPresent()) {
      region = atLeast(region, fromPart(), mm(spec.insetFromPart().get()));
    }
    for (HeightBound bound : spec.above()) {
      region = bounded(region, bound, true);
    }
    for (HeightBound bound : spec.below()) {
      region = bounded(region, bound, false);
    }
    if (spec.within().isPresent()) {
      region = within(region, spec.within().get());
    }
    if (spec.inside().isPresent()) {
      Region taken = earlier.footprint(spec.inside().get());
      region =
          atLeast(region, head.distanceFromHairline(), taken.least(head.distanceFromHairline()))
              .subtract(taken);
    }
    if (spec.between().isPresent()) {
      String first = spec.between().get().first();
      String second = spec.between().get().second();
      region =
          between(
              region,
              earlier.half(first),
              first.equals(second) ? earlier.pair(first) : earlier.half(second));
    }
    for (String name : spec.except()) {
      region = region.subtract(earlier.footprint(name));
    }
    return region;
  }

  private double mm(Extent extent) {
    return extent.resolve(dimensions).toMillimetres();
  }

  private static Region atLeast(Region region, LinearValues field, double value) {
    return region.clip(field, value, Double.POSITIVE_INFINITY);
  }

  private static Region atMost(Region region, LinearValues field, double value) {
    return region.clip(field, Double.NEGATIVE_INFINITY, value);
  }

  private LinearValues fromPart() {
    return head.distanceFromPart()
        .<LinearValues>map(f -> f)
        .orElseGet(() -> (t, k) -> Math.abs(head.distanceFromCentreLine().at(t, k)));
  }

  private Region bounded(Region region, HeightBound bound, boolean above) {
    return bound.match(
        elevation -> side(region, head.normalElevation(), elevation.elevation().toRadians(), above),
        landmark ->
            switch (landmark.landmark()) {
              case OCCIPITAL_LINE ->
                  side(
                      region,
                      head.normalElevation(),
                      head.settings().occipitalElevation().toRadians(),
                      above);
              case PARIETAL_RIDGE ->
                  side(
                      region,
                      head.normalElevation(),
                      head.settings().ridgeElevation().toRadians(),
                      above);
              case EAR_TOP -> level(region, earTop(), above);
              case BACK_POINT -> level(region, head.landmark(Landmark.BACK_POINT), above);
            },
        along ->
            level(
                region,
                SectionLayout.alongCentreLine(head, mm(along.distance()), along.from()),
                above),
        start -> level(region, earlier.startPoint(start.section()), above),
        end -> level(region, earlier.endPoint(end.section()), above));
  }

  /**
   * Nothing where the point is of a section that has no hair: that is told of the section itself.
   */
  private Region level(Region region, Optional<Vector3> point, boolean above) {
    return point.map(at -> level(region, at, above)).orElseGet(() -> Region.empty(region.mesh()));
  }

  /** The highest point of the hairline over the ear. */
  private Vector3 earTop() {
    Polyline hairline = head.hairline();
    Vector3 top = null;
    for (int i = 0; i < hairline.size(); i++) {
      if (head.hairlineStretch(hairline.arcAt(i)) == HairlineStretch.OVER_EAR
          && (top == null || hairline.points().get(i).z() > top.z())) {
        top = hairline.points().get(i);
      }
    }
    if (top == null) {
      throw new IllegalStateException("the hairline has no stretch over the ear");
    }
    return top;
  }

  private static Region level(Region region, Vector3 point, boolean above) {
    return side(region, ScalarField.compute(region.mesh(), Vector3::z), point.z(), above);
  }

  private static Region side(Region region, LinearValues field, double value, boolean above) {
    return above ? atLeast(region, field, value) : atMost(region, field, value);
  }

  private Region within(Region region, NamedArea area) {
    ScalarField signed = head.distanceFromCentreLine();
    LinearValues across = (t, k) -> Math.abs(signed.at(t, k));
    ScalarField along = head.alongCentreLine();
    LinearValues back = (t, k) -> Math.max(0, along.at(t, k));
    return area.match(
        triangle -> {
          double half = mm(triangle.baseWidth()) / 2;
          double depth = mm(triangle.depth());
          return atMost(region, (t, k) -> across.at(t, k) / half + back.at(t, k) / depth, 1);
        },
        diamond -> {
          double half = mm(diamond.width()) / 2;
          double length = mm(diamond.length()) / 2;
          double centre = mm(diamond.centre());
          Region behind =
              atMost(
                  atLeast(region, back, centre),
                  (t, k) -> across.at(t, k) / half + (back.at(t, k) - centre) / length,
                  1);
          Region before =
              atMost(
                  atMost(region, back, centre),
                  (t, k) -> across.at(t, k) / half + (centre - back.at(t, k)) / length,
                  1);
          return Region.join(region.mesh(), List.of(before, behind));
        },
        box -> atMost(region.clip(back, mm(box.from()), mm(box.to())), across, mm(box.width()) / 2),
        horseshoe -> {
          Region open =
              horseshoe.width().isPresent()
                  ? region
                  : atLeast(
                      region, head.normalElevation(), head.settings().ridgeElevation().toRadians());
          double half =
              horseshoe
                  .width()
                  .map(w -> mm(w) / 2)
                  .orElseGet(() -> Math.max(1, open.greatest(across)));
          double depth = mm(horseshoe.depth());
          double turn = depth - half;
          return atMost(
              atMost(open, back, depth),
              (t, k) -> Math.hypot(across.at(t, k), Math.max(0, back.at(t, k) - turn)),
              half);
        },
        strip -> atMost(region, fromFace(), mm(strip.width())),
        strip -> atMost(region, fromPart(), mm(strip.width())));
  }

  /** Surface distance from the hairline in front of the ears. */
  private ScalarField fromFace() {
    TriangleMesh mesh = head.mesh();
    boolean[] face = new boolean[mesh.vertexCount()];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        if (mesh.neighbour(t, k) < 0) {
          for (int end = 1; end < 3; end++) {
            int corner = (k + end) % 3;
            face[mesh.corner(t, corner)] |= head.beforeEarLine().at(t, corner) > 0;
          }
        }
      }
    }
    return SurfaceDistance.fromVertices(mesh, v -> face[v]);
  }

  /**
   * What lies between two sections as a person who looks at the region sees them: at each height
   * from the inner edge of one to the inner edge of the other, and at heights that both have.
   */
  private Region between(Region region, Region first, Region second) {
    Region both = Region.join(region.mesh(), List.of(first, second));
    if (region.isEmpty() || first.isEmpty() || second.isEmpty()) {
      return Region.empty(region.mesh());
    }
    Vector3 centroid = region.areaCentroid();
    Vector3 nearest = region.nearest(centroid);
    Vector3 centre =
        Math.abs(centroid.x()) < 0.5 ? new Vector3(0, nearest.y(), nearest.z()) : nearest;
    ViewFrame frame =
        head.zoneAt(centre).seenFromAbove()
            ? ViewFrame.FROM_ABOVE
            : ViewFrame.level(head.form().normal(centre));
    boolean firstIsLeft =
        first.areaCentroid().dot(frame.across()) < second.areaCentroid().dot(frame.across());
    double[] left = innerEdge(firstIsLeft ? first : second, frame, 1);
    double[] right = innerEdge(firstIsLeft ? second : first, frame, -1);
    LinearValues height = (t, k) -> frame.rise().dot(vertex(region, t, k));
    ScalarField rise = ScalarField.compute(region.mesh(), p -> p.dot(frame.rise()));
    double low = Math.max(first.least(rise), second.least(rise));
    double high = Math.min(first.greatest(rise), second.greatest(rise));
    LinearValues across = (t, k) -> frame.across().dot(vertex(region, t, k));
    return region
        .clip(rise, low, high)
        .clip((t, k) -> across.at(t, k) - at(left, height.at(t, k)), 0, Double.POSITIVE_INFINITY)
        .clip((t, k) -> at(right, height.at(t, k)) - across.at(t, k), 0, Double.POSITIVE_INFINITY)
        .subtract(both);
  }

  private static Vector3 vertex(Region region, int t, int k) {
    return region.mesh().vertex(region.mesh().corner(t, k));
  }

  private static final double TABLE_FROM = -400;
  private static final int TABLE_SIZE = 800;

  /**
   * The innermost across coordinate of a region at each millimetre of height; sense 1 for its right
   * edge.
   */
  private static double[] innerEdge(Region region, ViewFrame frame, int sense) {
    double[] edge = new double[TABLE_SIZE];
    Arrays.fill(edge, Double.NaN);
    for (int f = 0; f < region.fragmentCount(); f++) {
      for (int i = 0; i < region.size(f); i++) {
        Vector3 a = region.vertex(f, i);
        Vector3 b = region.vertex(f, (i + 1) % region.size(f));
        int steps = 1 + (int) Math.ceil(Math.abs(b.minus(a).dot(frame.rise())) / LEVEL_MM * 2);
        for (int s = 0; s <= steps; s++) {
          Vector3 p = a.lerp(b, (double) s / steps);
          int row = row(p.dot(frame.rise()));
          double across = p.dot(frame.across());
          if (Double.isNaN(edge[row]) || sense * (across - edge[row]) > 0) {
            edge[row] = across;
          }
        }
      }
    }
    double last = Double.NaN;
    for (int row = 0; row < TABLE_SIZE; row++) {
      last = Double.isNaN(edge[row]) ? last : edge[row];
      edge[row] = last;
    }
    for (int row = TABLE_SIZE - 1; row >= 0; row--) {
      last = Double.isNaN(edge[row]) ? last : edge[row];
      edge[row] = last;
    }
    return edge;
  }

  private static int row(double height) {
    return (int)
        Math.min(TABLE_SIZE - 1, Math.max(0, Math.floor((height - TABLE_FROM) / LEVEL_MM)));
  }

  private static double at(double[] edge, double height) {
    double place = (height - TABLE_FROM) / LEVEL_MM - 0.5;
    int i = (int) Math.min(TABLE_SIZE - 2, Math.max(0, Math.floor(place)));
    double s = Math.min(1, Math.max(0, place - i));
    return edge[i] + s * (edge[i + 1] - edge[i]);
  }

  /** The zones of a region as whole scalp zones, for messages. */
  static String words(RegionSpec spec) {
    return spec.zones().isEmpty()
        ? "the whole scalp"
        : String.join(", ", spec.zones().stream().map(Zone::words).toList());
  }
}
