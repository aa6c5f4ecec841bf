package foilwright.app;

import foilwright.hair.Level;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * What to plan.
 *
 * @param pattern name or file of a pattern
 * @param guest name or file of a guest; a usual head with nothing known when absent
 * @param house name or file of a house; the shipped practice room when absent
 * @param pace name of one of the house's pace profiles; its first when absent
 * @param part where the part is worn; as the guest document says when absent
 * @param wish level that the foils are to reach; as the guest document says when absent
 * @param on day of the visit, for what has grown out and for the age of tests
 * @param working how the foils are worked
 * @param limits what the plan must keep within
 * @param clocked whether the visit is put on the clocks, which takes longest; a plan that is not
 *     has no times, and keeps within no limit and the pattern's own order
 */
public record PlanRequest(
    String pattern,
    Optional<String> guest,
    Optional<String> house,
    Optional<String> pace,
    Optional<PartWish> part,
    Optional<Level> wish,
    Optional<LocalDate> on,
    Working working,
    Limits limits,
    boolean clocked) {
  public PlanRequest {
    Objects.requireNonNull(pattern);
    Objects.requireNonNull(working);
    Objects.requireNonNull(limits);
    if (!clocked && (limits.any() || !working.aims().isEmpty())) {
      throw new IllegalArgumentException("limits and a better order want clocks");
    }
  }

  /** A pattern on a usual head in the practice room. */
  public static PlanRequest of(String pattern) {
    return new PlanRequest(
        pattern,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Working.USUAL,
        Limits.NONE,
        true);
  }

  public PlanRequest withGuest(String named) {
    return new PlanRequest(
        pattern, Optional.of(named), house, pace, part, wish, on, working, limits, clocked);
  }

  public PlanRequest withHouse(String named) {
    return new PlanRequest(
        pattern, guest, Optional.of(named), pace, part, wish, on, working, limits, clocked);
  }

  public PlanRequest withPace(String named) {
    return new PlanRequest(
        pattern, guest, house, Optional.of(named), part, wish, on, working, limits, clocked);
  }

  public PlanRequest withPart(PartWish wished) {
    return new PlanRequest(
        pattern, guest, house, pace, Optional.of(wished), wish, on, working, limits, clocked);
  }

  public PlanRequest withWish(Level level) {
    return new PlanRequest(
        pattern, guest, house, pace, part, Optional.of(level), on, working, limits, clocked);
  }

  public PlanRequest on(LocalDate day) {
    return new PlanRequest(
        pattern, guest, house, pace, part, wish, Optional.of(day), working, limits, clocked);
  }

  public PlanRequest withWorking(Working other) {
    return new PlanRequest(pattern, guest, house, pace, part, wish, on, other, limits, clocked);
  }

  public PlanRequest withLimits(Limits others) {
    return new PlanRequest(pattern, guest, house, pace, part, wish, on, working, others, clocked);
  }

  /** The same without clocks. */
  public PlanRequest withoutClocks() {
    return new PlanRequest(pattern, guest, house, pace, part, wish, on, working, limits, false);
  }
}
