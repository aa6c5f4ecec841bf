package foilwright.app;

import foilwright.anatomy.PartSide;
import java.util.Optional;

/**
 * What to plan.
 *
 * @param pattern name or file of a pattern
 * @param guest name or file of a guest; a usual head with nothing known when absent
 * @param house name or file of a house; the shipped practice room when absent
 * @param pace name of one of the house's pace profiles; its first when absent
 * @param part where the part is worn; as the guest document says when absent
 */
public record PlanRequest(
    String pattern,
    Optional<String> guest,
    Optional<String> house,
    Optional<String> pace,
    Optional<PartSide> part) {

  /** A pattern on a usual head in the practice room. */
  public static PlanRequest of(String pattern) {
    return new PlanRequest(
        pattern, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  public PlanRequest withGuest(String named) {
    return new PlanRequest(pattern, Optional.of(named), house, pace, part);
  }

  public PlanRequest withHouse(String named) {
    return new PlanRequest(pattern, guest, Optional.of(named), pace, part);
  }

  public PlanRequest withPace(String named) {
    return new PlanRequest(pattern, guest, house, Optional.of(named), part);
  }

  public PlanRequest withPart(PartSide side) {
    return new PlanRequest(pattern, guest, house, pace, Optional.of(side));
  }
}
