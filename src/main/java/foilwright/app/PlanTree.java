package foilwright.app;

import foilwright.geometry.Vector3;
import foilwright.hair.HairNature;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.head.Tape;
import foilwright.placement.Find;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.service.Caution;
import foilwright.service.PlacingTime;
import foilwright.service.ProductEntry;
import foilwright.service.SafetyQuestion;
import foilwright.service.ThreePoint;
import foilwright.service.TimeEstimate;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

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
    Map<Integer, FoilClock> clocks = FoilClock.byNumber(plan);
    for (int i = 0; i < plan.placement().foils().size(); i++) {
      foils.add(foil(plan, i, clocks));
    }
    tree.put("foils", foils);
    plan.times().ifPresent(times -> tree.put("times", TimesTree.of(times)));
    tree.put("lift", TimesTree.lift(plan.lift()));
    plan.regrowth().ifPresent(r -> tree.put("regrowth", TimesTree.regrowth(r)));
    plan.rebooking().ifPresent(r -> tree.put("rebooking", TimesTree.rebooking(r)));
    plan.order().ifPresent(o -> tree.put("orderSearch", TimesTree.order(o)));
    plan.trimmed().ifPresent(t -> tree.put("trimmed", TimesTree.trimmed(t)));
    List<String> cautions = new ArrayList<>();
    for (Caution caution : Caution.values()) {
      cautions.add(caution.text());
    }
    tree.put("cautions", cautions);
    tree.put("problems", plan.problems().stream().map(PlanTree::problem).toList());
    return tree.members();
  }

  private static Map<String, Object> pattern(Plan plan) {
    return new Group()
        .put("title", plan.pattern().title())
        .put("summary", plan.pattern().summary())
        .put("order", plan.pattern().order().words())
        .members();
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
              tests.put(question.key(), written.members());
            });
    guest.put("tests", tests.members());
    guest.put("missing", plan.guest().tests().missing().stream().map(SafetyQuestion::key).toList());
    return guest.members();
  }

  private static Map<String, Object> hair(HairProfile hair) {
    Group group = new Group();
    group.number("densityPerCm2", hair.density().toHairsPerSquareCentimetre(), 2);
    Group factors = new Group();
    hair.zoneFactors().forEach((zone, factor) -> factors.number(zone.words(), factor, 4));
    group.put("zoneFactors", factors.members());
    group.number("diameterMm", hair.diameter().toMillimetres(), 5);
    putNature(group, hair.nature());
    Group zones = new Group();
    hair.zoneNatures()
        .forEach(
            (zone, nature) -> zones.put(zone.words(), putNature(new Group(), nature).members()));
    group.put("zones", zones.members());
    Group lengths = new Group();
    hair.lengths().byZone().forEach((zone, length) -> lengths.mm(zone.words(), length));
    group.put("lengthsMm", lengths.members());
    Group old = new Group();
    hair.oldLightener()
        .forEach(
            (zone, lightener) ->
                old.put(
                    zone.words(),
                    new Group()
                        .share("share", lightener.share())
                        .mm("fromScalpMm", lightener.fromScalp())
                        .members()));
    group.put("oldLightener", old.members());
    hair.cut().ifPresent(cut -> group.put("cut", cut.name()));
    return group.members();
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
              .members());
    }
    group.put("tapes", tapes.members());
    group.mm("recessionMm", head.hairlineSettings().recessionDepth());
    group.put("nape", head.hairlineSettings().nape().words());
    group.put("part", head.part().side().words());
    head.partLine().ifPresent(line -> group.mm("partFromCentreMm", partDistance(head)));
    return group.members();
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
                .members())
        .put("slots", products.members())
        .members();
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
        .members();
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
        .put("placingMinutesByPace", paces.members())
        .members();
  }

  static Map<String, Object> time(TimeEstimate time) {
    return new Group()
        .minutes("quick", time.quick())
        .minutes("usual", time.usual())
        .minutes("slow", time.slow())
        .minutes("mean", time.mean())
        .minutes("sd", time.deviation())
        .minutes("p50", time.p50())
        .minutes("p90", time.p90())
        .members();
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
        .members();
  }

  private static Map<String, Object> zone(Plan.ZoneFigures zone) {
    return new Group()
        .put("name", zone.zone().words())
        .put("foils", zone.foils())
        .number("areaMm2", zone.area().toSquareMillimetres(), 2)
        .number("hairs", zone.hairs(), 2)
        .number("pickedHairs", zone.pickedHairs(), 2)
        .share("lightenedShare", zone.lightenedShare())
        .members();
  }

  /** One foil; also one row of the table. */
  static Map<String, Object> foil(Plan plan, int index, Map<Integer, FoilClock> clocks) {
    PlacedFoil foil = plan.placement().foils().get(index);
    ThreePoint placing = plan.placing().get(0).foils().get(index);
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
    Optional.ofNullable(clocks.get(foil.number()))
        .ifPresent(
            clock -> {
              group.number("mixGrams", clock.mixed().toGrams(), 3);
              group.put("bowl", clock.bowl());
              group.put("clock", TimesTree.clock(clock));
            });
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
        .members();
  }

  private static Map<String, Object> find(Find find) {
    return new Group()
        .mm("fromHairlineMm", find.fromHairline())
        .mm("fromCentreMm", find.fromCentre())
        .put("words", find.words())
        .members();
  }

  private static List<Object> point(Vector3 point) {
    return List.of(
        Group.rounded(point.x(), 3), Group.rounded(point.y(), 3), Group.rounded(point.z(), 3));
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
    return group.members();
  }
}
