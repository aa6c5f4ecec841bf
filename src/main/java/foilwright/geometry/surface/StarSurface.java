package foilwright.geometry.surface;

import foilwright.geometry.Vector3;

/**
 * A smooth closed surface around a centre, mirror-symmetric in the plane x = 0: its distance from
 * the centre is a real spherical-harmonic series of the direction.
 *
 * <p>Head frame, millimetres; the centre lies in the plane x = 0. For a unit direction (x, y, z)
 * the radius is the sum over m = 0 … degree and l = m … degree of c(l, m) N(l, m) Re((y + ix)^m)
 * d^m P_l(z)/dz^m, with P_l the Legendre polynomial and N(l, m) such that each term has mean square
 * 1 over the sphere; only the terms even in x appear. Written so, as a polynomial, nothing is
 * singular at the poles. Coefficients are stored m by m, each with l rising.
 *
 * <p>Radius, normal and curvature are analytic: accurate to rounding for radii far from zero. Not
 * for surfaces that a ray from the centre meets twice.
 *
 * <p>Source of the functions: NIST Digital Library of Mathematical Functions, 14.30 (real form).
 */
public final class StarSurface {
  private final Vector3 centre;
  private final int degree;
  private final double[] coefficients;

  /** For each m, the polynomial in z that multiplies Re((y + ix)^m), lowest power first. */
  private final double[][] inZ;

  private StarSurface(Vector3 centre, int degree, double[] coefficients) {
    this.centre = centre;
    this.degree = degree;
    this.coefficients = coefficients;
    inZ = polynomials(degree, coefficients);
  }

  /**
   * A surface of given coefficients, in millimetres.
   *
   * @throws IllegalArgumentException when their number fits no degree, the centre is off the mirror
   *     plane, or the mean radius is not positive
   */
  public static StarSurface of(Vector3 centre, double[] coefficients) {
    int degree = 0;
    while (termCount(degree) < coefficients.length) {
      degree++;
    }
    if (termCount(degree) != coefficients.length) {
      throw new IllegalArgumentException(
          coefficients.length + " coefficients fit no degree (1, 3, 6, 10, …)");
    }
    if (centre.x() != 0) {
      throw new IllegalArgumentException("the centre must lie in x = 0, not at " + centre.x());
    }
    if (!(coefficients[0] > 0)) {
      throw new IllegalArgumentException("mean radius " + coefficients[0] + " must be more than 0");
    }
    return new StarSurface(centre, degree, coefficients.clone());
  }

  /** Number of terms of a series up to a degree. */
  public static int termCount(int degree) {
    return (degree + 1) * (degree + 2) / 2;
  }

  /** The value of each term for a unit direction, in the order of the coefficients. */
  public static double[] terms(int degree, Vector3 unit) {
    double[] values = new double[termCount(degree)];
    double re = 1;
    double im = 0;
    int at = 0;
    for (int m = 0; m <= degree; m++) {
      for (int l = m; l <= degree; l++) {
        values[at++] = re * horner(derivative(l, m), unit.z());
      }
      double next = unit.y() * re - unit.x() * im;
      im = unit.x() * re + unit.y() * im;
      re = next;
    }
    return values;
  }

  private static double[][] polynomials(int degree, double[] coefficients) {
    double[][] result = new double[degree + 1][];
    int at = 0;
    for (int m = 0; m <= degree; m++) {
      double[] sum = new double[degree - m + 1];
      for (int l = m; l <= degree; l++) {
        double c = coefficients[at++];
        double[] p = derivative(l, m);
        for (int i = 0; i < p.length; i++) {
          sum[i] += c * p[i];
        }
      }
      result[m] = sum;
    }
    return result;
  }

  /** N(l, m) d^m P_l / dz^m, lowest power first. */
  private static double[] derivative(int l, int m) {
    double[] before = {1};
    double[] p = l == 0 ? before : new double[] {0, 1};
    for (int k = 2; k <= l; k++) {
      double[] next = new double[k + 1];
      for (int i = 0; i < k; i++) {
        next[i + 1] += (2 * k - 1) * p[i] / k;
      }
      for (int i = 0; i < k - 1; i++) {
        next[i] -= (k - 1) * before[i] / k;
      }
      before = p;
      p = next;
    }
    double square = (m == 0 ? 1 : 2) * (2 * l + 1);
    for (int k = 0; k < m; k++) {
      double[] q = new double[p.length - 1];
      for (int i = 1; i < p.length; i++) {
        q[i - 1] = i * p[i];
      }
      p = q;
      square /= (double) (l - k) * (l + k + 1);
    }
    for (int i = 0; i < p.length; i++) {
      p[i] *= Math.sqrt(square);
    }
    return p;
  }

  private static double horner(double[] p, double z) {
    double sum = 0;
    for (int i = p.length - 1; i >= 0; i--) {
      sum = sum * z + p[i];
    }
    return sum;
  }

  public Vector3 centre() {
    return centre;
  }

  public int degree() {
    return degree;
  }

  /** A copy of the coefficients. */
  public double[] coefficients() {
    return coefficients.clone();
  }

  /** Distance from the centre in a direction of any length, millimetres. */
  public double radius(Vector3 direction) {
    return radius(direction.x(), direction.y(), direction.z());
  }

