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
import foilwright.pattern.HeightBound;
import foilwright.pattern.HeightLandmark;
import foilwright.pattern.KeptCover;
import foilwright.pattern.LowerEnd;
import foilwright.pattern.MixSlot;
import foilwright.pattern.NamedArea;
import foilwright.pattern.Pattern;
import foilwright.pattern.PatternCheck;
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
import foilwright.pattern.ZoneGroup;
import foilwright.problem.Problem;
import foilwright.units.Angle;
import foilwright.units.Length;
import foilwright.units.Share;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;

/** Pattern documents to patterns. */
final class PatternReader {
  private static final Length NOTHING = Length.ZERO;
  private static final Length HALF_A_MILLIMETRE = Length.ofMillimetres(0.5);
  private static final Length HEAD = Length.ofMillimetres(800);
  private static final Length HAND = Length.ofMillimetres(150);
  private static final Length COMB = Length.ofMillimetres(60);

  private static final java.util.regex.Pattern ON_CENTRE_LINE =
      java.util.regex.Pattern.compile(
          "(.+) along the centre line from the (nape hairline|front hairline|apex)"
              + "(?:, (.+) to the (left|right))?");

  private PatternReader() {}

  /**
   * The pattern of an up-to-date tree; where something is wrong the log says so, and a stand-in
   * takes its place.
   */
  static Pattern read(Node.ObjectNode root, ProblemLog problems) {
    Fields fields = new Fields(root, "", problems);
    fields.find("format");
    String title = fields.require("title").name();
    String summary = fields.find("summary").map(Item::sentence).orElse("");
    WorkingOrder order =
        fields
            .find("order")
            .map(i -> i.word(WorkingOrder.values(), WorkingOrder::words))
            .orElse(WorkingOrder.SECTION_BY_SECTION);
    List<Section> sections =
        fields.require("sections").items(1).stream().map(PatternReader::section).toList();
    fields.close();
    if (sections.isEmpty()) {
      return Pattern.of(title, standIn());
    }
    Pattern pattern = new Pattern(title, summary, order, sections);
    check(pattern, root, problems);
    return pattern;
  }

  /** A section that failed to read is not checked again: its stand-ins would be blamed. */
  private static void check(Pattern pattern, Node.ObjectNode root, ProblemLog problems) {
    List<String> failed = problems.errorPaths();
    boolean namesFailed = failed.stream().anyMatch(p -> p.matches("sections\\[\\d+\\](\\.name)?"));
    Places places = new Places(Optional.of(root));
    for (Problem problem : PatternCheck.problems(pattern)) {
      String section = problem.path().replaceFirst("\\..*", "");
      boolean sectionFailed =
          failed.stream().anyMatch(p -> p.equals(section) || p.startsWith(section + "."));
      if (!sectionFailed && !(namesFailed && problem.code().contains("section"))) {
        problems.add(new LocatedProblem(problem, places.find(problem.path())));
      }
    }
  }

  private static Section standIn() {
    return Section.of(
        "?",
        RegionSpec.WHOLE_SCALP,
        new SectionShape.Horizontal(),
        TravelFrom.BOTTOM,
        Fill.of(Run.ofMillimetres(1), new Background.None()));
  }

  private static Section section(Item item) {
    Fields fields = item.fields();
    String name = fields.require("name").name();
    String why = fields.find("why").map(Item::sentence).orElse("");
    RegionSpec region =
        fields.find("region").map(PatternReader::region).orElse(RegionSpec.WHOLE_SCALP);
    SectionShape shape = shape(fields.require("shape"));
    boolean ownStart = shape instanceof SectionShape.Halo || shape instanceof SectionShape.Pivot;
    TravelFrom from =
        (ownStart ? fields.find("from") : Optional.of(fields.require("from")))
            .map(i -> i.word(TravelFrom.values(), TravelFrom::words))
            .orElse(TravelFrom.START);
    Fill fill = fill(fields.require("fill"));
    Section section =
        new Section(
            name,
            why,
            region,
            shape,
            from,
            fill,
            fields.find("mirror").map(Item::yesOrNo).orElse(false),
            fields.find("turned").map(i -> degrees(i, -90, 90)).orElse(Angle.ZERO),
            fields.find("zigzagParting").map(PatternReader::zigzagParting),
            fields.find("brickLay").map(Item::yesOrNo).orElse(false),
            fields.find("keptCover").map(PatternReader::keptCover).orElse(KeptCover.NONE),
            fields
                .find("seen")
                .map(i -> i.word(ViewedFrom.values(), ViewedFrom::words))
                .orElse(ViewedFrom.AUTO),
            fields
                .find("leaveOut")
                .map(i -> i.items(1).stream().map(PatternReader::foilPlace).toList())
                .orElse(List.of()));
    fields.close();
    return section;
  }

