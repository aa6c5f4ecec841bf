package foilwright.placement;

import foilwright.anatomy.Side;
import foilwright.anatomy.Zone;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.pattern.Extent;
import foilwright.pattern.FoilPlace;
import foilwright.pattern.FoilRule;
import foilwright.pattern.HeadDimensions;
import foilwright.pattern.KeptCover;
import foilwright.pattern.MixSlot;
import foilwright.pattern.Pattern;
import foilwright.pattern.Remainder;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.WorkingOrder;
import foilwright.problem.Problem;
import foilwright.problem.Problems;
import foilwright.problem.Severity;
import foilwright.units.Angle;
import foilwright.units.Area;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Lays a pattern on a head: regions, partings, slices, foils, their numbers and their figures. */
public final class Placer {
  /** A middle line shorter than this is a corner that the slice only grazes. */
  private static final double GRAZE_MM = 3;

  /** Shared area below this is rounding at a common edge. */
  private static final double SHARED_MM2 = 0.5;

  /** Below this angle a parting counts as level, and above its complement as vertical. */
  private static final double LEVEL_DEG = 2;

  private final Head head;
  private final HairOnHead hair;
  private final PlacingSettings settings;
  private final DirectionField fall;
  private final HeadDimensions dimensions;
  private final Problems problems = new Problems();
  private final List<Half> halves = new ArrayList<>();
  private final List<Half> before;

  private Placer(
      HairOnHead hair, PlacingSettings settings, DirectionField fall, List<Half> before) {
    this.before = before;
    head = hair.head();
    this.hair = hair;
    this.settings = settings;
    this.fall = fall;
    dimensions = new HeadDimensions(head.frontToBack(), head.earToEar(), head.around());
  }

  /**
   * Lays a pattern on a head.
   *
   * @param fall the way the hair falls, for sections that cross or follow it
   * @return the placement; sections that cannot be laid are missing from it and told as problems
   */
  public static Placement place(
      Pattern pattern, Head head, HairProfile hair, PlacingSettings settings, DirectionField fall) {
    return place(pattern, HairOnHead.of(head, hair), settings, fall);
  }

  /** The same for hair that is already on its head. */
  public static Placement place(
      Pattern pattern, HairOnHead hair, PlacingSettings settings, DirectionField fall) {
    return place(pattern, hair, settings, fall, Laid.NOTHING).placement();
  }

  /**
   * The same after a change: what was laid before is taken over where it is laid by the same words,
   * after the same sections as far as it looks at any. The placement is just what it would be
   * without.
   *
   * @param before used only when it was laid for the same hair, settings and fall
   */
  public static Laid place(
      Pattern pattern,
      HairOnHead hair,
      PlacingSettings settings,
      DirectionField fall,
      Laid before) {
    Placer placer = new Placer(hair, settings, fall, before.halves(hair, settings, fall));
    Placement placement = placer.place(pattern);
    return new Laid(placement, hair, settings, fall, List.copyOf(placer.halves));
  }

  /** A placement together with what it takes to lay a changed pattern quickly; never changes. */
  public static final class Laid {
    /** Nothing was laid before. */
    public static final Laid NOTHING = new Laid();

    private final Placement placement;
    private final List<Half> halves;
    private final Object[] laidFor;

    private Laid() {
      placement = new Placement(List.of(), List.of(), List.of());
      halves = List.of();
      laidFor = new Object[0];
    }

    private Laid(
        Placement placement,
        HairOnHead hair,
        PlacingSettings settings,
        DirectionField fall,
        List<Half> halves) {
      this.placement = placement;
      this.halves = halves;
      laidFor = new Object[] {hair, settings, fall};
    }

    public Placement placement() {
      return placement;
    }

    private List<Half> halves(HairOnHead hair, PlacingSettings settings, DirectionField fall) {
      return Arrays.equals(laidFor, new Object[] {hair, settings, fall}) ? halves : List.of();
    }
  }

  /** A section, or one half of a mirrored pair, as it is laid. */
  private static final class Half {
    private final Section section;
    private final int index;
    private final boolean second;
    private final Problems problems = new Problems();

    /** The earlier halves that were looked at by a name while this one was laid. */
    private final Map<String, List<Half>> lookedAt = new HashMap<>();

    private final IdentityHashMap<Draft, PlacedFoil> finished = new IdentityHashMap<>();
    private Optional<Region> slices = Optional.empty();
    private Optional<Region> between = Optional.empty();
    private Optional<Region> untouched = Optional.empty();
    private OptionalDouble hairs = OptionalDouble.empty();
    private Region region;
    private Region cover;
    private List<Strip.Arm> arms = List.of();
    private final List<List<Draft>> rows = new ArrayList<>();
    private final List<Region> remainders = new ArrayList<>();
    private final List<FoilPlace> leftOut = new ArrayList<>();

