package foilwright.service.schedule;

import java.util.Optional;

/** Which foil is first over its time when foils are in and out at given times. */
final class Excess {
  private Excess() {}

  /**
   * @param most least possible largest excess
   * @param proven whether no schedule without excess is known not to exist
   */
  static OverTime of(Times times, long[] in, long[] out, long most, boolean proven) {
    int first = -1;
    int foils = 0;
    for (int i = 0; i < times.n; i++) {
      if (out[i] - in[i] > times.most[i]) {
        foils++;
        if (first < 0 || in[i] + times.most[i] < in[first] + times.most[first]) {
          first = i;
        }
      }
    }
    long by = out[first] - in[first] - times.most[first];
    return new OverTime(first, Times.minutes(by), foils, Times.minutes(most), proven);
  }

  /** Whether every foil is out before its window ends. */
  static boolean none(Times times, long[] in, long[] out) {
    for (int i = 0; i < times.n; i++) {
      if (out[i] - in[i] > times.most[i]) {
        return false;
      }
    }
    return true;
  }

  /** A foil whose removal alone takes longer than it may stay, or empty. */
  static Optional<OverTime> ofRemovalAlone(Times times) {
    int first = -1;
    int foils = 0;
    long most = 0;
    for (int i = 0; i < times.n; i++) {
      long excess = times.removal[i] - times.most[i];
      if (excess > 0) {
        foils++;
        first = first < 0 ? i : first;
        most = Math.max(most, excess);
      }
    }
    if (first < 0) {
      return Optional.empty();
    }
    long by = times.removal[first] - times.most[first];
    return Optional.of(new OverTime(first, Times.minutes(by), foils, Times.minutes(most), true));
  }
}
