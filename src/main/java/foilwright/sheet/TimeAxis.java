package foilwright.sheet;

import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import java.util.ArrayList;
import java.util.List;

/**
 * Minutes laid along a sheet; ticks stand at round readings of the clock.
 *
 * @param from minutes from the first parting at {@code left}
 * @param to minutes from the first parting at {@code right}
 */
record TimeAxis(Clock clock, double from, double to, double left, double right) {
  private static final int[] STEPS = {5, 10, 15, 30, 60, 120};
  private static final double BETWEEN_LABELS_MM = 2.5;
  private static final double LEAST_TICK_MM = 2;

  /**
   * An axis over at least the given minutes, beginning and ending at a reading that is a multiple
   * of 5.
   */
  static TimeAxis over(Clock clock, double first, double last, double left, double right) {
    double zero = clock.atFirstParting();
    double from = Math.floor((zero + first) / 5 + 1e-6) * 5 - zero;
    double to = Math.ceil((zero + last) / 5 - 1e-6) * 5 - zero;
    return new TimeAxis(clock, from, Math.max(to, from + 5), left, right);
  }

  double perMinute() {
    return (right - left) / (to - from);
  }

  double at(double minutes) {
    return left + (minutes - from) * perMinute();
  }

  /** Minutes from the first parting of the labelled ticks. */
  List<Double> labelled() {
    double room = Typeface.shipped().width("00:00", TextSize.SMALL) + BETWEEN_LABELS_MM;
    return ticks(step(room));
  }

  /** Minutes from the first parting of every tick. */
  List<Double> ticks() {
    return ticks(step(LEAST_TICK_MM));
  }

  private int step(double leastMm) {
    for (int step : STEPS) {
      if (step * perMinute() >= leastMm) {
        return step;
      }
    }
    return STEPS[STEPS.length - 1];
  }

  private List<Double> ticks(int step) {
    double zero = clock.atFirstParting();
    List<Double> ticks = new ArrayList<>();
    for (long k = (long) Math.ceil((zero + from) / step - 1e-6); ; k++) {
      double minutes = k * step - zero;
      if (minutes > to + 1e-6) {
        return ticks;
      }
      ticks.add(minutes);
    }
  }
}
