package foilwright.service.visit;

import foilwright.service.schedule.FoilTask;
import foilwright.service.schedule.Schedule;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * When the foils are looked into, and what of the waiting is left unbroken.
 *
 * <p>The first round is due when the first foil has had its least time, the next ones at a fixed
 * interval until the last foil is out. While hands place or remove they look in passing; only
 * rounds that fall into a wait take time of their own, and none keeps a foil from coming out on
 * time.
 *
 * @param rounds every round, in order
 * @param free what is left of the waits between the rounds, in order
 */
public record Checks(List<Round> rounds, List<Schedule.Wait> free) {

  /**
   * One look into the foils.
   *
   * @param inPassing whether hands are at the foils anyway; then it ends when it starts
   */
  public record Round(Minutes start, Minutes end, boolean inPassing) {}

  public Checks {
    rounds = List.copyOf(rounds);
    free = List.copyOf(free);
  }

  /**
   * The rounds of a schedule.
   *
   * @param every from one round to the next, more than 0
   * @param length of one round, 0 or more
   */
  public static Checks of(Schedule schedule, Minutes every, Minutes length) {
    if (every.compareTo(Minutes.ZERO) <= 0 || length.compareTo(Minutes.ZERO) < 0) {
      throw new IllegalArgumentException(
          "a round every " + every + " that takes " + length + " is no plan");
    }
    List<Schedule.Wait> waits = schedule.waits();
    List<Round> rounds = new ArrayList<>();
    List<Schedule.Wait> free = new ArrayList<>(waits);
    Minutes first = firstDueFrom(schedule);
    for (int k = 0; first.plus(every.times(k)).compareTo(schedule.end()) < 0; k++) {
      Minutes at = first.plus(every.times(k));
      Optional<Schedule.Wait> in =
          waits.stream()
              .filter(w -> w.start().compareTo(at) <= 0 && at.compareTo(w.end()) < 0)
              .findFirst();
      Minutes end = in.isEmpty() ? at : earlier(at.plus(length), in.get().end());
      rounds.add(new Round(at, end, in.isEmpty()));
      if (in.isPresent()) {
        cut(free, at, end);
      }
    }
    free.removeIf(gap -> gap.length().compareTo(Minutes.ZERO) <= 0);
    return new Checks(rounds, free);
  }

  private static Minutes firstDueFrom(Schedule schedule) {
    Minutes first = schedule.end();
    for (int i = 0; i < schedule.foils().size(); i++) {
      FoilTask foil = schedule.foils().get(i);
      first = earlier(first, schedule.in(i).plus(foil.window().least()));
    }
    return first;
  }

  private static void cut(List<Schedule.Wait> free, Minutes from, Minutes to) {
    for (int i = 0; i < free.size(); i++) {
      Schedule.Wait gap = free.get(i);
      if (gap.start().compareTo(to) < 0 && from.compareTo(gap.end()) < 0) {
        Minutes start = from.compareTo(gap.start()) < 0 ? gap.start() : from;
        free.set(i, new Schedule.Wait(gap.start(), start));
        free.add(i + 1, new Schedule.Wait(earlier(to, gap.end()), gap.end()));
        i++;
      }
    }
  }

  private static Minutes earlier(Minutes a, Minutes b) {
    return a.compareTo(b) <= 0 ? a : b;
  }

  /** The longest unbroken stretch in which nobody is needed at the chair, if there is any. */
  public Optional<Schedule.Wait> longestFree() {
    return free.stream().max(Comparator.comparing(Schedule.Wait::length));
  }
}
