package foilwright.service.schedule;

import foilwright.service.schedule.Action.Work;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.List;

/**
 * Gathers the waits after the last foil is in, so that the longest of them is as long as it can be
 * without a later end.
 *
 * <p>The removals keep their order, and the last one its end. A wait before one of them is longest
 * when all before it come as early and all from it on as late as their windows let them; the place
 * with the longest wait is taken, the first among equals. The removals on both sides then close up
 * towards it, so that few short waits remain elsewhere.
 */
public final class Gathering {
  private Gathering() {}

  /** The same schedule with its waits gathered; unchanged for more than one pair of hands. */
  public static Schedule of(Schedule schedule) {
    Minutes allIn = schedule.allIn();
    List<Action> kept = new ArrayList<>();
    List<Action> removals = new ArrayList<>();
    for (Action action : schedule.actions()) {
      boolean after = action.work() == Work.REMOVE && action.start().compareTo(allIn) >= 0;
      (after ? removals : kept).add(action);
    }
    int n = removals.size();
    if (schedule.hands() != 1 || schedule.removal() == Removal.TOGETHER || n == 0) {
      return schedule;
    }
    Minutes[] earliest = new Minutes[n];
    Minutes now = allIn;
    for (int i = 0; i < n; i++) {
      earliest[i] = later(now, dueFrom(schedule, removals.get(i)));
      now = earliest[i].plus(length(removals.get(i)));
    }
    Minutes[] latest = new Minutes[n];
    now = removals.get(n - 1).end();
    for (int i = n - 1; i >= 0; i--) {
      Minutes end = earlier(now, schedule.outBy(removals.get(i).foil()));
      latest[i] = end.minus(length(removals.get(i)));
      now = latest[i];
    }
    int gap = 0;
    Minutes longest = latest[0].minus(allIn);
    for (int i = 1; i < n; i++) {
      Minutes wait = latest[i].minus(earliest[i - 1].plus(length(removals.get(i - 1))));
      if (wait.minus(longest).toSeconds() > 1e-3) {
        gap = i;
        longest = wait;
      }
    }
    Minutes[] start = new Minutes[n];
    now = gap == 0 ? allIn : earliest[gap - 1].plus(length(removals.get(gap - 1)));
    for (int i = gap - 1; i >= 0; i--) {
      start[i] = earlier(now.minus(length(removals.get(i))), latest[i]);
      now = start[i];
    }
    now = latest[gap];
    for (int i = gap; i < n; i++) {
      start[i] = later(now, earliest[i]);
      now = start[i].plus(length(removals.get(i)));
    }
    for (int i = 0; i < n; i++) {
      Action old = removals.get(i);
      kept.add(
          new Action(Work.REMOVE, old.foil(), old.hands(), start[i], start[i].plus(length(old))));
    }
    return new Schedule(
        schedule.foils(), schedule.hands(), schedule.removal(), kept, schedule.lowerBound());
  }

  private static Minutes length(Action action) {
    return action.end().minus(action.start());
  }

  /** The earliest start at which the foil has had its least time by the end of its removal. */
  private static Minutes dueFrom(Schedule schedule, Action removal) {
    return schedule
        .in(removal.foil())
        .plus(schedule.foils().get(removal.foil()).window().least())
        .minus(length(removal));
  }

  private static Minutes earlier(Minutes a, Minutes b) {
    return a.compareTo(b) <= 0 ? a : b;
  }

  private static Minutes later(Minutes a, Minutes b) {
    return a.compareTo(b) >= 0 ? a : b;
  }
}