    /** Slices that would hold foils, but all of them are left out. */
    private final Set<Strip> unparted = Collections.newSetFromMap(new IdentityHashMap<>());

    Half(Section section, int index, boolean second) {
      this.section = section;
      this.index = index;
      this.second = second;
    }

    /** Whether the pattern leaves a foil out on this half. */
    boolean leavesOut(Draft draft) {
      return section.leaveOut().stream()
          .anyMatch(p -> p.names(section.region().keptSide(), draft.row(), draft.inRow()));
    }

    /** Once it is laid. */
    Region slices() {
      if (slices.isEmpty()) {
        slices =
            Optional.of(
                Region.join(
                    region.mesh(),
                    arms.stream().flatMap(a -> a.strips().stream()).map(Strip::slice).toList()));
      }
      return slices.get();
    }

    /** Once it is laid. */
    Region between() {
      if (between.isEmpty()) {
        between =
            Optional.of(
                Region.join(
                    region.mesh(), arms.stream().flatMap(a -> a.backgrounds().stream()).toList()));
      }
      return between.get();
    }

    Region footprint() {
      return Region.join(region.mesh(), List.of(slices(), between()));
    }
  }

  /** A foil before it has its number. */
  private record Draft(
      Strip strip,
      Strip.Arm arm,
      int row,
      int inRow,
      Region region,
      Polyline middle,
      double backgroundMm) {}

  /**
   * Prepares to draw a section again and again.
   *
   * @param needed names of the sections before it that it speaks of
   */
  static SectionTrial trial(
      Pattern pattern,
      HairOnHead hair,
      PlacingSettings settings,
      DirectionField fall,
      int index,
      Set<String> needed) {
    Placer placer = new Placer(hair, settings, fall, List.of());
    for (int i = 0; i < index; i++) {
      Section section = pattern.sections().get(i);
      if (needed.contains(section.name()) || needed.contains(section.mirroredName())) {
        placer.layOrTakeOver(new Half(section, i, false));
        if (section.mirror()) {
          placer.layOrTakeOver(new Half(section.mirrored(), i, true));
        }
      }
    }
    return new SectionTrial((section, second) -> placer.drawn(new Half(section, index, second)));
  }

  private SectionTrial.Drawn drawn(Half half) {
    Optional<Region> usable = resolve(half);
    return new SectionTrial.Drawn(half.region, usable.map(region -> layout(half, region)));
  }

  private Placement place(Pattern pattern) {
    for (int i = 0; i < pattern.sections().size(); i++) {
      Section section = pattern.sections().get(i);
      layOrTakeOver(new Half(section, i, false));
      if (section.mirror()) {
        layOrTakeOver(new Half(section.mirrored(), i, true));
      }
    }
    reportOverlaps();
    noteUnknownFoils(pattern);
    List<Half> order = ordered(pattern.order());
    List<PlacedFoil> foils = new ArrayList<>();
    List<List<PlacedFoil>> bySection = new ArrayList<>();
    halves.forEach(h -> bySection.add(new ArrayList<>()));
    int[] inSection = new int[halves.size()];
    for (Step step : steps(order, pattern.order())) {
      int h = halves.indexOf(step.half());
      for (Draft draft : step.row()) {
        List<MixSlot> mix = step.half().section.fill().mix();
        MixSlot slot = mix.get(inSection[h]++ % mix.size());
        if (step.half().leavesOut(draft)) {
          continue;
        }
        PlacedFoil foil =
            step.half()
                .finished
                .computeIfAbsent(draft, d -> finish(step.half(), d))
                .as(foils.size() + 1, slot.name());
        foils.add(foil);
        bySection.get(h).add(foil);
      }
    }
    List<PlacedSection> sections = new ArrayList<>();
    for (Half half : order) {
      sections.add(section(half, bySection.get(halves.indexOf(half))));
    }
    warnOfThickness(sections);
    return new Placement(sections, foils, problems.toList());
  }

  // ---- laying

  private void layOrTakeOver(Half half) {
    Optional<Half> same =
        before.stream()
            .filter(
                h ->
                    h.index == half.index
                        && h.second == half.second
                        && h.section.equals(half.section))
            .filter(
                h ->
                    h.lookedAt.entrySet().stream()
                        .allMatch(looked -> named(looked.getKey()).equals(looked.getValue())))
            .findFirst();
    halves.add(same.orElse(half));
    if (same.isEmpty()) {
      lay(half);
    }
    problems.addAll(halves.get(halves.size() - 1).problems.toList());
  }

  private void lay(Half half) {
    Optional<Region> usable = resolve(half);
    if (usable.isPresent()) {
      SectionLayout layout = layout(half, usable.get());
      half.arms = layout.lay();
      half.problems.addAll(layout.problems());
      divide(half, path(half));
      noteNothingPlaced(half, usable.get());
      leaveOut(half);
    }
  }