  private static FoilPlace foilPlace(Item item) {
    String text = item.sentence();
    Optional<FoilPlace> place = FoilPlace.parse(text);
    if (place.isEmpty() && item.isText()) {
      item.error(
          "wrong-form",
          "\"" + Fields.shortened(text) + "\" is not the place of a foil",
          "write for example \"row 3 foil 2\", or for one half of a pair \"left row 3 foil 2\"");
    }
    return place.orElse(FoilPlace.of(1, 1));
  }

  private static Angle degrees(Item item, double least, double most) {
    return item.quantity(Kind.ANGLE, Angle.ofDegrees(least), Angle.ofDegrees(most));
  }

  private static ZigzagParting zigzagParting(Item item) {
    Fields fields = item.fields();
    ZigzagParting teeth =
        new ZigzagParting(
            fields.require("toothDepth").quantity(Kind.LENGTH, HALF_A_MILLIMETRE, COMB),
            fields.require("toothWidth").quantity(Kind.LENGTH, HALF_A_MILLIMETRE, COMB));
    fields.close();
    return teeth;
  }

  private static KeptCover keptCover(Item item) {
    Fields fields = item.fields();
    KeptCover cover =
        new KeptCover(
            fields.find("atHairline").map(i -> i.extent(NOTHING, HAND)),
            fields.find("atPart").map(i -> i.extent(NOTHING, HAND)),
            fields.find("overFringe").map(i -> i.extent(NOTHING, HAND)));
    fields.close();
    return cover;
  }

  // Region

  private static RegionSpec region(Item item) {
    Fields fields = item.fields();
    RegionSpec region =
        new RegionSpec(
            fields.find("zones").map(PatternReader::zones).orElse(Set.of()),
            fields
                .find("side")
                .map(i -> i.word(RegionSide.values(), RegionSide::words))
                .orElse(RegionSide.BOTH),
            fields.find("insetFromHairline").map(i -> i.extent(NOTHING, HAND)),
            fields.find("insetFromPart").map(i -> i.extent(NOTHING, HAND)),
            heights(fields.find("above")),
            heights(fields.find("below")),
            earLine(fields),
            fields.find("within").flatMap(PatternReader::area),
            fields.find("between").flatMap(PatternReader::between),
            fields.find("inside").map(Item::name),
            fields
                .find("except")
                .map(i -> i.oneOrMore().stream().map(Item::name).toList())
                .orElse(List.of()));
    fields.close();
    return region;
  }

  /** Zone words and group words; both stand for what they name. */
  static Map<String, Set<Zone>> zoneWords() {
    Map<String, Set<Zone>> words = new LinkedHashMap<>();
    for (Zone zone : Zone.values()) {
      words.put(zone.words(), EnumSet.of(zone));
    }
    for (ZoneGroup group : ZoneGroup.values()) {
      words.put(group.words(), group.zones());
    }
    return words;
  }

  private static Set<Zone> zones(Item item) {
    Set<Zone> zones = EnumSet.noneOf(Zone.class);
    item.oneOrMore().forEach(i -> zones.addAll(i.word(zoneWords())));
    return zones;
  }

  private static EarLineSide earLine(Fields fields) {
    Map<String, Boolean> only = Map.of("ear line", true);
    Optional<Boolean> inFront = fields.find("inFrontOf").map(i -> i.word(only));
    Optional<Boolean> behind = fields.find("behind").map(i -> i.word(only));
    if (inFront.isPresent() && behind.isPresent()) {
      fields.error(
          "does-not-fit",
          "nothing lies both in front of and behind the ear line",
          "keep one of \"inFrontOf\" and \"behind\"");
    }
    return inFront.isPresent()
        ? EarLineSide.IN_FRONT
        : behind.isPresent() ? EarLineSide.BEHIND : EarLineSide.BOTH;
  }

