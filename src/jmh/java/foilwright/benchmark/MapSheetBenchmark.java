package foilwright.benchmark;

import foilwright.document.HouseDocument;
import foilwright.drawing.Scene;
import foilwright.drawing.svg.SvgLetters;
import foilwright.drawing.svg.SvgWriter;
import foilwright.head.Head;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.sheet.DrawnHead;
import foilwright.sheet.MapNotes;
import foilwright.sheet.MapSheet;
import foilwright.sheet.Paper;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The map of a full head of fine weave, from the placement to the SVG text of its pages: once on a
 * head already drawn, as when a pattern is being changed, and once with the head's own lines too.
 * Target: 25 ms on a head already drawn.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class MapSheetBenchmark {
  private static final MapNotes NOTES =
      new MapNotes(
          "Full head, fine weave",
          "guest-07",
          List.of(new MapNotes.Total("Placing", "75 to 105 min")),
          List.of("Do an allergy alert test at least 48 h before, for each product."));

  private Head head;
  private Placement placement;
  private MapSheet sheet;

  @Setup
  public void place() {
    head = Shipped.head();
    HouseDocument house = Shipped.house();
    placement =
        Placer.place(
            Shipped.pattern("full-head-fine-weave"),
            head,
            Shipped.guest().hair(),
            house.placingSettings(house.foils().get(0)),
            HeadBenchmark.ready(head));
    sheet = MapSheet.on(DrawnHead.of(head), Paper.A4);
    System.out.printf(
        "%nfoils: %d, pages: %d, characters: %d%n",
        placement.foils().size(),
        sheet.pages(placement, NOTES).size(),
        onDrawnHead().stream().mapToInt(String::length).sum());
  }

  @Benchmark
  public List<String> onDrawnHead() {
    return svg(sheet.pages(placement, NOTES));
  }

  @Benchmark
  public List<String> withHead() {
    return svg(MapSheet.build(DrawnHead.of(head), placement, NOTES, Paper.A4));
  }

  private static List<String> svg(List<Scene> pages) {
    return pages.stream().map(page -> SvgWriter.write(page, SvgLetters.LINKED)).toList();
  }
}
