package foilwright.service.visit;

import foilwright.units.Length;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * How fast hair grows: lengths for each month of 30.4375 days, the mean and a range in which most
 * people lie.
 *
 * @param mean more than 0
 * @param least more than 0, at most {@code mean}
 * @param most at least {@code mean}
 */
public record Growth(Length mean, Length least, Length most) {
  /** A year of 365.25 days in twelve parts. */
  public static final double DAYS_A_MONTH = 30.4375;

  /**
   * For anybody of whom nothing is known: the mean of the published means of three groups of people
   * (280, 367 and 411 um a day), 10.7 mm a month, in the published worldwide range of 8 to 13 mm a
   * month.
   */
  public static final Growth USUAL =
      new Growth(
          Length.ofMillimetres((0.280 + 0.367 + 0.411) / 3 * DAYS_A_MONTH),
          Length.ofMillimetres(8),
          Length.ofMillimetres(13));

  public Growth {
    if (least.compareTo(Length.ZERO) <= 0
        || mean.compareTo(least) < 0
        || most.compareTo(mean) < 0) {
      throw new IllegalArgumentException(
          "growth of " + least + ", " + mean + ", " + most + " must be above 0 mm and rising");
    }
  }

  /** Of somebody whose daily growth has been measured: the mean, and one deviation either way. */
  public static Growth ofMicrometresADay(double mean, double deviation) {
    return new Growth(aDay(mean), aDay(mean - deviation), aDay(mean + deviation));
  }

  private static Length aDay(double micrometres) {
    return Length.ofMillimetres(micrometres / 1000 * DAYS_A_MONTH);
  }

  /** Months from one date to another, exact in days. */
  public static double months(LocalDate from, LocalDate to) {
    return ChronoUnit.DAYS.between(from, to) / DAYS_A_MONTH;
  }

  /** What grows in a number of months. */
  public Grown over(double months) {
    return new Grown(mean.times(months), least.times(months), most.times(months));
  }

  /**
   * A length of hair that has grown, or the place along the hair that it has pushed out to.
   *
   * @param mean what is expected
   * @param least 0 or more
   * @param most at least {@code mean}
   */
  public record Grown(Length mean, Length least, Length most) {
    Grown plus(Length length) {
      return new Grown(mean.plus(length), least.plus(length), most.plus(length));
    }

    /** In whole millimetres: {@code 21 mm (16 to 26)}. */
    public String words() {
      return whole(mean) + " mm (" + whole(least) + " to " + whole(most) + ")";
    }

    private static long whole(Length length) {
      return Math.round(length.toMillimetres());
    }
  }
}
