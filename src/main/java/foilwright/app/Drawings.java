package foilwright.app;

import foilwright.drawing.Scene;
import foilwright.fall.NaturalFall;
import foilwright.geometry.surface.DirectionField;
import foilwright.service.mix.SlotMix;
import foilwright.service.visit.Growth;
import foilwright.service.visit.Price;
import foilwright.service.visit.Rebooking;
import foilwright.service.visit.Visit;
import foilwright.sheet.AngleSheet;
import foilwright.sheet.Book;
import foilwright.sheet.DrawnHead;
import foilwright.sheet.DrawnPlan;
import foilwright.sheet.FilingSheet;
import foilwright.sheet.MapNotes;
import foilwright.sheet.MapSheet;
import foilwright.sheet.MarkingSheet;
import foilwright.sheet.Paper;
import foilwright.sheet.PracticeSheet;
import foilwright.sheet.StepSheet;
import foilwright.sheet.Wording;
import foilwright.sheet.WrapSheet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Draws any sheets of a plan and makes files of them. */
public final class Drawings {
  private final Plan plan;
  private final DrawRequest request;
  private final DrawnPlan drawn;
  private final DirectionField fall;
  private final MapNotes notes;

  private Drawings(Plan plan, DrawRequest request) {
    this.plan = plan;
    this.request = request;
    this.drawn = DrawnPlan.of(DrawnHead.of(plan.head()), plan.placement());
    this.fall = NaturalFall.over(plan.head());
    this.notes = Sheets.notes(plan);
  }

  /** The files of a request: one or more for each sheet, or one book. */
  public static List<SheetFile> draw(Plan plan, DrawRequest request) {
    return sheets(plan, request).stream().flatMap(s -> s.files(request.format()).stream()).toList();
  }

  /**
   * The sheets of a request, whatever its format: one of each kind that has pages, or one book of
   * all.
   */
  public static List<DrawnSheet> sheets(Plan plan, DrawRequest request) {
    Drawings drawings = new Drawings(plan, request);
    String title = plan.pattern().title();
    List<Scene> all = new ArrayList<>();
    List<DrawnSheet> sheets = new ArrayList<>();
    for (SheetKind kind : request.sheets()) {
      List<Scene> pages = drawings.pages(kind);
      all.addAll(pages);
      String name = plan.name() + "-" + kind.words();
      sheets.add(DrawnSheet.of(name, title, pages, request.grey()));
    }
    return request.book()
        ? List.of(DrawnSheet.of(plan.name() + "-book", title, Book.numbered(all), request.grey()))
        : List.copyOf(sheets);
  }

  private List<Scene> pages(SheetKind kind) {
    Paper paper = request.paper().paper();
    String title = plan.pattern().title();
    String whom = notes.subtitle();
    Wording wording = new Wording(request.inches(), request.leftHanded());
    return switch (kind) {
      case MAP -> MapSheet.on(drawn.head(), paper).pages(drawn, notes, Sheets.onOldLightener(plan));
      case STEPS -> StepSheet.build(drawn, plan.pattern(), fall, whom, wording, paper);
      case ANGLES -> AngleSheet.build(drawn, plan.pattern(), fall, whom, paper);
      case BLANK -> List.of(PracticeSheet.blank(drawn, title, whom, paper));
      case ANSWER -> PracticeSheet.answer(drawn, plan.pattern(), whom, paper);
      case MARKING -> MarkingSheet.blank(drawn, plan.house().tolerances(), title, whom, paper);
      case TIMELINE -> timeline(paper);
      case MIX -> mix(paper);
      case LOOK ->
          LookPages.of(
              Looking.at(plan, LookRequest.of(PlanRequest.of(plan.name())), step -> {}), paper);
      case WRAP -> WrapSheet.build(drawn, title, whom, paper);
      case CLIENT -> FilingSheet.client(drawn, title, whom, clientBlocks(), paper);
      case RECORD -> FilingSheet.record(drawn, title, whom, recordBlocks(), paper);
    };
  }

  private List<Visit> visits() {
    return plan.times().map(PlannedTimes::visits).orElse(List.of());
  }

  private List<Scene> timeline(Paper paper) {
    return visits().stream()
        .flatMap(v -> Sheets.timelinePages(plan, v, request.start(), paper).stream())
        .toList();
  }

  private List<Scene> mix(Paper paper) {
    return IntStream.range(0, visits().size())
        .boxed()
        .flatMap(i -> Sheets.mixPages(plan, i, request.start(), paper).stream())
        .toList();
  }

  private static List<FilingSheet.Row> rows(List<MapNotes.Total> totals) {
    return totals.stream().map(t -> new FilingSheet.Row(t.label(), t.value())).toList();
  }

