package foilwright.service.schedule;

import foilwright.service.schedule.Action.Work;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * When every foil is placed and taken out, in minutes from the moment the hands begin.
 *
 * @param foils in working order
 * @param hands pairs of hands, 1 or more
 * @param removal how foils come out
 * @param actions what the hands do, by start
 * @param lowerBound no schedule of these foils, hands and way of removing ends earlier
 */
public record Schedule(
    List<FoilTask> foils, int hands, Removal removal, List<Action> actions, Minutes lowerBound) {

  /** A stretch in which no hand does anything. */
  public record Wait(Minutes start, Minutes end) {
    public Minutes length() {
      return end.minus(start);
    }
  }

  public Schedule {
    foils = List.copyOf(foils);
    Objects.requireNonNull(removal);
    Objects.requireNonNull(lowerBound);
    actions = actions.stream().sorted(Comparator.comparing(Action::start)).toList();
    int[] in = new int[foils.size()];
    int[] out = new int[foils.size()];
    for (Action action : actions) {
      in[action.foil()] += action.work() == Work.PLACE ? 1 : 0;
      out[action.foil()] += action.work() == Work.REMOVE ? 1 : 0;
    }
    if (foils.isEmpty()
        || Arrays.stream(in).anyMatch(n -> n != 1)
        || Arrays.stream(out).anyMatch(n -> n != 1)) {
      throw new IllegalArgumentException("every foil is placed once and removed once");
    }
  }

  private Action find(Work work, int foil) {
    return actions.stream()
        .filter(a -> a.work() == work && a.foil() == foil)
        .findFirst()
        .orElseThrow();
  }

  /** When the placing of a foil begins; its index in working order from 0. */
  public Minutes begun(int foil) {
    return find(Work.PLACE, foil).start();
  }

  /** When a foil is in: the end of its placing, from which its exposure counts. */
  public Minutes in(int foil) {
    return find(Work.PLACE, foil).end();
  }

  /** When a foil is out: the end of its removal. */
  public Minutes out(int foil) {
    return find(Work.REMOVE, foil).end();
  }

  /** From the end of placing to the end of removal. */
  public Minutes exposure(int foil) {
    return out(foil).minus(in(foil));
  }

  /** The latest minute at which a foil may be out. */
  public Minutes outBy(int foil) {
    return in(foil).plus(foils.get(foil).window().most());
  }

  /** When the last foil is in. */
  public Minutes allIn() {
    return last(Work.PLACE);
  }

  /** When the last foil is out. */
  public Minutes end() {
    return last(Work.REMOVE);
  }

  private Minutes last(Work work) {
    return actions.stream()
        .filter(a -> a.work() == work)
        .map(Action::end)
        .max(Comparator.naturalOrder())
        .orElseThrow();
  }

  /**
   * How many foils are placed between one moment at which no foil is in and the next, in order; one
   * number when there is no such moment.
   */
  public List<Integer> waves() {
    List<Integer> waves = new ArrayList<>();
    int inHair = 0;
    for (Action action : actions) {
      if (action.work() == Work.PLACE) {
        if (inHair == 0) {
          waves.add(0);
        }
        inHair++;
        waves.set(waves.size() - 1, waves.get(waves.size() - 1) + 1);
      } else if (action.work() == Work.REMOVE) {
        inHair--;
      }
    }
    return List.copyOf(waves);
  }

  /** How many foils are out before the placing of the last one begins. */
  public int outWhilePlacing() {
    Minutes last = begun(foils.size() - 1);
    return (int)
        actions.stream()
            .filter(a -> a.work() == Work.REMOVE && a.end().compareTo(last) <= 0)
            .count();
  }

  /** Whether no schedule can end earlier; true within a millisecond. */
  public boolean proven() {
    return end().minus(lowerBound).toSeconds() < 1.5e-3;
  }

  /** Stretches between the first action and the end in which no hand does anything, in order. */
  public List<Wait> waits() {
    List<Wait> waits = new ArrayList<>();
    Minutes busyUntil = Minutes.ZERO;
    for (Action action : actions) {
      if (action.start().compareTo(busyUntil) > 0) {
        waits.add(new Wait(busyUntil, action.start()));
      }
      busyUntil = action.end().compareTo(busyUntil) > 0 ? action.end() : busyUntil;
    }
    return waits;
  }
}