  /** A section without a foil is told even where nothing else is wrong with it. */
  private void noteNothingPlaced(Half half, Region usable) {
    boolean told = half.problems.toList().stream().anyMatch(p -> p.severity() != Severity.NOTE);
    if (half.rows.stream().allMatch(List::isEmpty) && !told) {
      half.problems.add(
          Problem.warning(
                  "nothing-placed",
                  path(half) + ".shape",
                  "The section \""
                      + half.section.name()
                      + "\" gets no foil on this head: from where it starts, none of its partings"
                      + " is long enough for one.",
                  "Start it from another edge, use another shape or region, or comb a part: without one, hair falls all round and its lines may lead nowhere.")
              .at(usable.nearest(usable.areaCentroid())));
    }
  }

  /** The partings of a half on what it may use. */
  private SectionLayout layout(Half half, Region usable) {
    return new SectionLayout(
        head, dimensions, fall, name -> innerEdges(half, name), half.section, usable, path(half));
  }

  private static String path(Half half) {
    return "sections[" + half.index + "]";
  }

  /** Sets a half's region and kept cover; what it may use of them, if that is anything. */
  private Optional<Region> resolve(Half half) {
    Section section = half.section;
    String path = path(half);
    half.region = new RegionResolver(head, dimensions, new Taken(half)).resolve(section.region());
    half.cover = Region.empty(head.mesh());
    if (half.region.area() < 1) {
      half.problems.add(
          Problem.error(
              "section-outside-hairline",
              path + ".region",
              "The section \""
                  + section.name()
                  + "\" has no hair: nothing of "
                  + RegionResolver.words(section.region())
                  + " meets all its bounds.",
              "Use a smaller inset, wider heights, or other zones."));
      half.region = Region.empty(head.mesh());
      return Optional.empty();
    }
    Region usable = keepCover(half, section.keptCover());
    if (usable.area() < 1) {
      half.problems.add(
          Problem.error(
                  "cover-leaves-nothing",
                  path + ".keptCover",
                  "The cover kept in the section \"" + section.name() + "\" takes all of its hair.",
                  "Keep a narrower cover, or widen the region.")
              .at(half.region.nearest(half.region.areaCentroid())));
      return Optional.empty();
    }
    return Optional.of(usable);
  }

  private static void leaveOut(Half half) {
    Set<Strip> parted = Collections.newSetFromMap(new IdentityHashMap<>());
    for (List<Draft> row : half.rows) {
      for (Draft draft : row) {
        if (half.leavesOut(draft)) {
          half.remainders.add(draft.region());
          half.leftOut.add(FoilPlace.of(draft.row(), draft.inRow()));
          half.unparted.add(draft.strip());
        } else {
          parted.add(draft.strip());
        }
      }
    }
    half.unparted.removeAll(parted);
  }

  /** Takes the kept covers off a half's region and returns what is left. */
  private Region keepCover(Half half, KeptCover cover) {
    Region usable = half.region;
    List<Region> kept = new ArrayList<>();
    if (cover.atHairline().isPresent()) {
      double d = mm(cover.atHairline().get());
      kept.add(usable.clip(head.distanceFromHairline(), Double.NEGATIVE_INFINITY, d));
      usable = usable.clip(head.distanceFromHairline(), d, Double.POSITIVE_INFINITY);
    }
    if (cover.atPart().isPresent()) {
      double d = mm(cover.atPart().get());
      ScalarField field = head.distanceFromPart().orElse(head.distanceFromCentreLine());
      kept.add(usable.clip(field, -d, d));
      usable =
          Region.join(
              head.mesh(),
              List.of(
                  usable.clip(field, Double.NEGATIVE_INFINITY, -d),
                  usable.clip(field, d, Double.POSITIVE_INFINITY)));
    }
    if (cover.overFringe().isPresent()) {
      double d = mm(cover.overFringe().get());
      Region fringe = usable.intersect(head.zone(Zone.FRINGE));
      kept.add(fringe.clip(head.distanceFromHairline(), Double.NEGATIVE_INFINITY, d));
      usable =
          Region.join(
              head.mesh(),
              List.of(
                  usable.subtract(head.zone(Zone.FRINGE)),
                  fringe.clip(head.distanceFromHairline(), d, Double.POSITIVE_INFINITY)));
    }
    half.cover = Region.join(head.mesh(), kept);
    return usable;
  }

  private double mm(Extent extent) {
    return extent.resolve(dimensions).toMillimetres();
  }

