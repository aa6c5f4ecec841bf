package foilwright.app;

import foilwright.anatomy.Zone;
import foilwright.document.GuestDocument;
import foilwright.document.HouseDocument;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.hair.Haircut;
import foilwright.head.Head;
import foilwright.head.TapeMeasurements;
import foilwright.pattern.MixSlot;
import foilwright.pattern.Pattern;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import foilwright.service.AlertTest;
import foilwright.service.PaceProfile;
import foilwright.service.PlacingTime;
import foilwright.service.ProductEntry;
import foilwright.service.visit.Growth;
import foilwright.service.visit.Rebooking;
import foilwright.service.visit.Regrowth;
import foilwright.service.visit.Visit;
import foilwright.units.Area;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** Makes plans: pattern, guest and house to foils on a head, times and figures. */
public final class Planning {
  /** The house that is used when none is named. */
  public static final String USUAL_HOUSE = "practice-room";

  private final Workspace workspace;
  private final Found<Pattern> pattern;

  /** The pattern as it would be after a change that is not saved, where it is tried. */
  private final Optional<Pattern> changed;

  private final Optional<Found<GuestDocument>> guest;
  private final Found<HouseDocument> house;

  /** What lies on the guest's head since the last visit, as far as it can be read. */
  private final Optional<Pattern> last;

  private final PlanRequest request;
  private final Consumer<String> progress;
  private final List<FoundProblem> problems = new ArrayList<>();

  private final Consumer<Head> whenMeasured;

  private Planning(
      Workspace workspace,
      PlanRequest request,
      Consumer<String> progress,
      Consumer<Head> whenMeasured,
      Optional<UnaryOperator<Pattern>> change) {
    this.workspace = workspace;
    this.request = request;
    this.progress = progress;
    this.whenMeasured = whenMeasured;
    progress.accept("reading the documents");
    pattern = workspace.pattern(request.pattern());
    changed = change.flatMap(its -> pattern.value().map(its));
    guest = request.guest().map(workspace::guest);
    house = workspace.house(request.house().orElse(USUAL_HOUSE));
    last =
        guest
            .flatMap(Found::value)
            .flatMap(person -> person.history().pattern())
            .flatMap(workspace::findPattern);
  }

  /**
   * Makes a plan.
   *
   * @param progress is told each step as it begins
   */
  public static PlanOutcome plan(
      Workspace workspace, PlanRequest request, Consumer<String> progress) {
    return plan(workspace, request, progress, head -> {});
  }

  /**
   * Makes a plan.
   *
   * @param progress is told each step as it begins
   * @param whenMeasured is given the head as soon as it is known, so that drawing it can begin
   */
  public static PlanOutcome plan(
      Workspace workspace,
      PlanRequest request,
      Consumer<String> progress,
      Consumer<Head> whenMeasured) {
    return new Planning(workspace, request, progress, whenMeasured, Optional.empty()).kept();
  }

  /**
   * Makes a plan of a pattern as it would be after a change that is not saved.
   *
   * @param progress is told each step as it begins
   * @param whenMeasured is given the head as soon as it is known, so that drawing it can begin
   * @param change what is done to the pattern
   */
  public static PlanOutcome plan(
      Workspace workspace,
      PlanRequest request,
      Consumer<String> progress,
      Consumer<Head> whenMeasured,
      UnaryOperator<Pattern> change) {
    return new Planning(workspace, request, progress, whenMeasured, Optional.of(change)).kept();
  }

  /** What was made of the very same before, else a new plan. */
  private PlanOutcome kept() {
    return workspace
        .plans()
        .plan(
            new KeptPlans.Made(request, pattern, changed, guest, house, last),
            () -> {
              Optional<Plan> plan = plan();
              return new PlanOutcome(plan, problems, unreachable());
            });
  }

  private boolean unreachable() {
    return pattern.unreachable()
        || guest.map(Found::unreachable).orElse(false)
        || house.unreachable();
  }

