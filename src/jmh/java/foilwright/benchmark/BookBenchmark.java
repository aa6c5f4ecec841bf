package foilwright.benchmark;

import foilwright.app.DrawRequest;
import foilwright.app.Drawings;
import foilwright.app.PaperSize;
import foilwright.app.Plan;
import foilwright.app.PlanRequest;
import foilwright.app.Planning;
import foilwright.app.SheetFile;
import foilwright.app.SheetFormat;
import foilwright.app.SheetKind;
import foilwright.app.Workspace;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Files of sheets of a full head of fine weave, from the plan on; the drawing of the head itself is
 * counted each time. Targets: the whole book as PDF 2 s, one picture at 150 pixels to the inch 0.5
 * s.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 3)
@Measurement(iterations = 4, time = 3)
public class BookBenchmark {
  /** The plan. */
  @State(Scope.Benchmark)
  public static class Planned {
    private Plan plan;

    @Setup
    public void plan() {
      plan =
          Planning.plan(
                  Workspace.in(Path.of("")),
                  PlanRequest.of("full-head-fine-weave").withGuest("guest-07"),
                  step -> {})
              .plan()
              .orElseThrow();
    }
  }

  /** One kind of sheet. */
  @State(Scope.Benchmark)
  public static class Kind {
    @Param({"map", "steps", "angles", "blank", "answer", "marking", "wrap", "client", "record"})
    private String sheet;

    SheetKind kind() {
      return SheetKind.find(sheet).orElseThrow();
    }
  }

  @Benchmark
  public List<SheetFile> wholeBook(Planned planned) {
    return Drawings.draw(planned.plan, DrawRequest.wholeBook(PaperSize.A4));
  }

  @Benchmark
  public List<SheetFile> sheetAsSvg(Planned planned, Kind kind) {
    return Drawings.draw(planned.plan, DrawRequest.of(kind.kind()));
  }

  @Benchmark
  public List<SheetFile> mapAsPicture(Planned planned) {
    return Drawings.draw(
        planned.plan,
        new DrawRequest(
            List.of(SheetKind.MAP),
            false,
            PaperSize.A4,
            SheetFormat.PNG,
            false,
            false,
            false,
            Optional.empty(),
            Optional.empty()));
  }
}