  private List<Polyline> innerEdges(Half looking, String name) {
    List<Polyline> edges = new ArrayList<>();
    for (Half half : lookAt(looking, name)) {
      for (Strip.Arm arm : half.arms) {
        if (!arm.strips().isEmpty()) {
          Strip first = arm.strips().get(0);
          Strip last = arm.strips().get(arm.strips().size() - 1);
          boolean lastIsInner =
              first.first().isEmpty() || fromHairline(last.last()) >= fromHairline(first.first());
          edges.addAll(lastIsInner ? last.last() : first.first());
        }
      }
    }
    return edges;
  }

  private double fromHairline(List<Polyline> lines) {
    double least = Double.POSITIVE_INFINITY;
    for (Polyline line : lines) {
      Vector3 p = line.at(line.length() / 2);
      least = Math.min(least, p.distance(head.hairline().at(head.hairline().nearestArc(p))));
    }
    return least;
  }

  /** What earlier halves have a name, as a half that is being laid finds them. */
  private List<Half> lookAt(Half looking, String name) {
    List<Half> found = named(name);
    looking.lookedAt.put(name, found);
    return found;
  }

  private List<Half> named(String name) {
    List<Half> found = new ArrayList<>();
    for (int i = 0; i < halves.size(); i++) {
      Half half = halves.get(i);
      if (half.section.name().equals(name)
          || (half.second && i > 0 && halves.get(i - 1).section.name().equals(name))) {
        found.add(half);
      }
    }
    return found;
  }

  /** What earlier sections took, as the half being laid sees it: its own side of a pair first. */
  private final class Taken implements RegionResolver.Earlier {
    private final Half looking;
    private final boolean second;

    Taken(Half half) {
      looking = half;
      second = half.second;
    }

    private Half half(String name, boolean wanted) {
      List<Half> found = lookAt(looking, name);
      return found.stream()
          .filter(h -> h.second == wanted)
          .findFirst()
          .orElseGet(() -> found.get(0));
    }

    @Override
    public Region footprint(String name) {
      return Region.join(head.mesh(), lookAt(looking, name).stream().map(Half::footprint).toList());
    }

    @Override
    public Region half(String name) {
      return half(name, second).footprint();
    }

    @Override
    public Region pair(String name) {
      return half(name, !second).footprint();
    }

    @Override
    public Optional<Vector3> startPoint(String name) {
      Half half = half(name, second);
      return half.arms.stream()
          .flatMap(a -> a.strips().stream())
          .findFirst()
          .map(Strip::firstPoint)
          .or(() -> middle(half.region));
    }

    @Override
    public Optional<Vector3> endPoint(String name) {
      Half half = half(name, second);
      return half.arms.stream()
          .flatMap(a -> a.strips().stream())
          .reduce((a, b) -> b)
          .map(Strip::lastPoint)
          .or(() -> middle(half.region));
    }
  }

  private static Optional<Vector3> middle(Region region) {
    return region.isEmpty() ? Optional.empty() : Optional.of(region.nearest(region.areaCentroid()));
  }

  // ---- dividing slices into foils

  /** A connected part of a slice with its middle line. */
  private record Piece(Strip strip, Strip.Arm arm, Region region, Polyline middle) {}

  private void divide(Half half, String path) {
    int most = half.arms.stream().mapToInt(a -> a.strips().size()).max().orElse(0);
    int tooShort = 0;
    int split = 0;
    for (int i = 0; i < most; i++) {
      List<List<Piece>> byArm = new ArrayList<>();
      for (Strip.Arm arm : half.arms) {
        if (i < arm.strips().size()) {
          byArm.add(pieces(half, arm, arm.strips().get(i)));
        }
      }
      int pieces = byArm.stream().mapToInt(List::size).max().orElse(0);
      split += Math.max(0, pieces - 1);
      for (int p = 0; p < pieces; p++) {
        List<Draft> row = new ArrayList<>();
        for (List<Piece> arm : byArm) {
          if (p < arm.size()) {
            tooShort += drafts(half, arm.get(p), i, row);
          }
        }
        if (!row.isEmpty()) {
          half.rows.add(row);
        }
      }
    }
    if (split > 0) {
      half.problems.add(
          Problem.note(
              "parting-in-pieces",
              path,
              "In the section \""
                  + half.section.name()
                  + "\", partings leave the region and come back "
                  + split
                  + (split == 1 ? " time" : " times")
                  + "; each piece is a row of its own.",
              "Nothing to put right if that is meant; else bound the region so that each parting stays in it."));
    }
    if (tooShort > 0) {
      half.problems.add(
          Problem.note(
              "short-ends-left-out",
              path,
              "In the section \""
                  + half.section.name()
                  + "\", "
                  + tooShort
                  + (tooShort == 1 ? " piece" : " pieces")
                  + " of parting shorter than "
                  + half.section.fill().shortEnds().minimum()
                  + (tooShort == 1 ? " stays background." : " stay background."),
              "Lower the shortest foil if they are wanted."));
    }
    reportTooWide(half, path);
  }

