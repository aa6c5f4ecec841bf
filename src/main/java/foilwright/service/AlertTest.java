package foilwright.service;

import foilwright.problem.Problem;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/**
 * Whether the allergy alert test lies far enough before a visit: at least 48 h as is common, or as
 * the maker says. Files hold days, not hours: two days apart may be less than 48 h, three are more.
 */
public final class AlertTest {
  private static final String PATH = "tests." + SafetyQuestion.ALLERGY_ALERT_TEST.key();

  /** Older than half a year, a test is pointed out; how long one stands is the maker's to say. */
  private static final int OLD_DAYS = 183;

  private AlertTest() {}

  /**
   * What the dates say; whether there is a test at all is told by {@link SafetyAnswers#problems}.
   *
   * @param products what the visit uses, by name: each needs its test
   */
  public static List<Problem> problems(
      SafetyAnswers tests, LocalDate visit, List<String> products) {
    if (tests.missing().contains(SafetyQuestion.ALLERGY_ALERT_TEST)) {
      return List.of();
    }
    String each = products.isEmpty() ? "each product" : String.join("; ", products);
    Optional<LocalDate> tested =
        tests
            .of(SafetyQuestion.ALLERGY_ALERT_TEST)
            .flatMap(SafetyAnswers.Answer::date)
            .map(LocalDate::parse);
    if (tested.isEmpty()) {
      return List.of(
          Problem.warning(
              "alert-test-without-date",
              PATH,
              "the allergy alert test has no date, so that nobody can tell whether it lies 48 h"
                  + " before "
                  + visit,
              "write the date down; to be tested: " + each));
    }
    long days = ChronoUnit.DAYS.between(tested.get(), visit);
    if (days < 0) {
      return List.of(
          Problem.warning(
              SafetyAnswers.STOP_CODE + "alert-test-after-visit",
              PATH,
              "DO NOT GO ON: the allergy alert test of "
                  + tested.get()
                  + " is dated after the visit of "
                  + visit,
              "test first, at least 48 h before; to be tested: " + each));
    }
    if (days < 2) {
      return List.of(
          Problem.warning(
              SafetyAnswers.STOP_CODE + "alert-test-too-late",
              PATH,
              "DO NOT GO ON: the allergy alert test of "
                  + tested.get()
                  + " is less than 48 h before the visit of "
                  + visit,
              "move the visit to " + tested.get().plusDays(3) + " or later"));
    }
    if (days > OLD_DAYS) {
      return List.of(
          Problem.warning(
              "alert-test-old",
              PATH,
              "the allergy alert test of "
                  + tested.get()
                  + " is "
                  + days
                  + " days before the visit of "
                  + visit,
              "see whether the maker's sheet lets it stand so long, else test anew; to be tested: "
                  + each));
    }
    return days == 2
        ? List.of(
            Problem.warning(
                "alert-test-two-days",
                PATH,
                "the allergy alert test of "
                    + tested.get()
                    + " is two days before the visit of "
                    + visit
                    + ": by the hour it may be less than 48 h",
                "look at the hour of the test; to be tested: " + each))
        : List.of();
  }
}
