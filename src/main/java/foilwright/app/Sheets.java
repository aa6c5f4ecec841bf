package foilwright.app;

import foilwright.drawing.Scene;
import foilwright.drawing.png.PngWriter;
import foilwright.drawing.svg.SvgLetters;
import foilwright.drawing.svg.SvgWriter;
import foilwright.geometry.surface.Region;
import foilwright.head.Head;
import foilwright.placement.PlacedFoil;
import foilwright.problem.Problem;
import foilwright.service.Caution;
import foilwright.service.ProductEntry;
import foilwright.service.SafetyAnswers;
import foilwright.service.SafetyQuestion;
import foilwright.service.TimeEstimate;
import foilwright.service.TimeRange;
import foilwright.service.mix.SlotMix;
import foilwright.service.visit.Regrowth;
import foilwright.service.visit.Visit;
import foilwright.sheet.DrawnHead;
import foilwright.sheet.HeadSheet;
import foilwright.sheet.MapNotes;
import foilwright.sheet.MapSheet;
import foilwright.sheet.MixCard;
import foilwright.sheet.MixSheet;
import foilwright.sheet.Paper;
import foilwright.sheet.Timeline;
import foilwright.sheet.TimelineSheet;
import java.nio.charset.StandardCharsets;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.stream.Collectors;

/** Draws sheets and makes files of them. */
public final class Sheets {
  /** 200 pixels to the inch. */
  private static final double PIXELS_PER_MM = 200 / 25.4;

  private Sheets() {}

  /**
   * A map whose drawing begins before its plan is known: the head is prepared beside the placing of
   * the foils.
   */
  public static final class MapInProgress {
    private final CompletableFuture<MapSheet> sheet;

    private MapInProgress(CompletableFuture<MapSheet> sheet) {
      this.sheet = sheet;
    }

    /** The pages of the map of a plan on that head: SVG, and pictures too when asked for. */
    public List<SheetFile> finish(Plan plan, boolean pictures) {
      try {
        return files(
            plan.name() + "-map",
            sheet.join().pages(plan.placement(), notes(plan), onOldLightener(plan)),
            pictures);
      } catch (CompletionException e) {
        throw e.getCause() instanceof RuntimeException cause ? cause : e;
      }
    }
  }

  /** Begins to draw the map of any plan on a head. */
  public static MapInProgress beginMap(Head head) {
    return new MapInProgress(
        CompletableFuture.supplyAsync(() -> MapSheet.on(DrawnHead.of(head), Paper.A4)));
  }

  /** The drawing of a measured head. */
  public static List<SheetFile> head(Head head, String name, boolean pictures) {
    return files(
        name + "-head",
        List.of(HeadSheet.build(head, "Head, " + head.kind().words(), "", Paper.A4)),
        pictures);
  }

  /** The timeline of a plan's visits. */
  public static List<SheetFile> timeline(Plan plan, Optional<LocalTime> start, boolean pictures) {
    List<SheetFile> files = new ArrayList<>();
    List<Visit> visits = plan.times().map(PlannedTimes::visits).orElse(List.of());
    for (int i = 0; i < visits.size(); i++) {
      files.addAll(
          files(
              plan.name() + "-timeline" + ofVisit(visits, i),
              timelinePages(plan, visits.get(i), start, Paper.A4),
              pictures));
    }
    return files;
  }

  static List<Scene> timelinePages(Plan plan, Visit visit, Optional<LocalTime> start, Paper paper) {
    return TimelineSheet.build(timeline(plan, visit, start), notes(plan), paper);
  }

  private static String ofVisit(List<Visit> visits, int index) {
    return visits.size() > 1 ? "-visit-" + (index + 1) : "";
  }

  static Timeline timeline(Plan plan, Visit visit, Optional<LocalTime> start) {
    int safe = plan.times().orElseThrow().straight().lastSafe();
    return new Timeline(
        visit.schedule(),
        visit.foils().stream()
            .map(foil -> new Timeline.FoilSection(foil.section(), foil.sectionIndex()))
            .toList(),
        visit.mix().bowls(),
        visit.checks().rounds().stream()
            .map(round -> new Timeline.Check(round.start(), round.end()))
            .toList(),
        visit.checks().longestFree(),
        safe < plan.placement().foils().size() ? Optional.of(safe) : Optional.empty(),
        visit.before(),
        start);
  }

  /** What is weighed for a plan's visits. */
  public static List<SheetFile> mix(Plan plan, Optional<LocalTime> start, boolean pictures) {
    List<SheetFile> files = new ArrayList<>();
    List<Visit> visits = plan.times().map(PlannedTimes::visits).orElse(List.of());
    for (int i = 0; i < visits.size(); i++) {
      files.addAll(
          files(
              plan.name() + "-mix" + ofVisit(visits, i),
              mixPages(plan, i, start, Paper.A4),
              pictures));
    }
    return files;
  }

  static List<Scene> mixPages(Plan plan, int index, Optional<LocalTime> start, Paper paper) {
    PlannedTimes times = plan.times().orElseThrow();
    Visit visit = times.visits().get(index);
    List<String> missing = new ArrayList<>(stops(plan));
    plan.guest().tests().missing().forEach(q -> missing.add("missing: " + q.words()));
    MixCard card =
        new MixCard(
            visit.mix(),
            visit.terms().mixing(),
            index < times.toner().size() ? Optional.of(times.toner().get(index)) : Optional.empty(),
            times.visits().size() > 1 ? Optional.empty() : Optional.of(times.sheets()),
            missing,
            visit.before(),
            start);
    return MixSheet.build(card, notes(plan), paper);
  }