  private void reportTooWide(Half half, String path) {
    if (half.section.fill().foils() instanceof FoilRule.Count count) {
      double widest =
          half.rows.stream()
              .flatMap(List::stream)
              .mapToDouble(d -> d.middle().length())
              .max()
              .orElse(0);
      if (widest > settings.usableWidth().toMillimetres() + 1e-6) {
        half.problems.add(
            Problem.warning(
                "foil-too-narrow",
                path + ".fill.foils",
                "With "
                    + count.foils()
                    + " foils per slice, one foil of the section \""
                    + half.section.name()
                    + "\" would hold "
                    + Length.ofMillimetres(widest)
                    + " of parting; the house's foils hold "
                    + settings.usableWidth()
                    + ".",
                "Use more foils per slice, or divide evenly."));
      }
    }
  }

  private List<Piece> pieces(Half half, Strip.Arm arm, Strip strip) {
    List<Polyline> middles =
        strip.middle().stream()
            .filter(line -> line.length() >= GRAZE_MM)
            .sorted((a, b) -> Double.compare(b.length(), a.length()))
            .toList();
    if (middles.isEmpty()) {
      if (!strip.slice().isEmpty()) {
        half.remainders.add(strip.slice());
      }
      return List.of();
    }
    if (middles.size() == 1) {
      return List.of(new Piece(strip, arm, strip.slice(), oriented(half, middles.get(0))));
    }
    List<Region> components = strip.slice().components();
    List<Piece> pieces = new ArrayList<>();
    for (Region component : components) {
      Optional<Polyline> own =
          middles.stream()
              .filter(
                  line -> {
                    Vector3 p = line.at(line.length() / 2);
                    return component.nearest(p).distance(p) < 1e-3;
                  })
              .findFirst();
      if (own.isPresent()) {
        pieces.add(new Piece(strip, arm, component, oriented(half, own.get())));
      } else {
        half.remainders.add(component);
      }
    }
    return pieces;
  }

  /**
   * In the order of work: from the client's left across the head, or from the centre or back
   * outward on a side.
   */
  private static Polyline oriented(Half half, Polyline line) {
    Vector3 a = line.first();
    Vector3 b = line.last();
    if (line.closed()) {
      return line.points().get(1).x() * 1e-9 + turning(line) >= 0 ? line : line.reversed();
    }
    boolean whole = half.section.region().keptSide() == Side.MIDDLE;
    double forward;
    if (whole) {
      forward = b.x() - a.x();
    } else if (Math.abs(Math.abs(b.x()) - Math.abs(a.x())) >= Math.abs(b.y() - a.y())) {
      forward = Math.abs(b.x()) - Math.abs(a.x());
    } else {
      forward = b.y() - a.y();
    }
    return forward >= 0 ? line : line.reversed();
  }

  /**
   * Twice the area that a loop encloses seen from above; positive when it runs against the clock.
   */
  private static double turning(Polyline loop) {
    double twice = 0;
    for (int i = 0; i + 1 < loop.size(); i++) {
      Vector3 p = loop.points().get(i);
      Vector3 q = loop.points().get(i + 1);
      twice += p.x() * q.y() - q.x() * p.y();
    }
    return twice;
  }

  /** Adds a piece's foils to a row; returns 1 when the piece is too short for any. */
  private int drafts(Half half, Piece piece, int row, List<Draft> drafts) {
    boolean shifted = half.section.brickLay() && row % 2 == 1;
    List<FoilDivider.Part> parts =
        FoilDivider.divide(
            piece.region(),
            piece.middle(),
            half.section.fill().foils(),
            half.section.fill().shortEnds(),
            settings.usableWidth().toMillimetres(),
            shifted);
    boolean none = true;
    for (FoilDivider.Part part : parts) {
      if (!part.held()) {
        half.remainders.add(part.region());
        continue;
      }
      none = false;
      drafts.add(
          new Draft(
              piece.strip(),
              piece.arm(),
              half.rows.size() + 1,
              drafts.size() + 1,
              part.region(),
              part.middle(),
              backgroundBefore(piece, part.middle())));
    }
    return none ? 1 : 0;
  }

  /** At the middle of the foil's first edge; never less than nothing. */
  private static double backgroundBefore(Piece piece, Polyline middle) {
    Vector3 centre = middle.at(middle.length() / 2);
    Vector3 edge = nearest(piece.strip().first(), centre);
    return Math.max(0, piece.strip().backgroundAt().applyAsDouble(edge));
  }

  private static Vector3 nearest(List<Polyline> lines, Vector3 p) {
    Vector3 best = p;
    double least = Double.POSITIVE_INFINITY;
    for (Polyline line : lines) {
      Vector3 q = line.at(line.nearestArc(p));
      if (q.distance(p) < least) {
        least = q.distance(p);
        best = q;
      }
    }
    return best;
  }

