package foilwright.service.schedule;

import foilwright.service.schedule.Action.Work;
import foilwright.units.Minutes;
import java.util.List;

/**
 * Foils as rows of whole milliseconds, so that sums are exact. A block is what one pair of hands
 * does for a foil without a break until it is in: {@code before} and {@code placing}.
 */
final class Times {
  final List<FoilTask> foils;
  final int n;
  final long[] before;
  final long[] block;

  /** Sum of the blocks up to and including a foil. */
  final long[] blocks;

  final long[] removal;
  final long[] least;
  final long[] most;

  Times(List<FoilTask> foils) {
    this.foils = List.copyOf(foils);
    n = foils.size();
    before = new long[n];
    block = new long[n];
    blocks = new long[n];
    removal = new long[n];
    least = new long[n];
    most = new long[n];
    for (int i = 0; i < n; i++) {
      FoilTask foil = foils.get(i);
      before[i] = millis(foil.before());
      block[i] = before[i] + millis(foil.placing());
      blocks[i] = block[i] + (i > 0 ? blocks[i - 1] : 0);
      removal[i] = millis(foil.removal());
      least[i] = millis(foil.window().least());
      most[i] = millis(foil.window().most());
    }
  }

  static long millis(Minutes time) {
    return Math.round(time.toSeconds() * 1000);
  }

  static Minutes minutes(long millis) {
    return Minutes.ofSeconds(millis / 1000.0);
  }

  /** From the end of one foil's placing to the end of a later one's when nothing is between. */
  long between(int early, int late) {
    return blocks[late] - blocks[early];
  }

  /** A time by which any schedule that can end at all can also end. */
  long horizon() {
    long sum = 1;
    for (int i = 0; i < n; i++) {
      sum += block[i] + removal[i] + Math.max(least[i], removal[i]);
    }
    return sum;
  }

  /** Adds what one pair of hands does so that a foil is in at a time. */
  void addPlacing(List<Action> actions, int foil, int hands, long in) {
    long start = in - block[foil];
    long placing = start + before[foil];
    if (before[foil] > 0) {
      actions.add(new Action(Work.BEFORE, foil, hands, minutes(start), minutes(placing)));
    }
    actions.add(new Action(Work.PLACE, foil, hands, minutes(placing), minutes(in)));
  }

  void addRemoval(List<Action> actions, int foil, int hands, long out, long length) {
    actions.add(new Action(Work.REMOVE, foil, hands, minutes(out - length), minutes(out)));
  }
}
