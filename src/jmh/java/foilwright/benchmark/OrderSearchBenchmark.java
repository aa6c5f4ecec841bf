package foilwright.benchmark;

import foilwright.service.schedule.FoilTask;
import foilwright.service.schedule.OrderSearch;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A better working order of 40 foils, by all aims. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class OrderSearchBenchmark {
  private final List<List<OrderSearch.Row>> chains = chains();

  /** Eight sections of five rows with one foil each, at four standing places. */
  private static List<List<OrderSearch.Row>> chains() {
    List<String> places = List.of("back", "left", "front", "right");
    List<List<OrderSearch.Row>> chains = new ArrayList<>();
    List<FoilTask> foils = ScheduleBenchmark.foils(40, 2);
    for (int chain = 0; chain < 8; chain++) {
      List<OrderSearch.Row> rows = new ArrayList<>();
      for (int row = 0; row < 5; row++) {
        FoilTask foil = foils.get(5 * chain + row);
        rows.add(
            new OrderSearch.Row(
                List.of(new OrderSearch.Item(foil, places.get(chain % 4), row == 4))));
      }
      chains.add(rows);
    }
    return chains;
  }

  @Benchmark
  public OrderSearch.Result orderOfForty() {
    return OrderSearch.search(chains, List.of(OrderSearch.Aim.values()), 1, 100_000);
  }
}