  /** Distance from the centre in the direction (x, y, z) of any length, millimetres. */
  public double radius(double x, double y, double z) {
    double n = 1 / Math.sqrt(x * x + y * y + z * z);
    return series(x * n, y * n, z * n);
  }

  private double series(double x, double y, double z) {
    double sum = 0;
    double re = 1;
    double im = 0;
    for (double[] p : inZ) {
      double q = 0;
      for (int i = p.length - 1; i >= 0; i--) {
        q = q * z + p[i];
      }
      sum += re * q;
      double next = y * re - x * im;
      im = x * re + y * im;
      re = next;
    }
    return sum;
  }

  /** The surface point in a direction from the centre. */
  public Vector3 point(Vector3 direction) {
    return centre.plus(direction.times(radius(direction) / direction.norm()));
  }

  /**
   * How far a point lies outside the surface along its ray from the centre, millimetres; negative
   * inside. The centre itself lies inside by the mean radius.
   */
  public double excess(Vector3 point) {
    Vector3 q = point.minus(centre);
    double distance = q.norm();
    return distance < 1e-9
        ? -coefficients[0]
        : distance - series(q.x() / distance, q.y() / distance, q.z() / distance);
  }

  /** Gradient of {@link #excess}, without unit; it points outwards. */
  public Vector3 excessGradient(Vector3 point) {
    Vector3 q = point.minus(centre);
    double distance = q.norm();
    Vector3 u = q.times(1 / distance);
    Vector3 g = seriesGradient(u);
    return u.minus(g.minus(u.times(g.dot(u))).times(1 / distance));
  }

  /** Outward unit normal of the surface in a direction from the centre. */
  public Vector3 normal(Vector3 direction) {
    return excessGradient(point(direction)).unit();
  }

  /**
   * Matrix of second derivatives of {@link #excess} per millimetre: xx, xy, xz, yy, yz, zz.
   *
   * @throws IllegalArgumentException at the centre
   */
  public double[] excessHessian(Vector3 point) {
    Vector3 q = point.minus(centre);
    double distance = q.norm();
    if (!(distance > 1e-9)) {
      throw new IllegalArgumentException("the centre has no direction");
    }
    Vector3 unit = q.times(1 / distance);
    double[] u = {unit.x(), unit.y(), unit.z()};
    Vector3 gradient = seriesGradient(unit);
    double along = gradient.dot(unit);
    Vector3 across = gradient.minus(unit.times(along));
    double[] t = {across.x(), across.y(), across.z()};
    double[][] h = seriesHessian(unit);
    double[] hu = new double[3];
    double uhu = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        hu[i] += h[i][j] * u[j];
      }
      uhu += u[i] * hu[i];
    }
    double[] result = new double[6];
    int at = 0;
    for (int i = 0; i < 3; i++) {
      for (int j = i; j < 3; j++) {
        double p = (i == j ? 1 : 0) - u[i] * u[j];
        double php = h[i][j] - u[i] * hu[j] - hu[i] * u[j] + u[i] * u[j] * uhu;
        double radial = php - along * p - u[i] * t[j] - t[i] * u[j];
        result[at++] = p / distance - radial / (distance * distance);
      }
    }
    return result;
  }

  private Vector3 seriesGradient(Vector3 unit) {
    double x = unit.x();
    double y = unit.y();
    double z = unit.z();
    double gx = 0;
    double gy = 0;
    double gz = 0;
    double re = 1;
    double im = 0;
    double reBefore = 0;
    double imBefore = 0;
    for (int m = 0; m <= degree; m++) {
      double[] p = inZ[m];
      double q = 0;
      double dq = 0;
      for (int i = p.length - 1; i >= 0; i--) {
        dq = dq * z + q;
        q = q * z + p[i];
      }
      gx -= m * imBefore * q;
      gy += m * reBefore * q;
      gz += re * dq;
      reBefore = re;
      imBefore = im;
      re = y * reBefore - x * imBefore;
      im = x * reBefore + y * imBefore;
    }
    return new Vector3(gx, gy, gz);
  }

  private double[][] seriesHessian(Vector3 unit) {
    double x = unit.x();
    double y = unit.y();
    double z = unit.z();
    double[] re = new double[degree + 3];
    double[] im = new double[degree + 3];
    re[2] = 1;
    for (int m = 1; m <= degree; m++) {
      re[m + 2] = y * re[m + 1] - x * im[m + 1];
      im[m + 2] = x * re[m + 1] + y * im[m + 1];
    }
    double xx = 0;
    double xy = 0;
    double xz = 0;
    double yz = 0;
    double zz = 0;
    for (int m = 0; m <= degree; m++) {
      double[] p = inZ[m];
      double q = 0;
      double dq = 0;
      double half = 0;
      for (int i = p.length - 1; i >= 0; i--) {
        half = half * z + dq;
        dq = dq * z + q;
        q = q * z + p[i];
      }
      xx -= m * (m - 1) * re[m] * q;
      xy -= m * (m - 1) * im[m] * q;
      xz -= m * im[m + 1] * dq;
      yz += m * re[m + 1] * dq;
      zz += re[m + 2] * 2 * half;
    }
    return new double[][] {{xx, xy, xz}, {xy, -xx, yz}, {xz, yz, zz}};
  }
}