  private Optional<Plan> plan() {
    problems.addAll(pattern.problems());
    guest.ifPresent(g -> problems.addAll(g.problems()));
    problems.addAll(house.problems());
    Optional<GuestDocument> person =
        guest.isPresent() ? guest.get().value() : Optional.of(Nobody.GUEST);
    if (pattern.value().isEmpty() || person.isEmpty() || house.value().isEmpty()) {
      return Optional.empty();
    }
    HouseDocument room = house.value().get();
    Optional<PaceProfile> pace = pace(room);
    progress.accept("measuring the head");
    Optional<Head> head = head(person.get(), room);
    if (pace.isEmpty() || head.isEmpty()) {
      return Optional.empty();
    }
    whenMeasured.accept(head.get());
    PlannedGuest planned =
        new PlannedGuest(
            guest.map(g -> person.get().number()),
            person.get().hair(),
            person.get().tests(),
            person.get().wish());
    noteAssumptions(planned);
    PlannedHouse with = PlannedHouse.of(room, pace.get());
    return Optional.of(
        lay(
            changed.or(pattern::value).orElseThrow(),
            planned,
            with,
            room,
            head.get(),
            person.get().history()));
  }

  private Optional<PaceProfile> pace(HouseDocument room) {
    if (request.pace().isEmpty()) {
      return Optional.of(room.paces().get(0));
    }
    String wanted = request.pace().get();
    Optional<PaceProfile> pace = room.findPace(wanted);
    if (pace.isEmpty()) {
      problems.add(
          house.locate(
              Problem.error(
                  "no-such-pace",
                  "paces",
                  "the house has no pace profile called \"" + wanted + "\"",
                  "name one of: "
                      + room.paces().stream()
                          .map(PaceProfile::name)
                          .collect(Collectors.joining(", ")))));
    }
    return pace;
  }

  private Optional<Head> head(GuestDocument person, HouseDocument room) {
    HeadRequest wanted =
        new HeadRequest(request.guest(), Optional.empty(), TapeMeasurements.NONE, request.part());
    Head.Fitted fitted = workspace.heads().fit(Heads.asked(person, wanted), room.head());
    fitted.problems().forEach(p -> problems.add(Heads.locate(guest, p)));
    return fitted.head();
  }

  private void noteAssumptions(PlannedGuest planned) {
    if (guest.isEmpty()) {
      problems.add(
          Heads.locate(
              guest,
              Problem.note(
                  "no-guest",
                  "",
                  "no guest is named: a usual woman's head is assumed, with "
                      + Nobody.LENGTH
                      + " of hair all over at "
                      + HairProfile.USUAL_DENSITY,
                  "name a guest")));
    }
    planned
        .hair()
        .cut()
        .filter(cut -> cut.equals(Haircut.named(cut.name())))
        .ifPresent(
            cut ->
                problems.add(
                    Heads.locate(
                        guest,
                        Problem.note(
                            "cut-not-computed",
                            "hair.cut",
                            "hair lengths are taken from the table; those of the cut \""
                                + cut.name()
                                + "\" follow only once it says how it was held",
                            "say how the cut was held, or type the lengths by zone where it"
                                + " differs"))));
  }

  private Plan lay(
      Pattern drawn,
      PlannedGuest person,
      PlannedHouse with,
      HouseDocument room,
      Head head,
      GuestDocument.History history) {
    progress.accept("placing the foils");
    Workbench bench =
        new Workbench(
            workspace.heads(),
            room,
            with,
            workspace.heads().hair(head, person.hair()),
            request.wish().or(person::wish),
            request.working(),
            request.clocked());
    Workbench.Laid laid = bench.lay(drawn);
    Optional<Trimmed> trimmed = Optional.empty();
    if (request.limits().any()) {
      progress.accept("giving up foils until the limits are kept");
      Optional<Workbench.Trim> trim = bench.trim(laid, request.limits());
      if (trim.isPresent()) {
        laid = trim.get().laid();
        trimmed = Optional.of(trim.get().trimmed());
      } else {
        problems.add(here(beyondLimits(laid)));
      }
    }
    Placement placement = laid.placement();
    placement.problems().forEach(p -> problems.add(pattern.locate(p)));

    progress.accept("adding up");
    List<PlacingTime> placing = new ArrayList<>();
    placing.add(PlacingTime.of(placement, with.pace()));
    for (PaceProfile other : room.paces()) {
      if (!other.name().equals(with.pace().name())) {
        placing.add(PlacingTime.of(placement, other));
      }
    }
    noteProducts(placement, with);
    noteSafety(placement, person, with);
    laid.lift().problems().forEach(p -> problems.add(Heads.locate(guest, p)));
    with.pace().problems("paces").forEach(p -> problems.add(house.locate(p)));
    Workbench.Laid timed = laid;
    laid.times().ifPresent(times -> noteTimes(times, timed.placement()));
    Optional<PlannedRegrowth> regrowth = regrowth(history, bench, laid);
    regrowth.ifPresent(
        r -> r.overlaps().problems().forEach(p -> problems.add(Heads.locate(guest, p))));
    Set<MixSlot> lightening = with.placing().lightening();
    List<Plan.ZoneFigures> zones = zones(placement, head, bench.hair(), lightening);
    return new Plan(
        FileNames.of(request.pattern()) + "-" + person.number().orElse("usual-head"),
        laid.pattern(),
        person,
        with,
        head,
        placement,
        placing,
        laid.times(),
        laid.lift(),
        regrowth,
        request.on().map(day -> Rebooking.after(day, room.rebook(), Growth.USUAL)),
        trimmed,
        laid.order(),
        totals(placement, head, zones, lightening, bench.meanLength()),
        sections(placement, placing.get(0)),
        zones,
        problems);
  }

