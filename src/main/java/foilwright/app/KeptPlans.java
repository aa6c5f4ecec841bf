package foilwright.app;

import foilwright.document.GuestDocument;
import foilwright.document.HouseDocument;
import foilwright.pattern.Pattern;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The plans that were made last, with clocks and without, for what is asked of one again: its
 * sheets, its models, undo.
 */
final class KeptPlans {
  /** Some seconds of the changes of twenty people. */
  private static final int MOST = 48;

  /**
   * All that a plan is made of, as it was read.
   *
   * @param changed the pattern as it is tried, where it is not as it was read
   * @param last the pattern of the guest's last visit
   */
  record Made(
      PlanRequest request,
      Found<Pattern> pattern,
      Optional<Pattern> changed,
      Optional<Found<GuestDocument>> guest,
      Found<HouseDocument> house,
      Optional<Pattern> last) {}

  private final Recent<Made, PlanOutcome> kept = new Recent<>(MOST);

  /** The outcome that was made of the very same, else a new one. */
  PlanOutcome plan(Made of, Supplier<PlanOutcome> planning) {
    Optional<PlanOutcome> before = kept.find(of);
    if (before.isPresent()) {
      return before.get();
    }
    PlanOutcome outcome = planning.get();
    kept.keep(of, outcome);
    return outcome;
  }
}
