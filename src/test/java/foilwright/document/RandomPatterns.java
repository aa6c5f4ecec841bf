package foilwright.document;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.Side;
import foilwright.anatomy.Zone;
import foilwright.pattern.Background;
import foilwright.pattern.CentreStart;
import foilwright.pattern.EarLineSide;
import foilwright.pattern.Extent;
import foilwright.pattern.Fill;
import foilwright.pattern.FoilPlace;
import foilwright.pattern.FoilRule;
import foilwright.pattern.HaloBoundary;
import foilwright.pattern.HeadMeasure;
import foilwright.pattern.HeightBound;
import foilwright.pattern.HeightLandmark;
import foilwright.pattern.KeptCover;
import foilwright.pattern.LowerEnd;
import foilwright.pattern.MixSlot;
import foilwright.pattern.NamedArea;
import foilwright.pattern.Pattern;
import foilwright.pattern.Pick;
import foilwright.pattern.PickDepth;
import foilwright.pattern.PivotPoint;
import foilwright.pattern.RegionSide;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Remainder;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.ShortEnds;
import foilwright.pattern.TravelFrom;
import foilwright.pattern.ViewedFrom;
import foilwright.pattern.WideEnd;
import foilwright.pattern.WorkingOrder;
import foilwright.pattern.ZigzagParting;
import foilwright.units.Angle;
import foilwright.units.Length;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.Supplier;

/** Patterns of every kind by chance, the same for the same seed; not to be worked on a head. */
final class RandomPatterns {
  private final Random random;
  private final List<String> names = new ArrayList<>();

  RandomPatterns(long seed) {
    random = new Random(seed);
  }

  Pattern next() {
    names.clear();
    List<Section> sections = new ArrayList<>();
    int count = 1 + random.nextInt(4);
    for (int i = 0; i < count; i++) {
      Section section = section("section " + (i + 1));
      names.add(section.name());
      sections.add(section);
    }
    return new Pattern(
        "by chance \"\u00e9\" \\ 1/2",
        random.nextBoolean() ? "" : "A sentence.",
        any(WorkingOrder.values()),
        sections);
  }

  @SafeVarargs
  private <T> T any(T... values) {
    return values[random.nextInt(values.length)];
  }

  private <T> Optional<T> maybe(Supplier<T> value) {
    return random.nextBoolean() ? Optional.of(value.get()) : Optional.empty();
  }

  private Length mm(double least, double most) {
    double value = least + random.nextDouble() * (most - least);
    return Length.ofMillimetres(random.nextBoolean() ? value : Math.rint(value));
  }

  private Extent extent(double least, double most) {
    return random.nextBoolean()
        ? Extent.of(mm(least, most))
        : new Extent.Proportion(0.01 + random.nextDouble() * 0.98, any(HeadMeasure.values()));
  }

  private Angle degrees(int least, int most) {
    double value = least + random.nextInt(most - least + 1);
    return random.nextBoolean()
        ? Angle.parse(value + " deg")
        : Angle.ofRadians(Math.toRadians(value) * 0.987654321);
  }

  private Section section(String name) {
    SectionShape shape = shape();
    boolean own = shape instanceof SectionShape.Halo || shape instanceof SectionShape.Pivot;
    return new Section(
        name,
        random.nextBoolean() ? "" : "For a reason.",
        region(),
        shape,
        own ? TravelFrom.START : any(TravelFrom.TOP, TravelFrom.PART, TravelFrom.FRONT),
        fill(),
        random.nextBoolean(),
        degrees(-80, 80),
        maybe(() -> new ZigzagParting(mm(1, 10), mm(1, 20))),
        random.nextBoolean(),
        new KeptCover(
            maybe(() -> extent(1, 40)), maybe(() -> extent(1, 40)), maybe(() -> extent(1, 40))),
        any(ViewedFrom.values()),
        leaveOut());
  }

  private List<FoilPlace> leaveOut() {
    List<FoilPlace> places = new ArrayList<>();
    for (int i = random.nextInt(4); i > 0; i--) {
      places.add(
          new FoilPlace(
              maybe(() -> any(Side.LEFT, Side.RIGHT)),
              1 + random.nextInt(12),
              1 + random.nextInt(5)));
    }
    return places;
  }

  private RegionSpec region() {
    EnumSet<Zone> zones = EnumSet.noneOf(Zone.class);
    for (Zone zone : Zone.values()) {
      if (random.nextInt(3) == 0) {
        zones.add(zone);
      }
    }
    boolean refer = !names.isEmpty();
    return new RegionSpec(
        zones,
        any(RegionSide.values()),
        maybe(() -> extent(0, 50)),
        maybe(() -> extent(0, 50)),
        heights(),
        heights(),
        any(EarLineSide.values()),
        maybe(this::area),
        refer ? maybe(() -> new RegionSpec.Between(name(), name())) : Optional.empty(),
        refer ? maybe(this::name) : Optional.empty(),
        refer && random.nextBoolean() ? List.of(name(), name()) : List.of());
  }