  private static List<HeightBound> heights(Optional<Item> item) {
    return item.map(i -> i.oneOrMore().stream().map(PatternReader::height).toList())
        .orElse(List.of());
  }

  private static HeightBound height(Item item) {
    String text = item.sentence();
    HeightBound standIn = new HeightBound.AtLandmark(HeightLandmark.OCCIPITAL_LINE);
    if (text.startsWith("start of ")) {
      return new HeightBound.StartOf(item.part(text.substring(9)).name());
    } else if (text.startsWith("end of ")) {
      return new HeightBound.EndOf(item.part(text.substring(7)).name());
    } else if (text.endsWith(" of normal elevation")) {
      Item angle = item.part(text.substring(0, text.length() - 20));
      return new HeightBound.NormalElevation(degrees(angle, -90, 90));
    }
    Matcher along = ON_CENTRE_LINE.matcher(text);
    if (along.matches() && along.group(3) == null) {
      return new HeightBound.AlongCentreLine(
          item.part(along.group(1)).extent(NOTHING, HEAD), centreStart(along.group(2)));
    }
    for (HeightLandmark landmark : HeightLandmark.values()) {
      if (landmark.words().equals(text)) {
        return new HeightBound.AtLandmark(landmark);
      }
    }
    if (item.isText() && !text.equals("?")) {
      item.unknownWord(
          text,
          List.of(
              "occipital line",
              "parietal ridge",
              "ear top",
              "back point",
              "60 deg of normal elevation",
              "80 mm along the centre line from the nape hairline",
              "start of (section)",
              "end of (section)"));
    }
    return standIn;
  }

  private static CentreStart centreStart(String words) {
    for (CentreStart start : CentreStart.values()) {
      if (start.words().equals(words)) {
        return start;
      }
    }
    throw new IllegalArgumentException("no start of the centre line is called " + words);
  }

  private static Optional<RegionSpec.Between> between(Item item) {
    List<Item> names = item.items(2);
    if (names.size() > 2) {
      item.error("out-of-range", "a region lies between two sections", "name two sections");
    }
    return names.size() < 2
        ? Optional.empty()
        : Optional.of(new RegionSpec.Between(names.get(0).name(), names.get(1).name()));
  }

  private static Optional<NamedArea> area(Item item) {
    Map<String, Function<Item, Optional<NamedArea>>> cases = new LinkedHashMap<>();
    cases.put(
        "triangle",
        group(f -> new NamedArea.Triangle(size(f.require("base")), size(f.require("depth")))));
    cases.put(
        "diamond",
        group(
            f ->
                new NamedArea.Diamond(
                    f.require("centre").extent(NOTHING, HEAD),
                    size(f.require("length")),
                    size(f.require("width")))));
    cases.put(
        "box",
        group(
            f ->
                new NamedArea.Box(
                    f.require("from").extent(NOTHING, HEAD),
                    size(f.require("to")),
                    size(f.require("width")))));
    cases.put(
        "horseshoe",
        group(
            f ->
                new NamedArea.Horseshoe(
                    size(f.require("depth")), f.find("width").map(PatternReader::size))));
    cases.put("faceFrameStrip", group(f -> new NamedArea.FaceFrameStrip(size(f.require("width")))));
    cases.put("partLineStrip", group(f -> new NamedArea.PartLineStrip(size(f.require("width")))));
    return item.oneOf(cases, Optional.empty());
  }

  private static Function<Item, Optional<NamedArea>> group(Function<Fields, NamedArea> read) {
    return item -> {
      Fields fields = item.fields();
      NamedArea area = read.apply(fields);
      fields.close();
      return Optional.of(area);
    };
  }

  private static Extent size(Item item) {
    return item.extent(Length.ofMillimetres(1), HEAD);
  }

  // Shape

