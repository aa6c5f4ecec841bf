package foilwright.document;

import foilwright.anatomy.Side;
import foilwright.anatomy.Zone;
import foilwright.pattern.Background;
import foilwright.pattern.EarLineSide;
import foilwright.pattern.Extent;
import foilwright.pattern.Fill;
import foilwright.pattern.FoilPlace;
import foilwright.pattern.HaloBoundary;
import foilwright.pattern.HeightBound;
import foilwright.pattern.KeptCover;
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
import foilwright.pattern.WorkingOrder;
import foilwright.units.Angle;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Patterns to documents; what has its usual value is left out. */
final class PatternWriter {
  private PatternWriter() {}

  static Map<String, Object> write(Pattern pattern) {
    return new Json.Group()
        .put("format", Format.PATTERN.text())
        .put("title", pattern.title())
        .putIf(!pattern.summary().isEmpty(), "summary", pattern.summary())
        .putIf(pattern.order() != WorkingOrder.SECTION_BY_SECTION, "order", pattern.order().words())
        .put("sections", pattern.sections().stream().map(PatternWriter::section).toList())
        .toMap();
  }

  private static Map<String, Object> section(Section section) {
    Json.Group group =
        new Json.Group()
            .put("name", section.name())
            .putIf(!section.why().isEmpty(), "why", section.why());
    Map<String, Object> region = region(section.region());
    group
        .putIf(!region.isEmpty(), "region", region)
        .put("shape", shape(section.shape()))
        .putIf(section.from() != TravelFrom.START, "from", section.from().words())
        .putIf(section.seen() != ViewedFrom.AUTO, "seen", section.seen().words())
        .putIf(!section.turned().equals(Angle.ZERO), "turned", Kind.ANGLE.write(section.turned()));
    section
        .zigzagParting()
        .ifPresent(
            z ->
                group.put(
                    "zigzagParting",
                    new Json.Group()
                        .put("toothDepth", Kind.LENGTH.write(z.toothDepth()))
                        .put("toothWidth", Kind.LENGTH.write(z.toothWidth()))
                        .toMap()));
    return group
        .putIf(section.brickLay(), "brickLay", true)
        .putIf(
            !section.keptCover().equals(KeptCover.NONE),
            "keptCover",
            keptCover(section.keptCover()))
        .put("fill", fill(section.fill()))
        .putIf(section.mirror(), "mirror", true)
        .putIf(
            !section.leaveOut().isEmpty(),
            "leaveOut",
            section.leaveOut().stream().map(FoilPlace::text).toList())
        .toMap();
  }

  private static Map<String, Object> keptCover(KeptCover cover) {
    Json.Group group = new Json.Group();
    cover.atHairline().ifPresent(e -> group.put("atHairline", e.text()));
    cover.atPart().ifPresent(e -> group.put("atPart", e.text()));
    cover.overFringe().ifPresent(e -> group.put("overFringe", e.text()));
    return group.toMap();
  }

  private static Map<String, Object> region(RegionSpec region) {
    Json.Group group = new Json.Group();
    group.putIf(
        !region.zones().isEmpty(), "zones", region.zones().stream().map(Zone::words).toList());
    group.putIf(region.side() != RegionSide.BOTH, "side", region.side().words());
    region.insetFromHairline().ifPresent(e -> group.put("insetFromHairline", e.text()));
    region.insetFromPart().ifPresent(e -> group.put("insetFromPart", e.text()));
    group.putIf(!region.above().isEmpty(), "above", heights(region.above()));
    group.putIf(!region.below().isEmpty(), "below", heights(region.below()));
    group.putIf(region.earLine() == EarLineSide.IN_FRONT, "inFrontOf", "ear line");
    group.putIf(region.earLine() == EarLineSide.BEHIND, "behind", "ear line");
    region.within().ifPresent(a -> group.put("within", area(a)));
    region.between().ifPresent(b -> group.put("between", List.of(b.first(), b.second())));
    region.inside().ifPresent(name -> group.put("inside", name));
    group.putIf(!region.except().isEmpty(), "except", oneOrMore(region.except()));
    return group.toMap();
  }

  private static Object oneOrMore(List<?> values) {
    return values.size() == 1 ? values.get(0) : values;
  }

  private static Object heights(List<HeightBound> bounds) {
    return oneOrMore(bounds.stream().map(PatternWriter::height).toList());
  }

  private static String height(HeightBound bound) {
    return bound.match(
        e -> Kind.ANGLE.write(e.elevation()) + " of normal elevation",
        l -> l.landmark().words(),
        c -> c.distance().text() + " along the centre line from the " + c.from().words(),
        s -> "start of " + s.section(),
        e -> "end of " + e.section());
  }

  private static Map<String, Object> area(NamedArea area) {
    return area.match(
        a ->
            Json.single(
                "triangle",
                new Json.Group()
                    .put("base", a.baseWidth().text())
                    .put("depth", a.depth().text())
                    .toMap()),
        a ->
            Json.single(
                "diamond",
                new Json.Group()
                    .put("centre", a.centre().text())
                    .put("length", a.length().text())
                    .put("width", a.width().text())
                    .toMap()),
        a ->
            Json.single(
                "box",
                new Json.Group()
                    .put("from", a.from().text())
                    .put("to", a.to().text())
                    .put("width", a.width().text())
                    .toMap()),
        a -> {
          Json.Group group = new Json.Group().put("depth", a.depth().text());
          a.width().ifPresent(w -> group.put("width", w.text()));
          return Json.single("horseshoe", group.toMap());
        },
        a -> Json.single("faceFrameStrip", Json.single("width", a.width().text())),
        a -> Json.single("partLineStrip", Json.single("width", a.width().text())));
  }

