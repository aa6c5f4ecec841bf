package foilwright.benchmark;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.SurfaceDistance;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.head.Head;
import foilwright.head.HeadForm;
import java.util.BitSet;
import java.util.Locale;
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
 * Distance along the surface from the hairline at every vertex of a scalp of about 20 thousand
 * triangles. Target: 4 ms.
 *
 * <p>Before the runs it prints the worst difference from the same distance on a mesh with edges a
 * quarter as long, whose new vertices lie on the head form too.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class SurfaceDistanceBenchmark {
  /** Relative differences are taken where the distance is at least this. */
  private static final double FAR_MM = 30;

  private TriangleMesh mesh;
  private BitSet hairline;

  @Setup
  public void prepare() {
    Head head = Shipped.head();
    mesh = head.mesh();
    hairline = border(mesh);
    ScalarField coarse = fromHairline();
    TriangleMesh finer = refined(refined(mesh, head.form()), head.form());
    BitSet finerHairline = border(finer);
    ScalarField fine = SurfaceDistance.fromVertices(finer, finerHairline::get);
    double worst = 0;
    double worstShare = 0;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double difference = Math.abs(coarse.at(v) - fine.at(v));
      worst = Math.max(worst, difference);
      if (fine.at(v) >= FAR_MM) {
        worstShare = Math.max(worstShare, difference / fine.at(v));
      }
    }
    System.out.printf(
        Locale.ROOT,
        "%n%d triangles against %d: worst %.3f mm, worst %.3f %% of %.0f mm or more%n",
        mesh.triangleCount(),
        finer.triangleCount(),
        worst,
        100 * worstShare,
        FAR_MM);
  }

  @Benchmark
  public ScalarField fromHairline() {
    return SurfaceDistance.fromVertices(mesh, hairline::get);
  }

  private static BitSet border(TriangleMesh mesh) {
    BitSet border = new BitSet();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        if (mesh.neighbour(t, k) < 0) {
          border.set(mesh.corner(t, (k + 1) % 3));
          border.set(mesh.corner(t, (k + 2) % 3));
        }
      }
    }
    return border;
  }

  /**
   * Each triangle in four: old vertices keep their numbers, new ones are set on the form above the
   * middles of the edges.
   */
  private static TriangleMesh refined(TriangleMesh mesh, HeadForm form) {
    int[] middles = new int[3 * mesh.triangleCount()];
    int count = mesh.vertexCount();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int other = mesh.neighbour(t, k);
        middles[3 * t + k] =
            other >= 0 && other < t ? middles[3 * other + opposite(mesh, other, t)] : count++;
      }
    }
    double[] xyz = new double[3 * count];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      set(xyz, v, mesh.vertex(v));
    }
    int[] corners = new int[12 * mesh.triangleCount()];
    int at = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int[] middle = new int[3];
      for (int k = 0; k < 3; k++) {
        middle[k] = middles[3 * t + k];
        Vector3 from = mesh.vertex(mesh.corner(t, (k + 1) % 3));
        Vector3 to = mesh.vertex(mesh.corner(t, (k + 2) % 3));
        set(xyz, middle[k], form.surfacePoint(from.lerp(to, 0.5)));
      }
      for (int k = 0; k < 3; k++) {
        corners[at++] = mesh.corner(t, k);
        corners[at++] = middle[(k + 2) % 3];
        corners[at++] = middle[(k + 1) % 3];
      }
      for (int k = 0; k < 3; k++) {
        corners[at++] = middle[k];
      }
    }
    return TriangleMesh.of(xyz, corners);
  }

  /** Which edge of a triangle it shares with a neighbour. */
  private static int opposite(TriangleMesh mesh, int triangle, int neighbour) {
    int k = 0;
    while (mesh.neighbour(triangle, k) != neighbour) {
      k++;
    }
    return k;
  }

  private static void set(double[] xyz, int vertex, Vector3 p) {
    xyz[3 * vertex] = p.x();
    xyz[3 * vertex + 1] = p.y();
    xyz[3 * vertex + 2] = p.z();
  }
}
