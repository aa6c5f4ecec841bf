package foilwright.fall;

/** Repeatable random numbers by place: the same key gives the same number on every machine. */
final class Noise {
  private Noise() {}

  /** A well mixed 64-bit word (the finaliser of SplitMix64, Steele, Lea and Flood 2014). */
  static long mix(long key) {
    long z = key + 0x9e3779b97f4a7c15L;
    z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
    z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
    return z ^ (z >>> 31);
  }

  static long mix(long key, int stream) {
    return mix(key * 0x2545f4914f6cdd1dL + stream * 0x632be59bd9b4e019L);
  }

  /** Evenly from 0 to 1. */
  static double even(long key, int stream) {
    return (mix(key, stream) >>> 11) * 0x1.0p-53;
  }

  /** About normal, mean 0, standard deviation 1, never beyond 3.5: the sum of four even ones. */
  static double normal(long key, int stream) {
    long w = mix(key, stream);
    double sum = (w & 0xffff) + (w >>> 16 & 0xffff) + (w >>> 32 & 0xffff) + (w >>> 48);
    return (sum / 65536 - 2 + 2.0 / 65536) * 1.7320508;
  }

  /**
   * About normal as {@link #normal}, with a somewhat smaller deviation, and drifting with the
   * place: places much nearer than a reach have nearly the same, places farther apart know nothing
   * of each other.
   */
  static double drift(long seed, int stream, double x, double y, double z, double reach) {
    double fx = Math.floor(x / reach);
    double fy = Math.floor(y / reach);
    double fz = Math.floor(z / reach);
    double u = eased(x / reach - fx);
    double v = eased(y / reach - fy);
    double w = eased(z / reach - fz);
    double sum = 0;
    for (int corner = 0; corner < 8; corner++) {
      long i = (long) fx + (corner & 1);
      long j = (long) fy + (corner >> 1 & 1);
      long k = (long) fz + (corner >> 2);
      long key = mix(seed + ((i & 0xfffff) << 40 | (j & 0xfffff) << 20 | (k & 0xfffff)));
      double weight =
          ((corner & 1) == 1 ? u : 1 - u)
              * ((corner >> 1 & 1) == 1 ? v : 1 - v)
              * (corner >> 2 == 1 ? w : 1 - w);
      sum += weight * normal(key, stream);
    }
    return sum;
  }

  private static double eased(double t) {
    return t * t * (3 - 2 * t);
  }
}