  private static Object shape(SectionShape shape) {
    return shape.match(
        new SectionShape.Cases<Object>() {
          @Override
          public Object horizontal(SectionShape.Horizontal s) {
            return "horizontal";
          }

          @Override
          public Object diagonal(SectionShape.Diagonal s) {
            return Json.single(
                "diagonal",
                new Json.Group()
                    .put("angle", Kind.ANGLE.write(s.angle()))
                    .put("lowerEnd", s.lowerEnd().words())
                    .toMap());
          }

          @Override
          public Object vertical(SectionShape.Vertical s) {
            return "vertical";
          }

          @Override
          public Object v(SectionShape.V s) {
            return Json.single(
                "V",
                new Json.Group()
                    .put("angle", Kind.ANGLE.write(s.angle()))
                    .put("apex", s.apex().words())
                    .putIf(
                        s.meetingLine() != SectionShape.MeetingLine.CENTRE_LINE,
                        "meetsOn",
                        s.meetingLine().words())
                    .toMap());
          }

          @Override
          public Object halo(SectionShape.Halo s) {
            Json.Group group =
                new Json.Group()
                    .put("measuredFrom", boundary(s.measuredFrom()))
                    .putIf(!s.from().equals(Extent.zero()), "from", s.from().text());
            s.to().ifPresent(to -> group.put("to", to.text()));
            return Json.single("halo", group.toMap());
          }

          @Override
          public Object pivot(SectionShape.Pivot s) {
            return Json.single(
                "pivot",
                new Json.Group()
                    .put("point", point(s.point()))
                    .putIf(s.axis() != SectionShape.Axis.SURFACE_NORMAL, "axis", s.axis().words())
                    .put("fromAngle", Kind.ANGLE.write(s.fromAngle()))
                    .put("toAngle", Kind.ANGLE.write(s.toAngle()))
                    .put("radius", s.radius().text())
                    .toMap());
          }

          @Override
          public Object acrossFall(SectionShape.AcrossFall s) {
            return "across the fall";
          }

          @Override
          public Object alongFall(SectionShape.AlongFall s) {
            return "along the fall";
          }
        });
  }

  private static String boundary(HaloBoundary boundary) {
    return boundary.match(l -> l.line().words(), e -> "inner edge of " + e.section());
  }

  private static String point(PivotPoint point) {
    return point.match(
        l -> l.landmark().words(),
        c ->
            c.distance().text()
                + " along the centre line from the "
                + c.from().words()
                + (c.side() == Side.MIDDLE
                    ? ""
                    : ", " + c.aside().text() + " to the " + c.side().words()));
  }

  private static Map<String, Object> fill(Fill fill) {
    Json.Group group = new Json.Group();
    fill.slices().ifPresent(count -> group.put("slices", count));
    return group
        .putIf(!fill.offset().equals(Extent.zero()), "offset", fill.offset().text())
        .put("slice", run(fill.slice()))
        .put("background", background(fill.background()))
        .putIf(fill.remainder() != Remainder.LEAVE, "remainder", fill.remainder().words())
        .put("picks", oneOrMore(fill.picks().stream().map(PatternWriter::pick).toList()))
        .put(
            "foils", fill.foils().<Object>match(e -> "evenly", o -> "one, centred", c -> c.foils()))
        .putIf(
            !fill.shortEnds().equals(ShortEnds.USUAL),
            "shortEnds",
            new Json.Group()
                .put("rule", fill.shortEnds().rule().words())
                .put("below", Kind.LENGTH.write(fill.shortEnds().minimum()))
                .toMap())
        .put("mix", oneOrMore(fill.mix().stream().map(MixSlot::name).toList()))
        .putIf(
            !fill.startFromScalp().equals(Length.ZERO),
            "startFromScalp",
            Kind.LENGTH.write(fill.startFromScalp()))
        .toMap();
  }

  private static String run(Run run) {
    return run.isEven() ? run.first().text() : run.first().text() + " to " + run.last().text();
  }

  private static Object background(Background background) {
    return background.match(
        e -> run(e.width()),
        w ->
            new Json.Group()
                .put("wedge", run(w.width()))
                .put("wideEnd", w.wideEnd().words())
                .put("points", w.points().words())
                .toMap(),
        n -> "none");
  }

  private static Object pick(Pick pick) {
    return pick.match(
        s -> "solid",
        w -> Json.single("weave", taking("pick", w.pick(), w.gap(), w.depth())),
        z -> Json.single("zigzag", taking("tooth", z.tooth(), z.gap(), z.depth())));
  }

  private static Map<String, Object> taking(String key, Length width, Length gap, PickDepth depth) {
    List<String> deep = new ArrayList<>();
    if (!depth.equals(PickDepth.whole())) {
      deep.add(depth.match(l -> Kind.LENGTH.write(l.length()), s -> Kind.SHARE.write(s.share())));
    }
    Json.Group group =
        new Json.Group().put(key, Kind.LENGTH.write(width)).put("gap", Kind.LENGTH.write(gap));
    deep.forEach(text -> group.put("depth", text));
    return group.toMap();
  }
}