  private static SectionShape shape(Item item) {
    Map<String, SectionShape> plain = new LinkedHashMap<>();
    plain.put("horizontal", new SectionShape.Horizontal());
    plain.put("vertical", new SectionShape.Vertical());
    plain.put("across the fall", new SectionShape.AcrossFall());
    plain.put("along the fall", new SectionShape.AlongFall());
    if (!(item.node() instanceof Node.ObjectNode)) {
      return item.word(plain);
    }
    Map<String, Function<Item, SectionShape>> cases = new LinkedHashMap<>();
    cases.put("diagonal", PatternReader::diagonal);
    cases.put("V", PatternReader::v);
    cases.put("halo", PatternReader::halo);
    cases.put("pivot", PatternReader::pivot);
    return item.oneOf(cases, new SectionShape.Horizontal());
  }

  private static SectionShape diagonal(Item item) {
    Fields fields = item.fields();
    SectionShape shape =
        new SectionShape.Diagonal(
            degrees(fields.require("angle"), 0, 90),
            fields.require("lowerEnd").word(LowerEnd.values(), LowerEnd::words));
    fields.close();
    return shape;
  }

  private static SectionShape v(Item item) {
    Fields fields = item.fields();
    SectionShape shape =
        new SectionShape.V(
            degrees(fields.require("angle"), 0, 90),
            fields.require("apex").word(SectionShape.Apex.values(), SectionShape.Apex::words),
            fields
                .find("meetsOn")
                .map(
                    i -> i.word(SectionShape.MeetingLine.values(), SectionShape.MeetingLine::words))
                .orElse(SectionShape.MeetingLine.CENTRE_LINE));
    fields.close();
    return shape;
  }

  private static SectionShape halo(Item item) {
    Fields fields = item.fields();
    SectionShape shape =
        new SectionShape.Halo(
            boundary(fields.require("measuredFrom")),
            fields.find("from").map(i -> i.extent(NOTHING, HEAD)).orElse(Extent.zero()),
            fields.find("to").map(PatternReader::size));
    fields.close();
    return shape;
  }

  private static HaloBoundary boundary(Item item) {
    if (item.node() instanceof Node.TextNode text && text.text().startsWith("inner edge of ")) {
      return new HaloBoundary.InnerEdgeOf(item.part(text.text().substring(14)).name());
    }
    return new HaloBoundary.Line(
        item.word(HaloBoundary.HeadLine.values(), HaloBoundary.HeadLine::words));
  }

  private static SectionShape pivot(Item item) {
    Fields fields = item.fields();
    SectionShape shape =
        new SectionShape.Pivot(
            pivotPoint(fields.require("point")),
            fields
                .find("axis")
                .map(i -> i.word(SectionShape.Axis.values(), SectionShape.Axis::words))
                .orElse(SectionShape.Axis.SURFACE_NORMAL),
            degrees(fields.require("fromAngle"), -360, 360),
            degrees(fields.require("toAngle"), -360, 360),
            size(fields.require("radius")));
    fields.close();
    return shape;
  }

  private static PivotPoint pivotPoint(Item item) {
    if (item.node() instanceof Node.TextNode text) {
      Matcher along = ON_CENTRE_LINE.matcher(text.text().strip());
      if (along.matches()) {
        boolean aside = along.group(3) != null;
        return new PivotPoint.AlongCentreLine(
            item.part(along.group(1)).extent(NOTHING, HEAD),
            centreStart(along.group(2)),
            aside ? size(item.part(along.group(3))) : Extent.zero(),
            !aside ? Side.MIDDLE : along.group(4).equals("left") ? Side.LEFT : Side.RIGHT);
      }
    }
    return new PivotPoint.AtLandmark(item.word(Landmark.values(), Landmark::words));
  }

  // Fill

