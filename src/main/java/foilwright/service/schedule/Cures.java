package foilwright.service.schedule;

import foilwright.service.TimeWindow;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntPredicate;

/**
 * What would cure foils that cannot be done one way, each change on its own and computed.
 *
 * @param foils in working order
 * @param hands pairs of hands
 * @param removal the way in which they cannot be done
 * @param overTime why not
 * @param cures every change, also those that do not help
 */
public record Cures(
    List<FoilTask> foils, int hands, Removal removal, OverTime overTime, List<Cure> cures) {
  /** Steps of the pace: 0.1 %. */
  private static final int PACES = 1000;

  public Cures {
    foils = List.copyOf(foils);
    Objects.requireNonNull(removal);
    Objects.requireNonNull(overTime);
    cures = List.copyOf(cures);
  }

  /**
   * @param weaker the window of a weaker mix, if there is one on the sheet
   * @throws IllegalArgumentException when the foils can be done this way
   */
  public static Cures of(
      List<FoilTask> foils, int hands, Removal removal, Optional<TimeWindow> weaker) {
    OverTime overTime =
        Scheduler.schedule(foils, hands, removal)
            .overTime()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        foils.size() + " foils need no cure: they can be done " + removal.words()));
    List<Cure> cures = new ArrayList<>();
    cures.add(fewerFoils(foils, hands, removal));
    cures.add(fasterPace(foils, hands, removal));
    cures.add(new Cure.AnotherPair(hands + 1, visit(foils, hands + 1, removal)));
    if (removal != Removal.IN_WAVES) {
      cures.add(new Cure.InWaves(Scheduler.schedule(foils, hands, Removal.IN_WAVES).schedule()));
    }
    if (removal != Removal.WHILE_PLACING) {
      cures.add(
          new Cure.OutWhilePlacing(
              Scheduler.schedule(foils, hands, Removal.WHILE_PLACING).schedule()));
    }
    weaker.ifPresent(window -> cures.add(weakerMix(foils, hands, removal, window)));
    cures.add(twoVisits(foils, hands, removal));
    return new Cures(foils, hands, removal, overTime, cures);
  }

  /**
   * Largest number up to {@code most} for which the condition holds; it must hold for all below.
   */
  private static int largest(int most, IntPredicate holds) {
    int low = 0;
    int high = most;
    while (low < high) {
      int middle = (low + high + 1) / 2;
      if (holds.test(middle)) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }

  private static boolean can(List<FoilTask> foils, int hands, Removal removal) {
    return Scheduler.possible(foils, hands, removal);
  }

  private static Cure fewerFoils(List<FoilTask> foils, int hands, Removal removal) {
    return new Cure.FewerFoils(
        foils.size(),
        largest(foils.size() - 1, first -> can(foils.subList(0, first), hands, removal)));
  }

  private static Cure fasterPace(List<FoilTask> foils, int hands, Removal removal) {
    double sum = foils.stream().mapToDouble(foil -> foil.placing().toMinutes()).sum();
    Minutes perFoil = Minutes.ofMinutes(sum / foils.size());
    int pace = largest(PACES, p -> can(paced(foils, p / (double) PACES), hands, removal));
    double factor = pace / (double) PACES;
    return pace == 0
        ? new Cure.FasterPace(Optional.empty(), perFoil)
        : new Cure.FasterPace(Optional.of(factor), perFoil.times(factor));
  }

  private static List<FoilTask> paced(List<FoilTask> foils, double factor) {
    return foils.stream()
        .map(
            foil ->
                new FoilTask(
                    foil.number(),
                    foil.slot(),
                    foil.before().times(factor),
                    foil.placing().times(factor),
                    foil.removal(),
                    foil.window()))
        .toList();
  }

  private static Cure weakerMix(
      List<FoilTask> foils, int hands, Removal removal, TimeWindow window) {
    List<FoilTask> changed = new ArrayList<>(foils);
    for (int first = 1; first <= foils.size(); first++) {
      FoilTask foil = foils.get(first - 1);
      changed.set(
          first - 1,
          new FoilTask(
              foil.number(), foil.slot(), foil.before(), foil.placing(), foil.removal(), window));
      if (can(changed, hands, removal)) {
        Optional<Schedule> schedule = Scheduler.schedule(changed, hands, removal).schedule();
        return new Cure.WeakerMixFirst(window, OptionalInt.of(first), schedule);
      }
    }
    return new Cure.WeakerMixFirst(window, OptionalInt.empty(), Optional.empty());
  }

  /**
   * A longer first visit makes the second shorter, so that the best parting is where the second is
   * no longer the longer one, or one foil before.
   */
  private static Cure twoVisits(List<FoilTask> foils, int hands, Removal removal) {
    int low = 1;
    int high = foils.size() - 1;
    while (low < high) {
      int middle = (low + high) / 2;
      if (secondNoLonger(foils, middle, hands, removal)) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    List<Schedule> best = List.of();
    double least = Double.POSITIVE_INFINITY;
    for (int first = Math.max(1, low - 1); first <= Math.min(low, foils.size() - 1); first++) {
      Optional<Schedule> one = visit(foils.subList(0, first), hands, removal);
      Optional<Schedule> two = visit(foils.subList(first, foils.size()), hands, removal);
      if (one.isPresent() && two.isPresent()) {
        double longer = Math.max(one.get().end().toMinutes(), two.get().end().toMinutes());
        if (longer < least) {
          least = longer;
          best = List.of(one.get(), two.get());
        }
      }
    }
    return new Cure.TwoVisits(best);
  }

  private static boolean secondNoLonger(
      List<FoilTask> foils, int first, int hands, Removal removal) {
    Optional<Schedule> two = visit(foils.subList(first, foils.size()), hands, removal);
    if (two.isEmpty()) {
      return false;
    }
    Optional<Schedule> one = visit(foils.subList(0, first), hands, removal);
    return one.isEmpty() || two.get().end().compareTo(one.get().end()) <= 0;
  }

  private static Optional<Schedule> visit(List<FoilTask> foils, int hands, Removal removal) {
    return can(foils, hands, removal)
        ? Scheduler.schedule(foils, hands, removal).schedule()
        : Optional.empty();
  }
}
