package foilwright.app;

import foilwright.geometry.Vector3;
import foilwright.hair.HairNature;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.head.Tape;
import foilwright.placement.Find;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.service.AppointmentEstimate;
import foilwright.service.Caution;
import foilwright.service.PlacingTime;
import foilwright.service.ProductEntry;
import foilwright.service.SafetyQuestion;
import foilwright.service.ThreePoint;
import foilwright.service.TimeEstimate;
import foilwright.units.Length;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A plan as a tree of groups, lists, texts and numbers, for other programs.
 *
 * <p>Every key names its unit: Mm, Mm2, Deg, Grams, Minutes, Share (a fraction of 1). Lengths are
 * rounded to 0.001 mm, areas to 0.01 mm2, angles to 0.001 deg, masses to 0.0001 g, times to 0.001
 * min, shares to 0.000001, hairs to 0.01. What is unknown is left out, never written as nought.
 */
final class PlanTree {
  static final String FORMAT = "foilwright plan 1";

  private PlanTree() {}

  /** A group in the order of writing. */
  private static final class Group {
    private final Map<String, Object> members = new LinkedHashMap<>();

    Group put(String key, Object value) {
      members.put(key, value);
      return this;
    }

    Group mm(String key, Length length) {
      return number(key, length.toMillimetres(), 3);
    }

    Group minutes(String key, Minutes time) {
      return number(key, time.toMinutes(), 3);
    }

    Group share(String key, Share share) {
      return number(key, share.toFraction(), 6);
    }

    Group number(String key, double value, int decimals) {
      return put(key, rounded(value, decimals));
    }
  }

  private static BigDecimal rounded(double value, int decimals) {
    BigDecimal number = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    return number.signum() == 0 ? BigDecimal.ZERO : number.stripTrailingZeros();
  }

  static Map<String, Object> of(Plan plan) {
    Group tree = new Group().put("format", FORMAT);
    tree.put("pattern", pattern(plan));
    tree.put("guest", guest(plan));
    tree.put("head", head(plan.head()));
    tree.put("house", house(plan));
    tree.put("totals", totals(plan));
    tree.put("sections", plan.sections().stream().map(PlanTree::section).toList());
    tree.put("zones", plan.zones().stream().map(PlanTree::zone).toList());
    List<Object> foils = new ArrayList<>();
    for (int i = 0; i < plan.placement().foils().size(); i++) {
      foils.add(foil(plan.placement().foils().get(i), plan.placing().get(0).foils().get(i)));
    }
    tree.put("foils", foils);
    plan.visit().ifPresent(visit -> tree.put("visit", visit(visit)));
    List<String> cautions = new ArrayList<>();
    for (Caution caution : Caution.values()) {
      cautions.add(caution.text());
    }
    tree.put("cautions", cautions);
    tree.put("problems", plan.problems().stream().map(PlanTree::problem).toList());
    return tree.members;
  }

  private static Map<String, Object> pattern(Plan plan) {
    return new Group()
        .put("title", plan.pattern().title())
        .put("summary", plan.pattern().summary())
        .put("order", plan.pattern().order().words())
        .members;
  }

  private static Map<String, Object> guest(Plan plan) {
    Group guest = new Group();
    plan.guest().number().ifPresent(number -> guest.put("number", number));
    guest.put("hair", hair(plan.guest().hair()));
    Group tests = new Group();
    plan.guest()
        .tests()
        .answers()
        .forEach(
            (question, answer) -> {
              Group written = new Group().put("answer", answer.text());
              answer.result().ifPresent(result -> written.put("result", question.word(result)));
              answer.date().ifPresent(date -> written.put("date", date));
              tests.put(question.key(), written.members);
            });
    guest.put("tests", tests.members);
    guest.put("missing", plan.guest().tests().missing().stream().map(SafetyQuestion::key).toList());
    return guest.members;
  }

