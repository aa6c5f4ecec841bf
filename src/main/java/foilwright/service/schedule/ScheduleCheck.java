package foilwright.service.schedule;

import foilwright.service.schedule.Action.Work;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Proves a schedule from its actions alone, by other means than those that made it: what each pair
 * of hands does, what each foil goes through, and what the way of removing asks.
 *
 * <p>Times are compared to {@value #ALLOWANCE_S} s, since they are kept to whole milliseconds.
 */
public final class ScheduleCheck {
  private static final double ALLOWANCE_S = 2e-3;

  private final Schedule schedule;
  private final List<String> violations = new ArrayList<>();

  private ScheduleCheck(Schedule schedule) {
    this.schedule = schedule;
  }

  /** What is wrong, in words; empty when the schedule keeps every rule. */
  public static List<String> violations(Schedule schedule) {
    ScheduleCheck check = new ScheduleCheck(schedule);
    check.hands();
    check.foils();
    check.placingOrder();
    check.removal();
    check.require(
        !later(schedule.lowerBound(), schedule.end()),
        "the lower bound %s is later than the end %s",
        schedule.lowerBound(),
        schedule.end());
    return List.copyOf(check.violations);
  }

  private static boolean later(Minutes a, Minutes b) {
    return a.toSeconds() > b.toSeconds() + ALLOWANCE_S;
  }

  private static boolean same(Minutes a, Minutes b) {
    return Math.abs(a.toSeconds() - b.toSeconds()) <= ALLOWANCE_S;
  }

  private void require(boolean holds, String words, Object... values) {
    if (!holds) {
      violations.add(String.format(Locale.ROOT, words, values));
    }
  }

  private Optional<Action> find(Work work, int foil) {
    return schedule.actions().stream()
        .filter(a -> a.work() == work && a.foil() == foil)
        .findFirst();
  }

  private Action place(int foil) {
    return find(Work.PLACE, foil).orElseThrow();
  }

  private Action remove(int foil) {
    return find(Work.REMOVE, foil).orElseThrow();
  }

  private static String words(Action action) {
    return action.work() + " foil index " + action.foil() + " at " + action.start();
  }

  private void hands() {
    for (int hands = 0; hands < schedule.hands(); hands++) {
      int which = hands;
      List<Action> own =
          schedule.actions().stream()
              .filter(a -> a.hands() == which)
              .filter(a -> !(together() && a.work() == Work.REMOVE))
              .sorted(Comparator.comparing(Action::start).thenComparing(Action::end))
              .toList();
      for (int i = 1; i < own.size(); i++) {
        require(
            !later(own.get(i - 1).end(), own.get(i).start()),
            "hands %d do two things at once: %s and %s",
            which,
            words(own.get(i - 1)),
            words(own.get(i)));
      }
    }
    for (Action action : schedule.actions()) {
      require(action.hands() < schedule.hands(), "there are no hands %d", action.hands());
    }
  }

  private boolean together() {
    return schedule.removal() == Removal.TOGETHER;
  }

  private void foils() {
    for (int foil = 0; foil < schedule.foils().size(); foil++) {
      FoilTask task = schedule.foils().get(foil);
      Action place = place(foil);
      Action remove = remove(foil);
      Minutes exposure = remove.end().minus(place.end());
      require(
          !later(task.window().least(), exposure) && !later(exposure, task.window().most()),
          "foil %d develops %s, outside its window",
          task.number(),
          exposure);
      require(
          !later(place.end(), remove.start()), "foil %d is removed before it is in", task.number());
      require(
          same(place.end().minus(place.start()), task.placing()),
          "placing foil %d takes another time than given",
          task.number());
      require(
          same(remove.end().minus(remove.start()), together() ? Minutes.ZERO : task.removal()),
          "removing foil %d takes another time than given",
          task.number());
      before(foil, task, place);
    }
  }

  private void before(int foil, FoilTask task, Action place) {
    long count =
        schedule.actions().stream()
            .filter(a -> a.work() == Work.BEFORE && a.foil() == foil)
            .count();
    Optional<Action> before = find(Work.BEFORE, foil);
    if (before.isEmpty()) {
      require(
          same(task.before(), Minutes.ZERO),
          "what comes before foil %d is left out",
          task.number());
      return;
    }
    require(count == 1, "what comes before foil %d is done %d times", task.number(), count);
    require(
        before.get().hands() == place.hands() && same(before.get().end(), place.start()),
        "what comes before foil %d is not done right before it by the same hands",
        task.number());
    require(
        same(before.get().end().minus(before.get().start()), task.before()),
        "what comes before foil %d takes another time than given",
        task.number());
  }

  private void placingOrder() {
    for (int foil = 1; foil < schedule.foils().size(); foil++) {
      require(
          !later(place(foil - 1).start(), place(foil).start()),
          "foil %d is placed before the one before it",
          schedule.foils().get(foil).number());
    }
  }

  private void removal() {
    int n = schedule.foils().size();
    switch (schedule.removal()) {
      case TOGETHER -> {
        for (int foil = 0; foil < n; foil++) {
          require(
              same(remove(foil).end(), schedule.end())
                  && !later(schedule.allIn(), remove(foil).end()),
              "foil index %d is not out with all others",
              foil);
        }
      }
      case IN_PLACING_ORDER -> inOrder(0, n);
      case IN_WAVES -> {
        int from = 0;
        for (int wave : schedule.waves()) {
          inOrder(from, from + wave);
          from += wave;
        }
      }
      case WHILE_PLACING -> {
        // Any order is allowed.
      }
    }
  }

  private void inOrder(int from, int to) {
    for (int foil = from; foil < to; foil++) {
      for (int other = from; other < to; other++) {
        require(
            !later(place(other).end(), remove(foil).start()),
            "foil index %d is removed while others of its wave are still placed",
            foil);
      }
      require(
          foil == from || !later(remove(foil - 1).start(), remove(foil).start()),
          "foil index %d is removed before the one before it",
          foil);
    }
  }
}
