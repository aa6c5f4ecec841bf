package foilwright.service;

import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import foilwright.units.Density;
import foilwright.units.Length;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * How long one visit takes the chair, as a range, for one pair of hands that places all foils and
 * then removes them in the order of placing.
 *
 * <p>Between the last foil in and the first foil out the hands wait until the last foil to come out
 * will have had its least time, and at most until some foil would pass its greatest time. Both
 * bounds follow from the usual times of placing and removing; where they contradict each other the
 * estimate says so and names the foil. No foil is taken out while others are still placed: where
 * that is needed this estimate is too long.
 *
 * @param pace whose hands
 * @param blocks the visit in order
 * @param bowls bowls to mix by mix slot: a fresh one whenever the last has stood its time between
 *     the slot's first foil and its last, at the usual pace
 * @param total the whole visit
 * @param problems foils that would leave their window
 */
public record AppointmentEstimate(
    PaceProfile pace,
    List<Block> blocks,
    Map<String, Integer> bowls,
    TimeEstimate total,
    List<Problem> problems) {

  /** One part of the visit. */
  public record Block(AppointmentPhase phase, TimeEstimate time) {}

  public AppointmentEstimate {
    blocks = List.copyOf(blocks);
    bowls = Collections.unmodifiableMap(new TreeMap<>(bowls));
    problems = List.copyOf(problems);
  }

  /**
   * @param placement at least one foil
   * @param products what each mix slot of the placement holds
   * @param meanLength mean hair length over the head, for drying
   * @param density over the head, for drying
   * @throws IllegalArgumentException when there is no foil, or a slot without a product
   */
  public static AppointmentEstimate of(
      Placement placement,
      PaceProfile pace,
      Map<String, ProductEntry> products,
      Length meanLength,
      Density density) {
    if (placement.foils().isEmpty()) {
      throw new IllegalArgumentException("a visit without foils has no estimate");
    }
    List<Clock> usual = clocks(placement, pace, products, 1);
    Map<String, Integer> bowls = bowls(usual);
    Gap gap = Gap.of(usual);
    Map<AppointmentPhase, List<ThreePoint>> times = new EnumMap<>(AppointmentPhase.class);
    times.put(AppointmentPhase.CONSULT, List.of(pace.of(PaceEntry.CONSULT)));
    times.put(AppointmentPhase.GOWN_AND_SECTION, List.of(pace.of(PaceEntry.GOWN_AND_SECTION)));
    int bowlCount = bowls.values().stream().mapToInt(Integer::intValue).sum();
    times.put(AppointmentPhase.MIX, Collections.nCopies(bowlCount, pace.of(PaceEntry.MIX_BOWL)));
    times.put(
        AppointmentPhase.PLACE,
        PlacingStep.of(placement, pace).stream().flatMap(step -> step.times().stream()).toList());
    times.put(AppointmentPhase.DEVELOP, List.of(gap.time()));
    times.put(
        AppointmentPhase.REMOVE,
        Collections.nCopies(placement.foils().size(), pace.of(PaceEntry.REMOVE_FOIL)));
    times.put(AppointmentPhase.RINSE, List.of(pace.of(PaceEntry.RINSE)));
    times.put(AppointmentPhase.APPLY_TONER, List.of(pace.of(PaceEntry.APPLY_TONER)));
    times.put(AppointmentPhase.DEVELOP_TONER, List.of(pace.of(PaceEntry.DEVELOP_TONER)));
    times.put(AppointmentPhase.WASH, List.of(pace.of(PaceEntry.WASH)));
    times.put(AppointmentPhase.DRY, List.of(pace.drying(meanLength, density)));
    times.put(AppointmentPhase.RECORD, List.of(pace.of(PaceEntry.RECORD)));

    List<Block> blocks = new ArrayList<>();
    List<ThreePoint> hands = new ArrayList<>();
    List<ThreePoint> waits = new ArrayList<>();
    for (AppointmentPhase phase : AppointmentPhase.values()) {
      List<ThreePoint> parts = times.get(phase);
      (phase.hands() ? hands : waits).addAll(parts);
      blocks.add(
          new Block(
              phase,
              TimeEstimate.ofSum(
                  phase.hands() ? parts : List.of(),
                  phase.hands() ? List.of() : parts,
                  pace.daySpread())));
    }
    TimeEstimate total = TimeEstimate.ofSum(hands, waits, pace.daySpread());
    return new AppointmentEstimate(
        pace, blocks, bowls, total, overTime(placement, pace, products, gap));
  }

  /** One foil on the clock: minutes of its placing, end of placing and time to remove. */
  private record Clock(
      PlacedFoil foil, ProductEntry product, double startMin, double endMin, double removalMin) {}

  /** All foils on the clock at the usual pace times a factor, from the first parting. */
  private static List<Clock> clocks(
      Placement placement, PaceProfile pace, Map<String, ProductEntry> products, double factor) {
    List<Clock> clocks = new ArrayList<>();
    double now = 0;
    double removal = factor * pace.of(PaceEntry.REMOVE_FOIL).usual().toMinutes();
    for (PlacingStep step : PlacingStep.of(placement, pace)) {
      ProductEntry product = products.get(step.foil().mix());
      if (product == null) {
        throw new IllegalArgumentException("no product for mix slot " + step.foil().mix());
      }
      double start = now + factor * step.setting().usual().toMinutes();
      now = start + factor * step.placing().usual().toMinutes();
      clocks.add(new Clock(step.foil(), product, start, now, removal));
    }
    return clocks;
  }

  private static Map<String, Integer> bowls(List<Clock> clocks) {
    Map<String, Double> first = new TreeMap<>();
    Map<String, Integer> bowls = new TreeMap<>();
    for (Clock clock : clocks) {
      String slot = clock.foil().mix();
      double stood = clock.endMin() - first.computeIfAbsent(slot, s -> clock.startMin());
      double life = clock.product().bowlLife().toMinutes();
      bowls.put(slot, Math.max(1, (int) Math.ceil(stood / life - 1e-9)));
    }
    return bowls;
  }

  /**
   * Free minutes between the last foil in and the start of removing.
   *
   * @param leastMin so that every foil has its least time; 0 or more
   * @param mostMin so that no foil passes its greatest time; below {@code leastMin} when some must
   * @param tightest the foil that sets {@code mostMin}
   */
  private record Gap(double leastMin, double mostMin, Clock tightest) {
    static Gap of(List<Clock> clocks) {
      double last = clocks.get(clocks.size() - 1).endMin();
      double least = 0;
      double most = Double.POSITIVE_INFINITY;
      Clock tightest = clocks.get(0);
      double removed = 0;
      for (Clock clock : clocks) {
        removed += clock.removalMin();
        double alreadyIn = last - clock.endMin() + removed;
        least = Math.max(least, clock.product().window().least().toMinutes() - alreadyIn);
        double room = clock.product().window().most().toMinutes() - alreadyIn;
        if (room < most) {
          most = room;
          tightest = clock;
        }
      }
      return new Gap(least, most, tightest);
    }

    boolean possible() {
      return mostMin >= leastMin - 1e-9;
    }

    ThreePoint time() {
      double most = Math.max(leastMin, mostMin);
      return ThreePoint.ofMinutes(leastMin, (leastMin + most) / 2, most);
    }
  }

  private static List<Problem> overTime(
      Placement placement, PaceProfile pace, Map<String, ProductEntry> products, Gap usual) {
    if (!usual.possible()) {
      return List.of(overTime("foil-over-time", "at the usual pace", usual, pace));
    }
    TimeEstimate placing = PlacingTime.of(placement, pace).total();
    double slowDay = placing.p90().toMinutes() / placing.usual().toMinutes();
    Gap slow = Gap.of(clocks(placement, pace, products, slowDay));
    return slow.possible()
        ? List.of()
        : List.of(overTime("foil-over-time-slow-day", "on a slow day (1 in 10)", slow, pace));
  }

  private static Problem overTime(String code, String when, Gap gap, PaceProfile pace) {
    Clock clock = gap.tightest();
    TimeWindow window = clock.product().window();
    Minutes perFoil = pace.placing(clock.foil()).usual();
    return Problem.warning(
            code,
            "",
            String.format(
                Locale.ROOT,
                "%s, foil %d would be %.0f min over its %.0f min when all foils are placed first and"
                    + " then removed in the same order (pace %s)",
                when,
                clock.foil().number(),
                gap.leastMin() - gap.mostMin(),
                window.most().toMinutes(),
                pace.name()),
            String.format(
                Locale.ROOT,
                "take foils out as they fall due while placing, work in waves of at most %d foils,"
                    + " place fewer foils, or ask for a second pair of hands",
                window.foilsOutTogether(perFoil)))
        .at(clock.foil().centre());
  }
}
