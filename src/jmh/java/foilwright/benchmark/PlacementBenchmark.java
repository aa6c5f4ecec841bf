package foilwright.benchmark;

import foilwright.document.GuestDocument;
import foilwright.document.HouseDocument;
import foilwright.geometry.surface.DirectionField;
import foilwright.head.Head;
import foilwright.pattern.Pattern;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
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
 * A full head of fine weave laid on a head whose fields are ready: regions, partings, slices, foils
 * with their hairs and tape directions. Target: 15 ms for about 80 foils.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class PlacementBenchmark {
  private GuestDocument guest;
  private Pattern pattern;
  private PlacingSettings settings;
  private Head head;
  private DirectionField fall;

  @Setup
  public void measureHead() {
    guest = Shipped.guest();
    pattern = Shipped.pattern("full-head-fine-weave");
    HouseDocument house = Shipped.house();
    settings = house.placingSettings(house.foils().get(0));
    head = Shipped.head();
    fall = HeadBenchmark.ready(head);
    System.out.printf("%nfoils: %d%n", place().foils().size());
  }

  @Benchmark
  public Placement place() {
    return Placer.place(pattern, head, guest.hair(), settings, fall);
  }
}
