package foilwright.benchmark;

import foilwright.service.TimeWindow;
import foilwright.service.schedule.FoilTask;
import foilwright.service.schedule.Removal;
import foilwright.service.schedule.ScheduleResult;
import foilwright.service.schedule.Scheduler;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.List;
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

/** Exact schedules of 80 foils for one pair of hands. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class ScheduleBenchmark {
  private static final TimeWindow FIRST = window(20, 45);
  private static final TimeWindow SECOND = window(25, 40);

  @Param({"IN_PLACING_ORDER", "IN_WAVES", "WHILE_PLACING"})
  private Removal removal;

  @Param({"1", "2"})
  private int mixes;

  private List<FoilTask> foils;

  @Setup
  public void lay() {
    foils = foils(80, mixes);
  }

  private static TimeWindow window(double least, double most) {
    return new TimeWindow(Minutes.ofMinutes(least), Minutes.ofMinutes(most));
  }

  /** One mix or two, by sections of ten foils, each set in 2 min; 1.0 to 1.3 min a foil. */
  static List<FoilTask> foils(int count, int mixes) {
    List<FoilTask> foils = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      boolean second = mixes == 2 && i / 10 % 3 == 2;
      foils.add(
          new FoilTask(
              i + 1,
              second ? "B" : "A",
              Minutes.ofMinutes(i % 10 == 0 ? 2 : 0),
              Minutes.ofMinutes(1 + 0.1 * (i % 4)),
              Minutes.ofMinutes(0.4),
              second ? SECOND : FIRST));
    }
    return foils;
  }

  @Benchmark
  public ScheduleResult eightyFoils() {
    return Scheduler.schedule(foils, 1, removal);
  }
}
