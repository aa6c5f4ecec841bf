package foilwright.service.visit;

import foilwright.service.RebookLengths;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * When to come again: the days on which the regrowth reaches the least and the most that the house
 * likes to see.
 *
 * @param visit the visit from which it grows
 * @param from first day with the least regrowth, at mean growth
 * @param to last day before more than the most, at mean growth; not before {@code from}
 * @param earliest the same as {@code from} for somebody whose hair grows fast
 * @param latest the same as {@code to} for somebody whose hair grows slowly
 */
public record Rebooking(
    LocalDate visit, LocalDate from, LocalDate to, LocalDate earliest, LocalDate latest) {

  public static Rebooking after(LocalDate visit, RebookLengths lengths, Growth growth) {
    double least = lengths.from().toMillimetres();
    double most = lengths.to().toMillimetres();
    LocalDate from = visit.plusDays((long) Math.ceil(days(least, growth.mean().toMillimetres())));
    LocalDate to = visit.plusDays((long) Math.floor(days(most, growth.mean().toMillimetres())));
    return new Rebooking(
        visit,
        from,
        to.isBefore(from) ? from : to,
        visit.plusDays((long) Math.ceil(days(least, growth.most().toMillimetres()))),
        visit.plusDays((long) Math.floor(days(most, growth.least().toMillimetres()))));
  }

  private static double days(double lengthMm, double aMonthMm) {
    return lengthMm / aMonthMm * Growth.DAYS_A_MONTH;
  }

  /** Such as {@code from 2026-05-13 to 2026-06-24 (6 to 12 weeks)}. */
  public String words() {
    return "from " + from + " to " + to + " (" + weeks(from) + " to " + weeks(to) + " weeks)";
  }

  private long weeks(LocalDate day) {
    return Math.round(ChronoUnit.DAYS.between(visit, day) / 7.0);
  }
}
