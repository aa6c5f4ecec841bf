package foilwright.geometry.surface;

import foilwright.geometry.Vector3;
import java.util.Arrays;
import java.util.function.IntPredicate;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.ConjugateGradient;
import org.hipparchus.linear.JacobiPreconditioner;
import org.hipparchus.linear.RealLinearOperator;
import org.hipparchus.linear.RealVector;

/**
 * The scalar whose gradient best fits a direction field: least sum of area times squared difference
 * over the triangles taken, linear in each triangle (the finite element form of Poisson's equation,
 * natural border).
 */
public final class PotentialFit {
  private static final double RELATIVE_RESIDUAL = 1e-11;

  private PotentialFit() {}

  /**
   * Fits a scalar, fixed by the mean zero in every connected part.
   *
   * @param taken the triangles to fit; elsewhere the scalar is zero and has no meaning
   * @return a scalar in millimetres times the strength of the field
   */
  public static LinearValues fit(DirectionField field, IntPredicate taken) {
    TriangleMesh mesh = field.mesh();
    int[] unknown = new int[3 * mesh.triangleCount()];
    Arrays.fill(unknown, -1);
    int[] numbers = new int[mesh.vertexCount()];
    Arrays.fill(numbers, -1);
    int count = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (taken.test(t)) {
        for (int k = 0; k < 3; k++) {
          int v = mesh.corner(t, k);
          if (numbers[v] < 0) {
            numbers[v] = count++;
          }
          unknown[3 * t + k] = numbers[v];
        }
      }
    }
    if (count == 0) {
      throw new IllegalArgumentException("no triangle to fit a scalar to");
    }
    Stiffness stiffness = new Stiffness(mesh, unknown, count);
    double[] right = new double[count];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (unknown[3 * t] >= 0) {
        for (int k = 0; k < 3; k++) {
          right[unknown[3 * t + k]] += mesh.area(t) * hat(mesh, t, k).dot(field.at(t));
        }
      }
    }
    ArrayRealVector b = new ArrayRealVector(right, false);
    double[] solution = new double[right.length];
    if (b.getNorm() > 0) {
      solution =
          new ConjugateGradient(20 * right.length + 1000, RELATIVE_RESIDUAL, false)
              .solve(stiffness, new JacobiPreconditioner(stiffness.diagonal, false), b)
              .toArray();
    }
    double[] found = solution;
    return (t, k) -> unknown[3 * t + k] < 0 ? 0 : found[unknown[3 * t + k]];
  }

  /** Gradient of the function that is 1 at a corner and 0 at the others. */
  private static Vector3 hat(TriangleMesh mesh, int t, int k) {
    return DirectionField.gradientIn(mesh, (s, j) -> j == k ? 1 : 0, t);
  }

  /** The stiffness matrix by triangles, never assembled. */
  private static final class Stiffness implements RealLinearOperator {
    private final int[] unknown;
    private final int[] triangles;
    private final double[] entries;
    private final double[] diagonal;

    Stiffness(TriangleMesh mesh, int[] unknown, int size) {
      this.unknown = unknown;
      int count = 0;
      int[] list = new int[mesh.triangleCount()];
      for (int t = 0; t < list.length; t++) {
        if (unknown[3 * t] >= 0) {
          list[count++] = t;
        }
      }
      triangles = Arrays.copyOf(list, count);
      entries = new double[6 * count];
      diagonal = new double[size];
      for (int i = 0; i < count; i++) {
        int t = triangles[i];
        Vector3[] hats = {hat(mesh, t, 0), hat(mesh, t, 1), hat(mesh, t, 2)};
        for (int k = 0; k < 3; k++) {
          entries[6 * i + k] = mesh.area(t) * hats[k].dot(hats[k]);
          entries[6 * i + 3 + k] = mesh.area(t) * hats[k].dot(hats[(k + 1) % 3]);
          diagonal[unknown[3 * t + k]] += entries[6 * i + k];
        }
      }
    }

    @Override
    public int getRowDimension() {
      return diagonal.length;
    }

    @Override
    public int getColumnDimension() {
      return diagonal.length;
    }

    @Override
    public RealVector operate(RealVector vector) {
      double[] x = vector.toArray();
      double[] y = new double[diagonal.length];
      for (int i = 0; i < triangles.length; i++) {
        int a = unknown[3 * triangles[i]];
        int b = unknown[3 * triangles[i] + 1];
        int c = unknown[3 * triangles[i] + 2];
        double ab = entries[6 * i + 3];
        double bc = entries[6 * i + 4];
        double ca = entries[6 * i + 5];
        y[a] += entries[6 * i] * x[a] + ab * x[b] + ca * x[c];
        y[b] += entries[6 * i + 1] * x[b] + ab * x[a] + bc * x[c];
        y[c] += entries[6 * i + 2] * x[c] + bc * x[b] + ca * x[a];
      }
      return new ArrayRealVector(y, false);
    }
  }
}