  /** What will be seen of a plan. */
  public static List<SheetFile> look(LookedPlan looked, boolean pictures) {
    return files(looked.plan().name() + "-look", LookPages.of(looked, Paper.A4), pictures);
  }

  /** What will be seen of two plans on one guest, side by side. */
  public static List<SheetFile> compare(LookComparison comparison, boolean pictures) {
    return files(
        comparison.one().plan().name()
            + "-beside-"
            + FileNames.of(comparison.other().plan().pattern().title())
            + "-look",
        LookPages.of(comparison, Paper.A4),
        pictures);
  }

  private static List<SheetFile> files(String name, List<Scene> pages, boolean pictures) {
    List<SheetFile> files = new ArrayList<>();
    for (int i = 0; i < pages.size(); i++) {
      String page = i == 0 ? name : name + "-" + (i + 1);
      String svg = SvgWriter.write(pages.get(i), SvgLetters.EMBEDDED);
      files.add(new SheetFile(page + ".svg", svg.getBytes(StandardCharsets.UTF_8)));
      if (pictures) {
        files.add(new SheetFile(page + ".png", PngWriter.write(pages.get(i), PIXELS_PER_MM)));
      }
    }
    return files;
  }

  static MapNotes notes(Plan plan) {
    return new MapNotes(
        plan.pattern().title(),
        plan.guest().number().orElse("no guest named")
            + ", "
            + plan.house().name()
            + ", pace "
            + plan.house().pace().name()
            + ", part "
            + plan.head().part().side().words(),
        figures(plan),
        cautions(plan));
  }

  private static List<MapNotes.Total> figures(Plan plan) {
    Plan.Totals totals = plan.totals();
    List<MapNotes.Total> figures = new ArrayList<>();
    figures.add(new MapNotes.Total("foils", Integer.toString(totals.foils())));
    figures.add(new MapNotes.Total("placing", range(plan.placingTime())));
    plan.times()
        .flatMap(PlannedTimes::chair)
        .ifPresent(chair -> figures.add(new MapNotes.Total("chair taken", range(chair))));
    for (Visit visit : plan.times().map(PlannedTimes::visits).orElse(List.of())) {
      int due = visit.firstDue();
      figures.add(
          new MapNotes.Total(
              "first out by",
              "foil "
                  + visit.foils().get(due).number()
                  + " by "
                  + (int) visit.sinceStart(visit.schedule().outBy(due)).toMinutes()
                  + " min"));
    }
    figures.add(new MapNotes.Total("lightened", totals.lightenedShare() + " of all hair"));
    figures.add(new MapNotes.Total("hair in foils", totals.hair().toString()));
    for (Map.Entry<String, ProductEntry> slot : plan.house().products().entrySet()) {
      long foils =
          plan.placement().foils().stream()
              .map(PlacedFoil::mix)
              .filter(slot.getKey()::equals)
              .count();
      if (foils > 0) {
        figures.add(
            new MapNotes.Total(
                "mix " + slot.getKey(),
                foils + (foils == 1 ? " foil" : " foils") + weight(plan, slot.getKey())));
      }
    }
    return figures;
  }

  /** Parts of new foils that lie over old ones whose hair still carries lightener. */
  static Map<Integer, Region> onOldLightener(Plan plan) {
    Map<Integer, Region> parts = new TreeMap<>();
    for (Regrowth.Overlap overlap :
        plan.regrowth().map(r -> r.overlaps().overlaps()).orElse(List.of())) {
      if (overlap.oldLightener().isPresent()) {
        Region foil = overlap.foil().region();
        parts.put(
            overlap.foil().number(),
            Region.join(
                foil.mesh(),
                overlap.over().stream().map(o -> foil.intersect(o.old().region())).toList()));
      }
    }
    return parts;
  }

  /** What is mixed of a slot over all visits, such as {@code , 205 g, 3 bowls}. */
  private static String weight(Plan plan, String slot) {
    double grams = 0;
    int bowls = 0;
    for (Visit visit : plan.times().map(PlannedTimes::visits).orElse(List.of())) {
      for (SlotMix mix : visit.mix().slot(slot).stream().toList()) {
        grams += mix.mixed().toGrams();
        bowls += mix.bowls().size();
      }
    }
    return bowls == 0
        ? ""
        : String.format(
            Locale.ROOT, ", %.0f g, %d %s", grams, bowls, bowls == 1 ? "bowl" : "bowls");
  }

  static String range(TimeEstimate time) {
    return range(new TimeRange(time.p50(), time.p90()));
  }

  static String range(TimeRange time) {
    return String.format(
        Locale.ROOT, "%.0f to %.0f min", time.p50().toMinutes(), Math.ceil(time.p90().toMinutes()));
  }

  /** What says: do not go on. */
  static List<String> stops(Plan plan) {
    return plan.problems().stream()
        .map(FoundProblem::problem)
        .filter(p -> p.code().startsWith(SafetyAnswers.STOP_CODE))
        .map(Problem::message)
        .toList();
  }

  static List<String> cautions(Plan plan) {
    List<String> sentences = new ArrayList<>();
    stops(plan).forEach(stop -> sentences.add(stop + "."));
    String missing =
        plan.guest().tests().missing().stream()
            .map(SafetyQuestion::words)
            .collect(Collectors.joining("; "));
    if (!missing.isEmpty()) {
      sentences.add("Missing on file: " + missing + ".");
    }
    sentences.addAll(Caution.IN_SHORT);
    return sentences;
  }
}