  private List<FilingSheet.Block> clientBlocks() {
    List<String> stops = Sheets.stops(plan);
    if (!stops.isEmpty()) {
      List<String> sentences = new ArrayList<>();
      stops.forEach(stop -> sentences.add(stop + "."));
      sentences.add("No visit is planned until that is settled.");
      return List.of(new FilingSheet.Block("Do not go on", List.of(), sentences));
    }
    List<FilingSheet.Row> visit = new ArrayList<>();
    Optional<LocalDate> day = plan.rebooking().map(Rebooking::visit);
    day.ifPresent(date -> visit.add(new FilingSheet.Row("day", date.toString())));
    plan.times()
        .flatMap(PlannedTimes::chair)
        .ifPresent(chair -> visit.add(new FilingSheet.Row("time, a range", Sheets.range(chair))));
    visit.add(new FilingSheet.Row("foils", Integer.toString(plan.totals().foils())));
    visit.add(new FilingSheet.Row("lightened", plan.totals().lightenedShare() + " of all hair"));
    for (Price price : plan.times().map(PlannedTimes::prices).orElse(List.of())) {
      price.quoted().ifPresent(quote -> visit.add(new FilingSheet.Row("price", quote.total())));
    }
    List<FilingSheet.Row> tests = new ArrayList<>();
    day.map(date -> date.minusDays(3))
        .filter(latest -> request.today().map(today -> !latest.isBefore(today)).orElse(true))
        .ifPresent(
            latest -> tests.add(new FilingSheet.Row("allergy alert test by", latest.toString())));
    tests.add(new FilingSheet.Row("tested on", ""));
    tests.add(new FilingSheet.Row("looked at after 48 h", ""));
    List<FilingSheet.Row> later = new ArrayList<>();
    plan.rebooking().ifPresent(r -> later.add(new FilingSheet.Row("next visit", r.words())));
    later.add(new FilingSheet.Row("booked for", ""));
    return List.of(
        new FilingSheet.Block(
            "The visit",
            visit,
            List.of(
                "Half of such visits take no longer than the first time, nine in ten no longer"
                    + " than the second.")),
        new FilingSheet.Block(
            "Before the visit",
            tests,
            List.of(
                "Say so if your scalp is sore or broken, or if colour, lightener or black henna"
                    + " ever gave you a reaction.",
                "During the visit say at once if anything burns.")),
        new FilingSheet.Block(
            "Afterwards",
            later,
            List.of(
                "Hair grows "
                    + Growth.USUAL.over(1).words()
                    + " a month: what is lightened moves away from the scalp by as much.",
                "Lightened hair breaks more easily: wash it less hot, comb it gently, keep it from"
                    + " strong heat, and do as the maker of the products says.")));
  }

  private List<FilingSheet.Block> recordBlocks() {
    List<FilingSheet.Row> mix = new ArrayList<>();
    for (Visit visit : plan.times().map(PlannedTimes::visits).orElse(List.of())) {
      for (SlotMix slot : visit.mix().slots()) {
        mix.add(new FilingSheet.Row("mix " + slot.slot(), slot.product().name()));
        mix.add(
            new FilingSheet.Row(
                "planned", Math.round(slot.mixed().toGrams()) + " g, " + slot.foils() + " foils"));
        mix.add(new FilingSheet.Row("weighed", ""));
        mix.add(new FilingSheet.Row("left over", ""));
      }
    }
    List<FilingSheet.Row> minutes = new ArrayList<>();
    minutes.add(new FilingSheet.Row("placing, planned", Sheets.range(plan.placingTime())));
    plan.times()
        .flatMap(PlannedTimes::chair)
        .ifPresent(
            chair -> minutes.add(new FilingSheet.Row("chair, planned", Sheets.range(chair))));
    minutes.add(new FilingSheet.Row("first foil in at", ""));
    minutes.add(new FilingSheet.Row("last foil in at", ""));
    minutes.add(new FilingSheet.Row("last foil out at", ""));
    List<String> safety = Sheets.cautions(plan);
    List<FilingSheet.Row> next = new ArrayList<>();
    plan.rebooking().ifPresent(r -> next.add(new FilingSheet.Row("come again", r.words())));
    next.add(new FilingSheet.Row("date", ""));
    next.add(new FilingSheet.Row("what", ""));
    return List.of(
        new FilingSheet.Block("Planned", rows(notes.totals()), List.of()),
        new FilingSheet.Block("Mix", mix, List.of()),
        new FilingSheet.Block("Minutes", minutes, List.of()),
        new FilingSheet.Block(
            "Done otherwise than planned",
            List.of(new FilingSheet.Row("", ""), new FilingSheet.Row("", "")),
            List.of()),
        new FilingSheet.Block("Tests and cautions", List.of(), safety),
        new FilingSheet.Block("Next visit", next, List.of()));
  }
}
