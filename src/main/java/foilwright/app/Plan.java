package foilwright.app;

import foilwright.anatomy.Zone;
import foilwright.head.Head;
import foilwright.pattern.Pattern;
import foilwright.placement.PlacedSection;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import foilwright.problem.Severity;
import foilwright.service.LiftAdvice;
import foilwright.service.PlacingTime;
import foilwright.service.TimeEstimate;
import foilwright.service.schedule.OrderSearch;
import foilwright.service.visit.Rebooking;
import foilwright.units.Area;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A pattern on a guest in a house: where every foil goes, how long it takes, and what is wrong.
 *
 * @param name short, of letters, figures and hyphens, for files: pattern and guest
 * @param pattern as it was read, or what the limits left of it
 * @param head the guest's, with the part as planned
 * @param placement every foil on it
 * @param placing time to place them, for the pace of {@code house} first and then for the house's
 *     other paces
 * @param times the two clocks and the scale; absent when a mix slot has no product or there is no
 *     foil
 * @param lift what lifting asks for, zone by zone
 * @param regrowth since the last visit; absent when none is on file or no day is known
 * @param rebooking when to come again; absent when no day is known
 * @param trimmed what was given up to keep within limits; absent when none were asked for
 * @param order what a search for a better working order found; absent when none was asked for
 * @param totals sums over the head
 * @param sections figures of each section, in the order of the placement's sections
 * @param zones figures of each zone, in the order of {@link Zone}
 * @param problems of all documents and of the placement; the plan stands even with errors, but what
 *     they concern is missing from it
 */
public record Plan(
    String name,
    Pattern pattern,
    PlannedGuest guest,
    PlannedHouse house,
    Head head,
    Placement placement,
    List<PlacingTime> placing,
    Optional<PlannedTimes> times,
    LiftAdvice lift,
    Optional<PlannedRegrowth> regrowth,
    Optional<Rebooking> rebooking,
    Optional<Trimmed> trimmed,
    Optional<OrderSearch.Result> order,
    Totals totals,
    List<SectionFigures> sections,
    List<ZoneFigures> zones,
    List<FoundProblem> problems) {

  /**
   * Sums over the head.
   *
   * @param scalp area of the hair-bearing scalp
   * @param hairs that root in it
   * @param pickedHairs that the picks take, whatever their mix
   * @param lightenedShare picked hairs of slots that lighten, over all hairs of the head
   * @param hair mass of the picked hairs over their treated length
   * @param meanLength of all hair
   */
  public record Totals(
      int foils,
      Area scalp,
      double hairs,
      double pickedHairs,
      Share lightenedShare,
      Mass hair,
      Length meanLength) {}

  /**
   * Sums over one section.
   *
   * @param placed the section on the head
   * @param hair mass of its picked hairs over their treated length
   * @param placing time to set it and place its foils, at the plan's pace
   */
  public record SectionFigures(PlacedSection placed, Mass hair, TimeEstimate placing) {}

  /**
   * Sums over one zone, wherever the sections' borders run.
   *
   * @param foils those that lie mostly in it
   * @param lightenedShare picked hairs of slots that lighten, over all hairs of the zone
   */
  public record ZoneFigures(
      Zone zone, int foils, Area area, double hairs, double pickedHairs, Share lightenedShare) {}

  public Plan {
    Objects.requireNonNull(name);
    Objects.requireNonNull(pattern);
    Objects.requireNonNull(guest);
    Objects.requireNonNull(house);
    Objects.requireNonNull(head);
    Objects.requireNonNull(placement);
    placing = List.copyOf(placing);
    Objects.requireNonNull(times);
    Objects.requireNonNull(lift);
    Objects.requireNonNull(regrowth);
    Objects.requireNonNull(rebooking);
    Objects.requireNonNull(trimmed);
    Objects.requireNonNull(order);
    Objects.requireNonNull(totals);
    sections = List.copyOf(sections);
    zones = List.copyOf(zones);
    problems = List.copyOf(problems);
    if (placing.isEmpty()) {
      throw new IllegalArgumentException("a plan needs the time of at least one pace");
    }
  }

  /** Time to place all foils at the plan's pace. */
  public TimeEstimate placingTime() {
    return placing.get(0).total();
  }

  public boolean hasErrors() {
    return problems.stream().anyMatch(FoundProblem::isError);
  }

  /** What is wrong somewhere on the head, in the order of its pins. */
  public List<Problem> pinned() {
    return problems.stream()
        .map(FoundProblem::problem)
        .filter(p -> p.place().isPresent() && p.severity() != Severity.NOTE)
        .distinct()
        .toList();
  }
}
