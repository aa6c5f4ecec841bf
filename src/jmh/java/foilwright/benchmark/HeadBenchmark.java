package foilwright.benchmark;

import foilwright.anatomy.Landmark;
import foilwright.document.GuestDocument;
import foilwright.fall.NaturalFall;
import foilwright.geometry.surface.DirectionField;
import foilwright.head.Head;
import foilwright.head.HeadSettings;
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
 * From five tapes to a head on which foils can be placed: the fit, the mesh, zones, landmarks,
 * surface distances and the natural fall. Target: 60 ms.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class HeadBenchmark {
  private GuestDocument guest;
  private HeadSettings settings;

  @Setup
  public void readGuest() {
    guest = Shipped.guest();
    settings = Shipped.house().head();
  }

  @Benchmark
  public DirectionField fit() {
    Head head = guest.fitHead(settings).head().orElseThrow();
    return ready(head);
  }

  /** Asks for everything that placing foils asks for; the head keeps it. */
  static DirectionField ready(Head head) {
    head.find(head.landmark(Landmark.APEX));
    head.distanceFromPart();
    return NaturalFall.over(head);
  }
}