  // ---- working order

  /** One row of one half, in working order. */
  private record Step(Half half, List<Draft> row) {}

  private List<Half> ordered(WorkingOrder order) {
    if (order != WorkingOrder.HAIRLINE_LAST) {
      return List.copyOf(halves);
    }
    List<Half> first = new ArrayList<>();
    List<Half> last = new ArrayList<>();
    for (Half half : halves) {
      (touchesHairline(half) ? last : first).add(half);
    }
    first.addAll(last);
    return first;
  }

  private boolean touchesHairline(Half half) {
    Region slices = half.slices();
    return slices.least(head.distanceFromHairline()) < 1
        || hair.areas(slices).containsKey(Zone.FRINGE);
  }

  private static List<Step> steps(List<Half> order, WorkingOrder rule) {
    List<Step> steps = new ArrayList<>();
    for (int i = 0; i < order.size(); i++) {
      Half half = order.get(i);
      boolean pair = i + 1 < order.size() && order.get(i + 1).second;
      if (rule == WorkingOrder.ALTERNATE_SIDES && pair) {
        Half other = order.get(++i);
        for (int row = 0; row < Math.max(half.rows.size(), other.rows.size()); row++) {
          for (Half side : List.of(half, other)) {
            if (row < side.rows.size()) {
              steps.add(new Step(side, side.rows.get(row)));
            }
          }
        }
      } else {
        half.rows.forEach(row -> steps.add(new Step(half, row)));
      }
    }
    return steps;
  }

  // ---- figures

  /** A foil whose number and mix are still to come. */
  private PlacedFoil finish(Half half, Draft draft) {
    Section section = half.section;
    Polyline middle = draft.middle();
    Vector3 centre = middle.at(middle.length() / 2);
    Zone most =
        hair.areas(draft.region()).entrySet().stream()
            .max(Map.Entry.comparingByValue())
            .map(Map.Entry::getKey)
            .orElse(Zone.CROWN);
    double hairs = hair.hairs(draft.region());
    Length length = hair.meanLength(draft.region());
    Share share = section.fill().pickedShare(Length.ofMillimetres(draft.strip().thicknessMm()));
    double picked = hairs * share.toFraction();
    Length start = section.fill().startFromScalp();
    Mass mass =
        hair.hair()
            .massOf(
                picked,
                Length.ofMillimetres(Math.max(0, length.toMillimetres() - start.toMillimetres())));
    Slope slope = slope(section, draft, centre);
    return new PlacedFoil(
        0,
        section.name(),
        half.index,
        draft.row(),
        draft.inRow(),
        side(middle),
        most,
        Words.shape(section.shape()),
        "",
        draft.region(),
        stretch(draft.strip().first(), middle),
        middle,
        head.form().normal(centre),
        slope.angle(),
        slope.lowerEnd(),
        Length.ofMillimetres(middle.length()),
        Length.ofMillimetres(draft.strip().thicknessAt().applyAsDouble(middle.first())),
        Length.ofMillimetres(draft.strip().thicknessAt().applyAsDouble(middle.last())),
        Length.ofMillimetres(draft.backgroundMm() + leftOutBefore(half, draft, centre)),
        Area.ofSquareMillimetres(draft.region().area()),
        share,
        section.fill().picksPerMillimetre() * middle.length(),
        hairs,
        picked,
        mass,
        length,
        start,
        find(centre),
        find(middle.first()),
        find(middle.last()));
  }

  /** What slices without a parting just before a foil's own add to its background. */
  private static double leftOutBefore(Half half, Draft draft, Vector3 centre) {
    double sum = 0;
    if (half.unparted.isEmpty()) {
      return sum;
    }
    List<Strip> strips = draft.arm().strips();
    for (int i = strips.indexOf(draft.strip()) - 1; i >= 0; i--) {
      Strip strip = strips.get(i);
      if (!half.unparted.contains(strip)) {
        break;
      }
      Vector3 edge = nearest(strip.first(), nearest(strip.middle(), centre));
      sum +=
          strip.thicknessAt().applyAsDouble(edge)
              + Math.max(0, strip.backgroundAt().applyAsDouble(edge));
    }
    return sum;
  }

  private Find find(Vector3 point) {
    return Find.of(head.find(point));
  }

  private static Side side(Polyline middle) {
    double a = middle.first().x();
    double b = middle.last().x();
    if (a * b < 0 && Math.min(Math.abs(a), Math.abs(b)) > 0.15 * Math.abs(b - a)) {
      return Side.MIDDLE;
    }
    double x = middle.at(middle.length() / 2).x();
    return Math.abs(x) < 1e-6 ? Side.MIDDLE : x < 0 ? Side.LEFT : Side.RIGHT;
  }