  private static Map<String, Object> hair(HairProfile hair) {
    Group group = new Group();
    group.number("densityPerCm2", hair.density().toHairsPerSquareCentimetre(), 2);
    Group factors = new Group();
    hair.zoneFactors().forEach((zone, factor) -> factors.number(zone.words(), factor, 4));
    group.put("zoneFactors", factors.members);
    group.number("diameterMm", hair.diameter().toMillimetres(), 5);
    putNature(group, hair.nature());
    Group zones = new Group();
    hair.zoneNatures()
        .forEach((zone, nature) -> zones.put(zone.words(), putNature(new Group(), nature).members));
    group.put("zones", zones.members);
    Group lengths = new Group();
    hair.lengths().byZone().forEach((zone, length) -> lengths.mm(zone.words(), length));
    group.put("lengthsMm", lengths.members);
    Group old = new Group();
    hair.oldLightener()
        .forEach(
            (zone, lightener) ->
                old.put(
                    zone.words(),
                    new Group()
                        .share("share", lightener.share())
                        .mm("fromScalpMm", lightener.fromScalp())
                        .members));
    group.put("oldLightener", old.members);
    hair.cut().ifPresent(cut -> group.put("cutNotComputed", cut));
    return group.members;
  }

  private static Group putNature(Group group, HairNature nature) {
    nature.level().ifPresent(level -> group.put("level", level.number()));
    nature.fineness().ifPresent(fineness -> group.put("fineness", fineness.words()));
    nature.porosity().ifPresent(porosity -> group.put("porosity", porosity.words()));
    return group;
  }

  private static Map<String, Object> head(Head head) {
    Group group = new Group().put("kind", head.kind().words());
    Group tapes = new Group();
    for (Tape tape : Tape.values()) {
      tapes.put(
          tape.key(),
          new Group()
              .mm("mm", head.reading(tape))
              .put("measured", tape.in(head.tapes()).isPresent())
              .members);
    }
    group.put("tapes", tapes.members);
    group.mm("recessionMm", head.hairlineSettings().recessionDepth());
    group.put("nape", head.hairlineSettings().nape().words());
    group.put("part", head.part().side().words());
    head.partLine().ifPresent(line -> group.mm("partFromCentreMm", partDistance(head)));
    return group.members;
  }

  private static Length partDistance(Head head) {
    return switch (head.part().side()) {
      case LEFT, RIGHT -> head.part().fromCentre();
      case CENTRE, NONE -> Length.ZERO;
    };
  }

  private static Map<String, Object> house(Plan plan) {
    Group products = new Group();
    plan.house().products().forEach((slot, product) -> products.put(slot, product(product)));
    return new Group()
        .put("name", plan.house().name())
        .put("pace", plan.house().pace().name())
        .put("paceBasis", plan.house().pace().basis())
        .put(
            "foil",
            new Group()
                .put("name", plan.house().foil().name())
                .mm("widthMm", plan.house().foil().width())
                .mm("usableWidthMm", plan.house().foil().usableWidth())
                .mm("lengthMm", plan.house().foil().length())
                .members)
        .put("slots", products.members)
        .members;
  }

  private static Map<String, Object> product(ProductEntry product) {
    return new Group()
        .put("name", product.name())
        .put("kind", product.kind().words())
        .number("productParts", product.ratio().product(), 4)
        .number("developerParts", product.ratio().developer(), 4)
        .share("developerShare", product.developerStrength())
        .minutes("leastMinutes", product.window().least())
        .minutes("mostMinutes", product.window().most())
        .minutes("bowlLifeMinutes", product.bowlLife())
        .put("makersSheetOnFile", product.makersSheetOnFile())
        .members;
  }

  private static Map<String, Object> totals(Plan plan) {
    Plan.Totals totals = plan.totals();
    Group paces = new Group();
    for (PlacingTime time : plan.placing()) {
      paces.put(time.pace().name(), time(time.total()));
    }
    return new Group()
        .put("foils", totals.foils())
        .number("scalpAreaMm2", totals.scalp().toSquareMillimetres(), 2)
        .number("hairs", totals.hairs(), 2)
        .number("pickedHairs", totals.pickedHairs(), 2)
        .share("lightenedShare", totals.lightenedShare())
        .number("hairGrams", totals.hair().toGrams(), 4)
        .mm("meanHairLengthMm", totals.meanLength())
        .put("placingMinutes", time(plan.placingTime()))
        .put("placingMinutesByPace", paces.members)
        .members;
  }

  private static Map<String, Object> time(TimeEstimate time) {
    return new Group()
        .minutes("quick", time.quick())
        .minutes("usual", time.usual())
        .minutes("slow", time.slow())
        .minutes("mean", time.mean())
        .minutes("sd", time.deviation())
        .minutes("p50", time.p50())
        .minutes("p90", time.p90())
        .members;
  }