  private static Fill fill(Item item) {
    Fields fields = item.fields();
    Optional<Item> slices = fields.find("slices");
    Fill fill =
        new Fill(
            slices.isPresent()
                ? OptionalInt.of(slices.get().wholeNumber(1, 200))
                : OptionalInt.empty(),
            fields.find("offset").map(i -> i.extent(NOTHING, HEAD)).orElse(Extent.zero()),
            run(fields.require("slice"), HALF_A_MILLIMETRE, COMB),
            background(fields.require("background")),
            fields
                .find("remainder")
                .map(i -> i.word(Remainder.values(), Remainder::words))
                .orElse(Remainder.LEAVE),
            picks(fields.require("picks")),
            fields.find("foils").map(PatternReader::foils).orElse(new FoilRule.Evenly()),
            fields.find("shortEnds").map(PatternReader::shortEnds).orElse(ShortEnds.USUAL),
            fields
                .find("mix")
                .map(PatternReader::mix)
                .filter(m -> !m.isEmpty())
                .orElse(List.of(MixSlot.A)),
            fields
                .find("startFromScalp")
                .map(i -> i.quantity(Kind.LENGTH, NOTHING, HEAD))
                .orElse(NOTHING));
    fields.close();
    return fill;
  }

  private static List<MixSlot> mix(Item item) {
    return item.oneOrMore().stream().map(i -> i.word(MixSlot.values(), MixSlot::name)).toList();
  }

  private static Run run(Item item, Length least, Length most) {
    List<Extent> ends = item.run(least, most);
    return new Run(ends.get(0), ends.get(1));
  }

  private static Background background(Item item) {
    if (item.node() instanceof Node.TextNode text && text.text().strip().equals("none")) {
      return new Background.None();
    }
    if (!(item.node() instanceof Node.ObjectNode)) {
      return new Background.Even(run(item, NOTHING, HAND));
    }
    Fields fields = item.fields();
    Background wedge =
        new Background.Wedge(
            run(fields.require("wedge"), HALF_A_MILLIMETRE, HAND),
            fields.require("wideEnd").word(WideEnd.values(), WideEnd::words),
            fields
                .find("points")
                .map(i -> i.word(Background.Points.values(), Background.Points::words))
                .orElse(Background.Points.SAME_END));
    fields.close();
    return wedge;
  }

  private static List<Pick> picks(Item item) {
    List<Pick> picks = item.oneOrMore().stream().map(PatternReader::pick).toList();
    return picks.isEmpty() ? List.of(new Pick.Solid()) : picks;
  }

  private static Pick pick(Item item) {
    if (!(item.node() instanceof Node.ObjectNode)) {
      return item.word(Map.of("solid", new Pick.Solid()));
    }
    Map<String, Function<Item, Pick>> cases = new LinkedHashMap<>();
    cases.put("weave", i -> taking(i, "pick", Pick.Weave::new));
    cases.put("zigzag", i -> taking(i, "tooth", Pick.Zigzag::new));
    return item.oneOf(cases, new Pick.Solid());
  }

  private interface Taking {
    Pick of(Length width, Length gap, PickDepth depth);
  }

  private static Pick taking(Item item, String width, Taking taking) {
    Fields fields = item.fields();
    Pick pick =
        taking.of(
            fields.require(width).quantity(Kind.LENGTH, HALF_A_MILLIMETRE, COMB),
            fields.require("gap").quantity(Kind.LENGTH, HALF_A_MILLIMETRE, HAND),
            fields.find("depth").map(PatternReader::depth).orElse(PickDepth.whole()));
    fields.close();
    return pick;
  }

  private static PickDepth depth(Item item) {
    if (item.node() instanceof Node.TextNode text && text.text().contains("%")) {
      return new PickDepth.OfSlice(
          item.quantity(Kind.SHARE, Share.ofPercent(1), Share.ofPercent(100)));
    }
    return new PickDepth.OfLength(item.quantity(Kind.LENGTH, HALF_A_MILLIMETRE, COMB));
  }

  private static FoilRule foils(Item item) {
    if (item.isNumber()) {
      return new FoilRule.Count(item.wholeNumber(1, 12));
    }
    Map<String, FoilRule> words = new LinkedHashMap<>();
    words.put("evenly", new FoilRule.Evenly());
    words.put("one, centred", new FoilRule.OneCentred());
    return item.word(words);
  }

  private static ShortEnds shortEnds(Item item) {
    Fields fields = item.fields();
    ShortEnds ends =
        new ShortEnds(
            fields.require("rule").word(ShortEnds.Rule.values(), ShortEnds.Rule::words),
            fields.require("below").quantity(Kind.LENGTH, NOTHING, HAND));
    fields.close();
    return ends;
  }
}
