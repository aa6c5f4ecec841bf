package foilwright.app;

import foilwright.drawing.Scene;
import foilwright.drawing.png.PngWriter;
import foilwright.drawing.svg.SvgLetters;
import foilwright.drawing.svg.SvgWriter;
import foilwright.head.Head;
import foilwright.placement.PlacedFoil;
import foilwright.service.AppointmentEstimate;
import foilwright.service.Caution;
import foilwright.service.ProductEntry;
import foilwright.service.SafetyQuestion;
import foilwright.service.TimeEstimate;
import foilwright.sheet.DrawnHead;
import foilwright.sheet.HeadSheet;
import foilwright.sheet.MapNotes;
import foilwright.sheet.MapSheet;
import foilwright.sheet.Paper;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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
            plan.name() + "-map", sheet.join().pages(plan.placement(), notes(plan)), pictures);
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

  private static MapNotes notes(Plan plan) {
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
    plan.visit()
        .map(AppointmentEstimate::total)
        .ifPresent(visit -> figures.add(new MapNotes.Total("whole visit", range(visit))));
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
                "mix " + slot.getKey(), slot.getValue().name() + ", " + foils + " foils"));
      }
    }
    return figures;
  }

  private static String range(TimeEstimate time) {
    return String.format(
        Locale.ROOT, "%.0f to %.0f min", time.p50().toMinutes(), Math.ceil(time.p90().toMinutes()));
  }

  private static List<String> cautions(Plan plan) {
    List<String> sentences = new ArrayList<>();
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
