package foilwright.service;

import foilwright.units.Share;

/**
 * How a person gets faster with every foil: each doubling of the foils ever placed brings the time
 * of a foil down to a rate, so that the n-th foil takes T1 n^(log2 rate) (T. P. Wright, 1936: at 80
 * % the exponent is -0.321928).
 *
 * @param rate time after a doubling over time before, 50 to 100 %; 100 % is no learning
 * @param timedAt how many foils the person had placed when the profile's times held, 1 or more
 * @param foilsDone how many the person has placed by now, 0 or more
 */
public record Learning(Share rate, int timedAt, int foilsDone) {
  public static final Share LEAST_RATE = Share.ofPercent(50);
  public static final Share MOST_RATE = Share.ofPercent(100);
  public static final int MOST_FOILS = 1_000_000;

  /** Always the same time. */
  public static final Learning NONE = new Learning(MOST_RATE, 1, 0);

  public Learning {
    if (rate.compareTo(LEAST_RATE) < 0 || rate.compareTo(MOST_RATE) > 0) {
      throw new IllegalArgumentException(
          "a learning rate of " + rate + " is outside " + LEAST_RATE + " to " + MOST_RATE);
    }
    if (timedAt < 1 || timedAt > MOST_FOILS || foilsDone < 0 || foilsDone > MOST_FOILS) {
      throw new IllegalArgumentException(
          "timed at foil "
              + timedAt
              + " with "
              + foilsDone
              + " done must lie within 1 and 0 to "
              + MOST_FOILS);
    }
  }

  /** log2 of the rate, 0 or less. */
  public double exponent() {
    return Math.log(rate.toFraction()) / Math.log(2);
  }

  /**
   * Time of a foil still to come over the profile's time.
   *
   * @param next 1 for the next foil, 2 for the one after it
   */
  public double factor(int next) {
    if (next < 1) {
      throw new IllegalArgumentException("the next foil is number 1, not " + next);
    }
    return Math.pow((foilsDone + (double) next) / timedAt, exponent());
  }

  /** After more foils; fewer when the number is below 0, but never fewer than none. */
  public Learning after(int foils) {
    return new Learning(rate, timedAt, Math.max(0, Math.min(MOST_FOILS, foilsDone + foils)));
  }
}
