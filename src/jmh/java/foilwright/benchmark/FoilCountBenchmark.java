package foilwright.benchmark;

import foilwright.document.GuestDocument;
import foilwright.geometry.surface.DirectionField;
import foilwright.head.Head;
import foilwright.pattern.Background;
import foilwright.pattern.Fill;
import foilwright.pattern.Pattern;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.TravelFrom;
import foilwright.pattern.ZoneGroup;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
import foilwright.units.Length;
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
 * Level solid rows over the whole back of one head, with slices, backgrounds and foils half as wide
 * at each step, so that each step has four times the foils of the one before on the same scalp.
 * Target: time grows no faster than the number of foils.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class FoilCountBenchmark {
  /** About how many foils. */
  @Param({"20", "80", "320"})
  public int foils;

  private GuestDocument guest;
  private Pattern pattern;
  private PlacingSettings settings;
  private Head head;
  private DirectionField fall;

  @Setup
  public void measureHead() {
    guest = Shipped.guest();
    double scale = Math.sqrt(80.0 / foils);
    pattern = rows(scale);
    settings =
        new PlacingSettings(
            Length.ofMillimetres(48 * scale),
            PlacingSettings.USUAL.thinnestSlice(),
            PlacingSettings.USUAL.thickestSlice(),
            PlacingSettings.USUAL.lightening());
    head = Shipped.head();
    fall = HeadBenchmark.ready(head);
    System.out.printf("%nfoils: %d%n", place().foils().size());
  }

  private static Pattern rows(double scale) {
    return Pattern.of(
        "Level rows",
        Section.of(
            "back",
            RegionSpec.WHOLE_SCALP.withZones(ZoneGroup.BACK.zones()),
            new SectionShape.Horizontal(),
            TravelFrom.BOTTOM,
            Fill.of(
                Run.ofMillimetres(3 * scale),
                new Background.Even(Run.ofMillimetres(7.5 * scale)))));
  }

  @Benchmark
  public Placement place() {
    return Placer.place(pattern, head, guest.hair(), settings, fall);
  }
}