  private static FoundProblem here(Problem problem) {
    return new FoundProblem("", 0, 0, problem);
  }

  private Problem beyondLimits(Workbench.Laid laid) {
    String least =
        laid.times()
            .flatMap(PlannedTimes::longestFoils)
            .map(time -> "; the whole pattern takes " + time.p90() + " on nine days in ten")
            .orElse("");
    return Problem.warning(
        "beyond-limits",
        "",
        "not even one foil keeps within the limits" + least + ", and nothing was given up",
        "allow more time: one foil must develop for its least time and come out again");
  }

  private void noteProducts(Placement placement, PlannedHouse with) {
    for (String slot :
        placement.foils().stream().map(PlacedFoil::mix).distinct().sorted().toList()) {
      ProductEntry product = with.products().get(slot);
      if (product == null) {
        problems.add(
            house.locate(
                Problem.warning(
                    "empty-slot",
                    "slots",
                    "the pattern uses mix slot " + slot + ", which holds no product here",
                    "say which product slot "
                        + slot
                        + " holds; until then the visit has no time"
                        + " and its hair counts as lightened")));
      } else if (!product.makersSheetOnFile()) {
        problems.add(
            house.locate(
                Problem.warning(
                    "no-makers-sheet",
                    "products",
                    "the maker's sheet of " + product.name() + " (slot " + slot + ") is MISSING",
                    "get the sheet and check ratio, strength and times against it")));
      }
    }
  }

  private void noteSafety(Placement placement, PlannedGuest person, PlannedHouse with) {
    person.tests().problems().forEach(p -> problems.add(Heads.locate(guest, p)));
    List<String> products =
        placement.foils().stream()
            .map(PlacedFoil::mix)
            .distinct()
            .sorted()
            .flatMap(slot -> Optional.ofNullable(with.products().get(slot)).stream())
            .map(ProductEntry::name)
            .toList();
    request
        .on()
        .ifPresent(
            day ->
                AlertTest.problems(person.tests(), day, products)
                    .forEach(p -> problems.add(Heads.locate(guest, p))));
  }

  private void noteTimes(PlannedTimes times, Placement placement) {
    times
        .failed()
        .ifPresent(
            over ->
                problems.add(
                    here(
                        OverTimeWords.failed(
                            over, placement.foils(), request.working().wayOut(), times.told()))));
    OverTimeWords.straight(times, placement.foils()).ifPresent(p -> problems.add(here(p)));
    times.sheets().problems().forEach(p -> problems.add(house.locate(p)));
    for (Visit visit : times.visits()) {
      visit.mix().problems().forEach(p -> problems.add(house.locate(p)));
    }
    times.toner().forEach(t -> t.problems().forEach(p -> problems.add(house.locate(p))));
    times.prices().forEach(t -> t.problems().forEach(p -> problems.add(house.locate(p))));
  }

