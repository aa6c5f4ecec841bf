package foilwright.benchmark;

import foilwright.geometry.Plane;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Isolines;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.head.Head;
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
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A scalp of about 20 thousand triangles cut by 80 planes, each cut an ordered polyline with its
 * arc length: level planes in one pass, and planes fanned about the ear-to-ear axis one by one.
 * Target: 8 ms for the 80 level planes.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class PlaneCutsBenchmark {
  private static final int PLANES = 80;

  private TriangleMesh mesh;
  private Region scalp;
  private ScalarField height;
  private double[] heights;
  private final List<Plane> fan = new ArrayList<>();

  @Setup
  public void prepare() {
    Head head = Shipped.head();
    mesh = head.mesh();
    scalp = head.scalp();
    height = ScalarField.compute(mesh, Vector3::z);
    double least = scalp.least(height);
    double most = scalp.greatest(height);
    heights = new double[PLANES];
    for (int i = 0; i < PLANES; i++) {
      heights[i] = least + (i + 0.5) * (most - least) / PLANES;
      double turn = Math.PI * i / PLANES;
      fan.add(Plane.through(head.form().centre(), new Vector3(0, Math.cos(turn), Math.sin(turn))));
    }
  }

  @Benchmark
  public List<List<Polyline>> levelPlanes() {
    return Isolines.ofLevels(scalp, height, heights);
  }

  @Benchmark
  public List<List<Polyline>> fannedPlanes() {
    List<List<Polyline>> cuts = new ArrayList<>();
    for (Plane plane : fan) {
      cuts.add(Isolines.of(scalp, ScalarField.distanceFrom(mesh, plane), 0));
    }
    return cuts;
  }
}
