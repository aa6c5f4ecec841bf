package foilwright.head;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.StarSurface;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;

/**
 * Fits a star-shaped surface to measured radii by weighted linear least squares.
 *
 * <p>The coefficients of the template in {@link Template} are the output of this fit for the
 * template's radii, degree 6.
 */
public final class HeadFit {
  /**
   * One measured radius.
   *
   * @param direction from the centre, of any length
   * @param radiusMm millimetres
   * @param weight of the squared residual, not negative
   */
  public record Reading(Vector3 direction, double radiusMm, double weight) {}

  private HeadFit() {}

  /**
   * The series of a degree with the least weighted sum of squared residuals.
   *
   * @throws org.hipparchus.exception.MathIllegalArgumentException when the readings do not
   *     determine it
   */
  public static StarSurface fit(Vector3 centre, int degree, List<Reading> readings) {
    double[][] rows = new double[readings.size()][];
    double[] right = new double[rows.length];
    for (int i = 0; i < rows.length; i++) {
      Reading reading = readings.get(i);
      double root = Math.sqrt(reading.weight());
      double[] row = StarSurface.terms(degree, reading.direction().unit());
      for (int j = 0; j < row.length; j++) {
        row[j] *= root;
      }
      rows[i] = row;
      right[i] = root * reading.radiusMm();
    }
    double[] coefficients =
        new QRDecomposition(new Array2DRowRealMatrix(rows, false))
            .getSolver()
            .solve(new ArrayRealVector(right, false))
            .toArray();
    return StarSurface.of(centre, coefficients);
  }
}