  private static Map<String, Object> section(Plan.SectionFigures figures) {
    PlacedSection placed = figures.placed();
    PlacedSection.Figures sums = placed.figures();
    return new Group()
        .put("name", placed.name())
        .put("shape", placed.shape())
        .put("foils", placed.foils().size())
        .number("areaMm2", sums.area().toSquareMillimetres(), 2)
        .number("hairs", sums.hairs(), 2)
        .number("pickedHairs", sums.pickedHairs(), 2)
        .share("lightenedShare", sums.lightenedShare())
        .number("hairGrams", figures.hair().toGrams(), 4)
        .put("placingMinutes", time(figures.placing()))
        .put("remainder", placed.remainderWords())
        .members;
  }

  private static Map<String, Object> zone(Plan.ZoneFigures zone) {
    return new Group()
        .put("name", zone.zone().words())
        .put("foils", zone.foils())
        .number("areaMm2", zone.area().toSquareMillimetres(), 2)
        .number("hairs", zone.hairs(), 2)
        .number("pickedHairs", zone.pickedHairs(), 2)
        .share("lightenedShare", zone.lightenedShare())
        .members;
  }

  /** One foil; also one row of the table. */
  static Map<String, Object> foil(PlacedFoil foil, ThreePoint placing) {
    Group group =
        new Group()
            .put("number", foil.number())
            .put("section", foil.section())
            .put("row", foil.row())
            .put("inRow", foil.inRow())
            .put("side", foil.side().words())
            .put("zone", foil.zone().words())
            .put("shape", foil.shape())
            .put("mix", foil.mix())
            .number("partingAngleDeg", foil.partingAngle().toDegrees(), 3);
    foil.lowerEnd().ifPresent(end -> group.put("lowerEnd", end));
    Length slice = foil.sliceAtStart().plus(foil.sliceAtEnd()).times(0.5);
    return group
        .mm("widthMm", foil.width())
        .mm("sliceMm", slice)
        .mm("sliceAtStartMm", foil.sliceAtStart())
        .mm("sliceAtEndMm", foil.sliceAtEnd())
        .mm("backgroundMm", foil.backgroundBefore())
        .number("areaMm2", foil.area().toSquareMillimetres(), 2)
        .share("pickedShare", foil.pickedShare())
        .number("picks", foil.picks(), 2)
        .number("hairs", foil.hairs(), 2)
        .number("pickedHairs", foil.pickedHairs(), 2)
        .number("hairGrams", foil.hair().toGrams(), 4)
        .mm("hairLengthMm", foil.hairLength())
        .mm("startFromScalpMm", foil.startFromScalp())
        .minutes("placingMinutes", placing.mean())
        .put("find", find(foil.centreFind()))
        .put("findStart", find(foil.startFind()))
        .put("findEnd", find(foil.endFind()))
        .put("centreMm", point(foil.centre()))
        .members;
  }

  private static Map<String, Object> find(Find find) {
    return new Group()
        .mm("fromHairlineMm", find.fromHairline())
        .mm("fromCentreMm", find.fromCentre())
        .put("words", find.words())
        .members;
  }

  private static List<Object> point(Vector3 point) {
    return List.of(rounded(point.x(), 3), rounded(point.y(), 3), rounded(point.z(), 3));
  }

  private static Map<String, Object> visit(AppointmentEstimate visit) {
    Group bowls = new Group();
    visit.bowls().forEach(bowls::put);
    return new Group()
        .put("minutes", time(visit.total()))
        .put("bowls", bowls.members)
        .put(
            "blocks",
            visit.blocks().stream()
                .map(
                    block ->
                        new Group()
                            .put("name", block.phase().words())
                            .put("hands", block.phase().hands())
                            .put("minutes", time(block.time()))
                            .members)
                .toList())
        .members;
  }

  private static Map<String, Object> problem(FoundProblem found) {
    Group group =
        new Group()
            .put("code", found.problem().code())
            .put("severity", found.problem().severity().name().toLowerCase(Locale.ROOT));
    if (!found.document().isEmpty()) {
      group.put("document", found.document());
    }
    if (found.line() > 0) {
      group.put("line", found.line()).put("column", found.column());
    }
    if (!found.problem().path().isEmpty()) {
      group.put("path", found.problem().path());
    }
    group.put("message", found.problem().message()).put("cure", found.problem().cure());
    found.problem().place().ifPresent(place -> group.put("placeMm", point(place)));
    return group.members;
  }
}
