package foilwright.app;

import foilwright.anatomy.Zone;
import foilwright.document.GuestDocument;
import foilwright.document.HouseDocument;
import foilwright.fall.NaturalFall;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.head.TapeMeasurements;
import foilwright.pattern.MixSlot;
import foilwright.pattern.Pattern;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
import foilwright.problem.Problem;
import foilwright.service.AppointmentEstimate;
import foilwright.service.PaceProfile;
import foilwright.service.PlacingTime;
import foilwright.service.ProductEntry;
import foilwright.units.Area;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** Makes plans: pattern, guest and house to foils on a head, times and figures. */
public final class Planning {
  /** The house that is used when none is named. */
  public static final String USUAL_HOUSE = "practice-room";

  private final Found<Pattern> pattern;
  private final Optional<Found<GuestDocument>> guest;
  private final Found<HouseDocument> house;
  private final PlanRequest request;
  private final Consumer<String> progress;
  private final List<FoundProblem> problems = new ArrayList<>();

  private final Consumer<Head> whenMeasured;

  private Planning(
      Workspace workspace,
      PlanRequest request,
      Consumer<String> progress,
      Consumer<Head> whenMeasured) {
    this.request = request;
    this.progress = progress;
    this.whenMeasured = whenMeasured;
    progress.accept("reading the documents");
    pattern = workspace.pattern(request.pattern());
    guest = request.guest().map(workspace::guest);
    house = workspace.house(request.house().orElse(USUAL_HOUSE));
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
    Planning planning = new Planning(workspace, request, progress, whenMeasured);
    Optional<Plan> plan = planning.plan();
    return new PlanOutcome(plan, planning.problems, planning.unreachable());
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
            guest.map(g -> person.get().number()), person.get().hair(), person.get().tests());
    noteAssumptions(planned);
    PlannedHouse with =
        new PlannedHouse(room.name(), pace.get(), room.foils().get(0), room.productsBySlot());
    return Optional.of(lay(pattern.value().get(), planned, with, room, head.get()));
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
    Head.Fitted fitted = Heads.asked(person, wanted).fitHead(room.head());
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
        .ifPresent(
            cut ->
                problems.add(
                    Heads.locate(
                        guest,
                        Problem.note(
                            "cut-not-computed",
                            "hair.cut",
                            "hair lengths are taken from the table; those of the cut \""
                                + cut
                                + "\" are not yet computed",
                            "type the lengths by zone where the cut differs"))));
  }

  private Plan lay(
      Pattern drawn, PlannedGuest person, PlannedHouse with, HouseDocument room, Head head) {
    progress.accept("placing the foils");
    Set<MixSlot> lightening = lightening(with);
    HairOnHead hair = HairOnHead.of(head, person.hair());
    Placement placement =
        Placer.place(
            drawn,
            hair,
            new PlacingSettings(
                with.foil().usableWidth(),
                room.hands().thinnestSlice(),
                room.hands().thickestSlice(),
                lightening),
            NaturalFall.over(head));
    placement.problems().forEach(p -> problems.add(pattern.locate(p)));

    progress.accept("adding up");
    List<PlacingTime> placing = new ArrayList<>();
    placing.add(PlacingTime.of(placement, with.pace()));
    for (PaceProfile other : room.paces()) {
      if (!other.equals(with.pace())) {
        placing.add(PlacingTime.of(placement, other));
      }
    }
    Length meanLength = hair.meanLength(head.scalp());
    Optional<AppointmentEstimate> visit = visit(placement, with, person.hair(), meanLength);
    visit.ifPresent(v -> v.problems().forEach(p -> problems.add(new FoundProblem("", 0, 0, p))));
    List<Plan.ZoneFigures> zones = zones(placement, head, hair, lightening);
    return new Plan(
        FileNames.of(request.pattern()) + "-" + person.number().orElse("usual-head"),
        drawn,
        person,
        with,
        head,
        placement,
        placing,
        visit,
        totals(placement, head, zones, lightening, meanLength),
        sections(placement, placing.get(0)),
        zones,
        problems);
  }

  /** Slots that lighten; an empty slot counts as one, since that is what a pattern is for. */
  private static Set<MixSlot> lightening(PlannedHouse with) {
    Set<MixSlot> slots = EnumSet.allOf(MixSlot.class);
    slots.removeIf(
        slot -> {
          ProductEntry product = with.products().get(slot.name());
          return product != null && !product.kind().lightens();
        });
    return slots;
  }

  private Optional<AppointmentEstimate> visit(
      Placement placement, PlannedHouse with, HairProfile hair, Length meanLength) {
    boolean filled = true;
    for (String slot :
        placement.foils().stream().map(PlacedFoil::mix).distinct().sorted().toList()) {
      ProductEntry product = with.products().get(slot);
      if (product == null) {
        filled = false;
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
                    "the maker's sheet of " + product.name() + " (slot " + slot + ") is missing",
                    "get the sheet and check ratio, strength and times against it")));
      }
    }
    return filled && !placement.foils().isEmpty()
        ? Optional.of(
            AppointmentEstimate.of(
                placement, with.pace(), with.products(), meanLength, hair.density()))
        : Optional.empty();
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