  /** Last time's pattern, laid anew on this head; nothing when no last visit is on file. */
  private Optional<PlannedRegrowth> regrowth(
      GuestDocument.History history, Workbench bench, Workbench.Laid laid) {
    if (history.lastVisit().isEmpty() || request.on().isEmpty()) {
      return Optional.empty();
    }
    if (request.on().get().isBefore(history.lastVisit().get())) {
      problems.add(
          Heads.locate(
              guest,
              Problem.warning(
                  "last-visit-later",
                  "history.lastVisit",
                  "the last visit on file, "
                      + history.lastVisit().get()
                      + ", lies after this one, "
                      + request.on().get(),
                  "check both dates")));
      return Optional.empty();
    }
    Regrowth regrowth = new Regrowth(history.lastVisit().get(), request.on().get(), Growth.USUAL);
    Regrowth.Overlaps overlaps = new Regrowth.Overlaps(List.of(), List.of());
    if (history.pattern().isPresent()) {
      if (last.isPresent()) {
        Set<String> lightens =
            bench.lightening().stream().map(MixSlot::name).collect(Collectors.toSet());
        overlaps =
            regrowth.overlaps(
                bench.lay(last.get()).placement(), lightens, laid.placement(), lightens);
      } else {
        problems.add(
            Heads.locate(
                guest,
                Problem.warning(
                    "last-pattern-unknown",
                    "history.pattern",
                    "last time's pattern \""
                        + history.pattern().get()
                        + "\" cannot be read, so that nobody can tell where new foils lie over old"
                        + " ones",
                    "write the title, name or file of a pattern")));
      }
    }
    return Optional.of(new PlannedRegrowth(regrowth, history.pattern(), overlaps));
  }

  private static List<Plan.SectionFigures> sections(Placement placement, PlacingTime placing) {
    List<Plan.SectionFigures> figures = new ArrayList<>();
    for (int s = 0; s < placement.sections().size(); s++) {
      PlacedSection section = placement.sections().get(s);
      figures.add(
          new Plan.SectionFigures(section, mass(section.foils()), placing.sections().get(s)));
    }
    return figures;
  }

  private static Mass mass(List<PlacedFoil> foils) {
    return foils.stream().map(PlacedFoil::hair).reduce(Mass.ZERO, Mass::plus);
  }

  private static List<Plan.ZoneFigures> zones(
      Placement placement, Head head, HairOnHead hair, Set<MixSlot> lightening) {
    Map<Zone, Double> picked = new EnumMap<>(Zone.class);
    Map<Zone, Double> lightened = new EnumMap<>(Zone.class);
    Map<Zone, Integer> foils = new EnumMap<>(Zone.class);
    for (PlacedFoil foil : placement.foils()) {
      foils.merge(foil.zone(), 1, Integer::sum);
      boolean lightens = lightening.contains(MixSlot.valueOf(foil.mix()));
      hair.hairsByZone(foil.region())
          .forEach(
              (zone, hairs) -> {
                double taken = hairs * foil.pickedShare().toFraction();
                picked.merge(zone, taken, Double::sum);
                lightened.merge(zone, lightens ? taken : 0, Double::sum);
              });
    }
    Map<Zone, Area> areas = hair.areas(head.scalp());
    Map<Zone, Double> hairs = hair.hairsByZone(head.scalp());
    List<Plan.ZoneFigures> figures = new ArrayList<>();
    for (Zone zone : Zone.values()) {
      double all = hairs.getOrDefault(zone, 0.0);
      figures.add(
          new Plan.ZoneFigures(
              zone,
              foils.getOrDefault(zone, 0),
              areas.getOrDefault(zone, Area.ofSquareMillimetres(0)),
              all,
              picked.getOrDefault(zone, 0.0),
              share(lightened.getOrDefault(zone, 0.0), all)));
    }
    return figures;
  }

  private static Share share(double part, double whole) {
    return whole > 0 ? Share.ofFraction(part / whole) : Share.ZERO;
  }

  private static Plan.Totals totals(
      Placement placement,
      Head head,
      List<Plan.ZoneFigures> zones,
      Set<MixSlot> lightening,
      Length meanLength) {
    double hairs = zones.stream().mapToDouble(Plan.ZoneFigures::hairs).sum();
    double picked = 0;
    double lightened = 0;
    for (PlacedFoil foil : placement.foils()) {
      picked += foil.pickedHairs();
      lightened += lightening.contains(MixSlot.valueOf(foil.mix())) ? foil.pickedHairs() : 0;
    }
    return new Plan.Totals(
        placement.foils().size(),
        Area.ofSquareMillimetres(head.scalp().area()),
        hairs,
        picked,
        share(lightened, hairs),
        mass(placement.foils()),
        meanLength);
  }
}
