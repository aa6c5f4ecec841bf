package foilwright.app;

import foilwright.hair.HairProfile;
import foilwright.hair.Level;
import foilwright.service.SafetyAnswers;
import java.util.Objects;
import java.util.Optional;

/**
 * Whose hair a plan is for; the head itself stands beside it in the plan.
 *
 * @param number such as {@code guest-07}; empty when no guest was named and all is assumed
 * @param hair as planned
 * @param tests what is on file
 * @param wish level that was asked for, if it is on file
 */
public record PlannedGuest(
    Optional<String> number, HairProfile hair, SafetyAnswers tests, Optional<Level> wish) {
  public PlannedGuest {
    Objects.requireNonNull(number);
    Objects.requireNonNull(hair);
    Objects.requireNonNull(tests);
    Objects.requireNonNull(wish);
  }
}
