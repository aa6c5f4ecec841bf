package foilwright.service.schedule;

import java.util.List;

/**
 * Finds when to place foils in a given order and when to take them out, so that the last is out
 * earliest and every foil stays inside its window.
 *
 * <p>Placing may be delayed on purpose where that keeps a window. Times are exact to a millisecond.
 */
public final class Scheduler {
  private Scheduler() {}

  /**
   * The schedule with the least end, or which foil is first over its time. For two or more pairs of
   * hands and more than 20 foils the end may not be the least; {@link Schedule#lowerBound} tells
   * how far it can be off.
   *
   * @param foils in placing order, at least one
   * @param hands pairs of hands, 1 or more
   */
  public static ScheduleResult schedule(List<FoilTask> foils, int hands, Removal removal) {
    if (foils.isEmpty() || hands < 1) {
      throw new IllegalArgumentException(
          foils.size() + " foils cannot be scheduled for " + hands + " pairs of hands");
    }
    Times times = new Times(foils);
    if (hands > 1) {
      return ManyHands.schedule(times, hands, removal);
    }
    return switch (removal) {
      case TOGETHER, IN_PLACING_ORDER -> FixedOrder.schedule(times, removal);
      case IN_WAVES -> Waves.schedule(times);
      case WHILE_PLACING -> Interleaving.schedule(times);
    };
  }

  /**
   * Whether there is a schedule: the same answer as {@link #schedule} gives, but for two or more
   * pairs of hands and more than 20 foils, where a schedule that is hard to find may be missed.
   *
   * @param foils in placing order, at least one
   * @param hands pairs of hands, 1 or more
   */
  public static boolean possible(List<FoilTask> foils, int hands, Removal removal) {
    return hands == 1
        ? schedule(foils, hands, removal).schedule().isPresent()
        : ManyHands.possible(new Times(foils), hands, removal);
  }
}