  /** The stretch of an edge that runs beside a foil. */
  private static Polyline stretch(List<Polyline> edges, Polyline middle) {
    Vector3 p = middle.at(middle.length() / 2);
    Polyline edge =
        edges.stream()
            .min(
                (a, b) ->
                    Double.compare(
                        a.at(a.nearestArc(p)).distance(p), b.at(b.nearestArc(p)).distance(p)))
            .orElse(middle);
    double from = edge.nearestArc(middle.first());
    double to = edge.nearestArc(middle.last());
    if (edge.closed() || from == to) {
      return middle;
    }
    return from < to ? edge.between(from, to) : edge.between(to, from).reversed();
  }

  /** How a foil's parting leans, and which end is lower. */
  private record Slope(Angle angle, Optional<String> lowerEnd) {}

  private Slope slope(Section section, Draft draft, Vector3 centre) {
    Zone zone = head.zoneAt(centre);
    Vector3 normal = head.form().normal(centre);
    boolean above =
        switch (section.seen()) {
          case ABOVE -> true;
          case LEVEL -> false;
          case AUTO -> zone.seenFromAbove();
        };
    ViewFrame frame = above ? ViewFrame.FROM_ABOVE : ViewFrame.level(normal);
    Vector3 tangent = draft.middle().last().minus(draft.middle().first());
    if (draft.middle().closed()) {
      tangent = draft.middle().tangentAt(draft.middle().length() / 2);
    }
    double degrees =
        draft.strip().rising().isPresent()
            ? Math.abs(Math.toDegrees(draft.strip().rising().getAsDouble()))
            : Math.toDegrees(
                Math.atan2(
                    Math.abs(tangent.dot(frame.rise())), Math.abs(tangent.dot(frame.across()))));
    if (degrees > 90) {
      degrees = 180 - degrees;
    }
    Optional<String> lower = Optional.empty();
    if (degrees > LEVEL_DEG && degrees < 90 - LEVEL_DEG) {
      Vector3 down = tangent.dot(frame.rise()) <= 0 ? tangent : tangent.negated();
      lower = Optional.of(Words.lowerEnd(section.shape(), down, centre, above));
    }
    return new Slope(Angle.ofDegrees(degrees), lower);
  }

  private PlacedSection section(Half half, List<PlacedFoil> foils) {
    if (half.untouched.isEmpty()) {
      half.hairs = OptionalDouble.of(hair.hairs(half.region));
      half.untouched = Optional.of(untouched(half));
    }
    double hairs = half.hairs.orElseThrow();
    double picked = 0;
    double lightened = 0;
    for (PlacedFoil foil : foils) {
      picked += foil.pickedHairs();
      if (settings.lightening().contains(MixSlot.valueOf(foil.mix()))) {
        lightened += foil.pickedHairs();
      }
    }
    List<Polyline> partings = new ArrayList<>();
    List<Region> backgrounds = new ArrayList<>();
    if (!half.cover.isEmpty()) {
      backgrounds.add(half.cover);
    }
    for (Strip.Arm arm : half.arms) {
      for (Strip strip : arm.strips()) {
        if (!half.unparted.contains(strip)) {
          partings.addAll(strip.first());
          partings.addAll(strip.last());
        }
      }
      backgrounds.addAll(arm.backgrounds());
    }
    return new PlacedSection(
        half.index,
        half.section.name(),
        Words.shape(half.section.shape()),
        half.region,
        foils,
        partings,
        half.remainders,
        backgrounds,
        half.untouched.orElseThrow(),
        new PlacedSection.Figures(
            Area.ofSquareMillimetres(half.region.area()),
            hairs,
            picked,
            Share.ofFraction(hairs > 0 ? lightened / hairs : 0)),
        remainderWords(half),
        half.leftOut);
  }

  private Region untouched(Half half) {
    List<Region> parts = new ArrayList<>();
    half.arms.forEach(arm -> parts.add(arm.untouched()));
    if (half.arms.isEmpty()) {
      parts.add(half.region.subtract(half.cover));
    }
    Region rest = Region.join(head.mesh(), parts);
    return Region.join(head.mesh(), List.of(rest, sectorRest(half, rest)));
  }

  /** What no arm took in: a pivot's region outside its span. */
  private Region sectorRest(Half half, Region untouched) {
    if (half.arms.isEmpty() || !(half.section.shape() instanceof SectionShape.Pivot)) {
      return Region.empty(head.mesh());
    }
    double taken = half.cover.area() + untouched.area() + half.footprint().area();
    return half.region.area() - taken < 1e-9 * half.region.area()
        ? Region.empty(head.mesh())
        : half.region.subtract(half.cover).subtract(untouched).subtract(half.footprint());
  }

