package foilwright.sheet;

import foilwright.service.mix.Bowl;
import foilwright.service.schedule.Schedule;
import foilwright.units.Minutes;
import java.time.LocalTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What the timeline sheet draws. Every moment is in minutes from the first parting, as in the
 * schedule, on a usual day at the plan's pace.
 *
 * @param schedule of the foils
 * @param sections the section of each foil, in the order of the schedule's foils
 * @param bowls in any order
 * @param checks in any order
 * @param free the longest unbroken stretch in which nobody is needed at the chair
 * @param lastSafe number of the last foil that can be placed straight through and still come out in
 *     time
 * @param beforeFirstParting from the start of the visit to the first parting, 0 or more; 0 where
 *     the sheet counts from the first parting
 * @param start when the visit starts; without it the sheet counts from 0:00
 */
public record Timeline(
    Schedule schedule,
    List<FoilSection> sections,
    List<Bowl> bowls,
    List<Check> checks,
    Optional<Schedule.Wait> free,
    Optional<Integer> lastSafe,
    Minutes beforeFirstParting,
    Optional<LocalTime> start) {

  /**
   * The section of a foil.
   *
   * @param index its place in the pattern, from 0, which gives the colour and the hatch
   */
  public record FoilSection(String name, int index) {
    public FoilSection {
      if (name.isBlank() || index < 0) {
        throw new IllegalArgumentException("section " + index + " \"" + name + "\" has no name");
      }
    }
  }

  /** A look into the foils; in passing, it ends when it starts. */
  public record Check(Minutes start, Minutes end) {
    public Check {
      if (end.compareTo(start) < 0) {
        throw new IllegalArgumentException("a check cannot run from " + start + " to " + end);
      }
    }
  }

  public Timeline {
    sections = List.copyOf(sections);
    bowls = List.copyOf(bowls);
    checks = List.copyOf(checks);
    if (sections.size() != schedule.foils().size()) {
      throw new IllegalArgumentException(
          sections.size() + " sections for " + schedule.foils().size() + " foils");
    }
    if (beforeFirstParting.compareTo(Minutes.ZERO) < 0) {
      throw new IllegalArgumentException(
          "the first parting cannot lie " + beforeFirstParting + " after the visit's start");
    }
    Objects.requireNonNull(start);
  }
}