  private String name() {
    return names.get(random.nextInt(names.size()));
  }

  private List<HeightBound> heights() {
    List<HeightBound> bounds = new ArrayList<>();
    int count = random.nextInt(3);
    for (int i = 0; i < count; i++) {
      bounds.add(
          switch (random.nextInt(names.isEmpty() ? 3 : 5)) {
            case 0 -> new HeightBound.NormalElevation(degrees(-80, 80));
            case 1 -> new HeightBound.AtLandmark(any(HeightLandmark.values()));
            case 2 -> new HeightBound.AlongCentreLine(extent(0, 200), any(CentreStart.values()));
            case 3 -> new HeightBound.StartOf(name());
            default -> new HeightBound.EndOf(name());
          });
    }
    return bounds;
  }

  private NamedArea area() {
    return switch (random.nextInt(6)) {
      case 0 -> new NamedArea.Triangle(extent(5, 90), extent(5, 90));
      case 1 -> new NamedArea.Diamond(extent(0, 90), extent(5, 90), extent(5, 90));
      case 2 -> new NamedArea.Box(extent(0, 90), extent(5, 90), extent(5, 90));
      case 3 -> new NamedArea.Horseshoe(extent(5, 90), maybe(() -> extent(5, 90)));
      case 4 -> new NamedArea.FaceFrameStrip(extent(5, 90));
      default -> new NamedArea.PartLineStrip(extent(5, 90));
    };
  }

  private SectionShape shape() {
    return switch (random.nextInt(8)) {
      case 0 -> new SectionShape.Horizontal();
      case 1 -> new SectionShape.Diagonal(degrees(0, 90), any(LowerEnd.values()));
      case 2 -> new SectionShape.Vertical();
      case 3 ->
          new SectionShape.V(
              degrees(0, 90),
              any(SectionShape.Apex.values()),
              any(SectionShape.MeetingLine.values()));
      case 4 ->
          new SectionShape.Halo(
              names.isEmpty() || random.nextBoolean()
                  ? new HaloBoundary.Line(any(HaloBoundary.HeadLine.values()))
                  : new HaloBoundary.InnerEdgeOf(name()),
              extent(0, 20),
              maybe(() -> extent(30, 60)));
      case 5 ->
          new SectionShape.Pivot(
              pivot(),
              any(SectionShape.Axis.values()),
              degrees(-180, 0),
              degrees(1, 180),
              extent(5, 90));
      case 6 -> new SectionShape.AcrossFall();
      default -> new SectionShape.AlongFall();
    };
  }

  private PivotPoint pivot() {
    if (random.nextBoolean()) {
      return new PivotPoint.AtLandmark(any(Landmark.values()));
    }
    Side side = any(Side.values());
    return new PivotPoint.AlongCentreLine(
        extent(0, 200),
        any(CentreStart.values()),
        side == Side.MIDDLE ? Extent.zero() : extent(2, 60),
        side);
  }

  private Fill fill() {
    List<MixSlot> mix = new ArrayList<>();
    int slots = 1 + random.nextInt(4);
    for (int i = 0; i < slots; i++) {
      mix.add(any(MixSlot.values()));
    }
    return new Fill(
        random.nextBoolean() ? OptionalInt.empty() : OptionalInt.of(1 + random.nextInt(200)),
        extent(0, 90),
        run(),
        switch (random.nextInt(3)) {
          case 0 -> new Background.None();
          case 1 -> new Background.Even(run());
          default ->
              new Background.Wedge(run(), any(WideEnd.values()), any(Background.Points.values()));
        },
        any(Remainder.values()),
        switch (random.nextInt(3)) {
          case 0 -> List.of(new Pick.Solid());
          case 1 -> List.of(new Pick.Weave(mm(1, 10), mm(1, 10), depth()));
          default ->
              List.of(
                  new Pick.Zigzag(mm(1, 10), mm(1, 10), depth()),
                  new Pick.Weave(mm(1, 10), mm(1, 10), depth()));
        },
        switch (random.nextInt(3)) {
          case 0 -> new FoilRule.Evenly();
          case 1 -> new FoilRule.OneCentred();
          default -> new FoilRule.Count(1 + random.nextInt(12));
        },
        random.nextBoolean()
            ? ShortEnds.USUAL
            : new ShortEnds(any(ShortEnds.Rule.values()), mm(0, 90)),
        mix,
        mm(0, 40));
  }

  private Run run() {
    Extent first = extent(1, 50);
    return random.nextBoolean() ? Run.of(first) : new Run(first, extent(1, 50));
  }

  private PickDepth depth() {
    return switch (random.nextInt(3)) {
      case 0 -> PickDepth.whole();
      case 1 -> new PickDepth.OfLength(mm(1, 10));
      default -> new PickDepth.OfSlice(Share.parse(2 + random.nextInt(98) + ".5 %"));
    };
  }
}
