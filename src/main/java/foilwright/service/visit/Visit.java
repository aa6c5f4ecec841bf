package foilwright.service.visit;

import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.service.AppointmentPhase;
import foilwright.service.TimeRange;
import foilwright.service.mix.MixPlan;
import foilwright.service.schedule.OverTime;
import foilwright.service.schedule.Removal;
import foilwright.service.schedule.Schedule;
import foilwright.units.Minutes;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * One visit: when the hands do what, what is weighed when, how long the chair is taken and how much
 * of that is free.
 *
 * <p>Times of the schedule count from the first parting, which stands {@code before} after the
 * start of the visit. The usual day is the mean of all times; on the slow day, which one day in ten
 * exceeds, all that hands do takes longer by one factor, while the chemistry keeps its windows.
 *
 * @param placement the foils of this visit, in working order
 * @param before from the start of the visit to the first parting, on a usual day
 * @param schedule of the foils on a usual day
 * @param slowDay of the foils on a slow day; empty when some foil would then leave its window
 *     whatever is done
 * @param checks on a usual day
 * @param mix what is weighed on a usual day
 * @param slowBowls how many bowls a slow day needs
 * @param phases what the visit is made of; the wait for chemistry may be shorter on a slow day
 * @param blocks the unbroken stretches of a usual day, in order
 * @param foilTime from the first parting until the last foil is out
 * @param chair the whole visit
 */
public record Visit(
    VisitTerms terms,
    Placement placement,
    Minutes before,
    Schedule schedule,
    Optional<Schedule> slowDay,
    Checks checks,
    MixPlan mix,
    int slowBowls,
    Map<AppointmentPhase, TimeRange> phases,
    List<Block> blocks,
    TimeRange foilTime,
    TimeRange chair) {
  public Visit {
    Objects.requireNonNull(terms);
    Map<AppointmentPhase, TimeRange> copy = new EnumMap<>(AppointmentPhase.class);
    copy.putAll(phases);
    phases = Collections.unmodifiableMap(copy);
    blocks = List.copyOf(blocks);
  }

  /**
   * What stands in the way of placing all foils straight through and taking them out in the same
   * order.
   *
   * @param usual on a usual day; empty when all goes well
   * @param slow on a slow day; empty when all goes well
   * @param lastSafe how many of the first foils go straight in and come out in order, each inside
   *     its window, on a usual day
   */
  public record Straight(Optional<OverTime> usual, Optional<OverTime> slow, int lastSafe) {}

  public List<PlacedFoil> foils() {
    return placement.foils();
  }

  public Removal removal() {
    return schedule.removal();
  }

  /** A moment of the schedule as minutes from the start of the visit. */
  public Minutes sinceStart(Minutes moment) {
    return before.plus(moment);
  }

  /** The place in working order, from 0, of the foil that must come out first. */
  public int firstDue() {
    int first = 0;
    for (int i = 1; i < foils().size(); i++) {
      if (schedule.outBy(i).compareTo(schedule.outBy(first)) < 0) {
        first = i;
      }
    }
    return first;
  }

  /** The longest stretch in which nobody is needed at the chair. */
  public Optional<Block> freeGap() {
    return blocks.stream().filter(b -> b.kind() == Block.Kind.FREE).findFirst();
  }
}