  private static String remainderWords(Half half) {
    if (half.arms.isEmpty()) {
      return "nothing placed";
    }
    double left = half.arms.stream().mapToDouble(Strip.Arm::leftMm).max().orElse(0);
    Remainder rule = half.section.fill().remainder();
    return switch (rule) {
      case LEAVE -> Length.ofMillimetres(Math.max(0, left)) + " left at the end";
      case BALANCE -> Length.ofMillimetres(Math.max(0, left)) + " left at both ends";
      case STRETCH -> "backgrounds stretched to the end";
    };
  }

  private void warnOfThickness(List<PlacedSection> sections) {
    for (PlacedSection section : sections) {
      int thin = 0;
      int thick = 0;
      Optional<PlacedFoil> worst = Optional.empty();
      for (PlacedFoil foil : section.foils()) {
        boolean isThin =
            foil.sliceAtStart().compareTo(settings.thinnestSlice()) < 0
                || foil.sliceAtEnd().compareTo(settings.thinnestSlice()) < 0;
        boolean isThick =
            foil.sliceAtStart().compareTo(settings.thickestSlice()) > 0
                || foil.sliceAtEnd().compareTo(settings.thickestSlice()) > 0;
        thin += isThin ? 1 : 0;
        thick += isThick && !isThin ? 1 : 0;
        if ((isThin || isThick) && worst.isEmpty()) {
          worst = Optional.of(foil);
        }
      }
      if (worst.isPresent()) {
        problems.add(
            Problem.warning(
                    "comb-cannot-hold",
                    "sections[" + section.index() + "].fill.slice",
                    String.format(
                        Locale.ROOT,
                        "In the section \"%s\", %d of %d foils have an end thinner than %s or thicker than %s.",
                        section.name(),
                        thin + thick,
                        section.foils().size(),
                        settings.thinnestSlice(),
                        settings.thickestSlice()),
                    "Change the slice, or keep the section off the place where its partings draw together.")
                .at(worst.get().centre()));
      }
    }
  }

  // ---- foils left out

  private void noteUnknownFoils(Pattern pattern) {
    for (int i = 0; i < pattern.sections().size(); i++) {
      Section section = pattern.sections().get(i);
      int index = i;
      List<Half> pair = halves.stream().filter(h -> h.index == index).toList();
      for (int k = 0; k < section.leaveOut().size(); k++) {
        FoilPlace place = section.leaveOut().get(k);
        boolean known =
            pair.stream()
                .anyMatch(
                    half ->
                        half.rows.stream()
                            .flatMap(List::stream)
                            .anyMatch(
                                d ->
                                    place.names(
                                        half.section.region().keptSide(), d.row(), d.inRow())));
        if (!known) {
          problems.add(
              Problem.note(
                  "no-such-foil",
                  "sections[" + i + "].leaveOut[" + k + "]",
                  "On this head the section \""
                      + section.name()
                      + "\" has no "
                      + place.text()
                      + " to leave out.",
                  "Nothing to put right: every foil that is there is placed."));
        }
      }
    }
  }

  // ---- hair claimed twice

  private void reportOverlaps() {
    List<Region> slices = halves.stream().map(Half::slices).toList();
    List<Region> backgrounds = halves.stream().map(Half::between).toList();
    List<BitSet> touched = new ArrayList<>();
    for (int i = 0; i < halves.size(); i++) {
      touched.add(triangles(slices.get(i), backgrounds.get(i)));
    }
    for (int i = 0; i < halves.size(); i++) {
      for (int j = i + 1; j < halves.size(); j++) {
        if (!touched.get(i).intersects(touched.get(j))) {
          continue;
        }
        Region shared =
            Region.join(
                head.mesh(),
                List.of(
                    slices.get(i).intersect(slices.get(j)),
                    slices.get(i).intersect(backgrounds.get(j)),
                    backgrounds.get(i).intersect(slices.get(j))));
        double area = shared.area();
        if (area > SHARED_MM2) {
          Vector3 place = shared.nearest(shared.areaCentroid());
          problems.add(
              Problem.error(
                      "sections-overlap",
                      "sections[" + halves.get(j).index + "].region",
                      String.format(
                          Locale.ROOT,
                          "The sections \"%s\" and \"%s\" both claim %.0f mm2 (%.1f cm2) of scalp, %s.",
                          halves.get(i).section.name(),
                          halves.get(j).section.name(),
                          area,
                          area / 100,
                          find(place).words()),
                      "Leave the earlier section out of the later one's region (except), or bound their heights"
                          + " or zones so that they do not meet.")
                  .at(place));
        }
      }
    }
  }

  private static BitSet triangles(Region... regions) {
    BitSet touched = new BitSet();
    for (Region region : regions) {
      for (int f = 0; f < region.fragmentCount(); f++) {
        touched.set(region.triangle(f));
      }
    }
    return touched;
  }
}
