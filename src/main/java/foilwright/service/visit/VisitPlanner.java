package foilwright.service.visit;

import foilwright.placement.Placement;
import foilwright.service.AppointmentPhase;
import foilwright.service.PaceEntry;
import foilwright.service.PaceProfile;
import foilwright.service.PlacingStep;
import foilwright.service.ThreePoint;
import foilwright.service.TimeEstimate;
import foilwright.service.TimeRange;
import foilwright.service.TimeWindow;
import foilwright.service.mix.Bowls;
import foilwright.service.mix.MixPlan;
import foilwright.service.schedule.Action;
import foilwright.service.schedule.Cure;
import foilwright.service.schedule.Cures;
import foilwright.service.schedule.FoilTask;
import foilwright.service.schedule.Gathering;
import foilwright.service.schedule.OverTime;
import foilwright.service.schedule.Removal;
import foilwright.service.schedule.Schedule;
import foilwright.service.schedule.ScheduleResult;
import foilwright.service.schedule.Scheduler;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Plans visits: puts the foils of a placement on the two clocks, with the bowls that have to be
 * mixed in between.
 */
public final class VisitPlanner {
  /** Hands that wait for less than this stay at the chair. */
  private static final Minutes SHORTEST_TOLD = Minutes.ofMinutes(1);

  private static final String DEVELOP = AppointmentPhase.DEVELOP.words();

  private final VisitTerms terms;
  private final Placement placement;
  private final List<PlacingStep> steps;
  private final int hands;
  private final double slowFactor;

  private VisitPlanner(Placement placement, VisitTerms terms, int hands) {
    this.terms = terms;
    this.placement = placement;
    this.steps = PlacingStep.of(placement, terms.pace());
    this.hands = hands;
    List<ThreePoint> times = new ArrayList<>();
    for (AppointmentPhase phase : AppointmentPhase.values()) {
      if (phase.hands()) {
        times.addAll(times(phase));
      }
    }
    TimeEstimate all = TimeEstimate.ofSum(times, List.of(), terms.pace().daySpread());
    this.slowFactor = all.p90().toMinutes() / all.mean().toMinutes();
  }

  /**
   * What came of planning a visit.
   *
   * @param visit empty when some foil would leave its window in the way that was asked for
   * @param failed why there is no visit
   * @param straight what stands in the way of the simplest way
   * @param cures what would keep every window, when the simplest way does not: on a usual day, or
   *     on a slow day when only that needs one
   */
  public record Outcome(
      Optional<Visit> visit, Optional<OverTime> failed, Visit.Straight straight, List<Cure> cures) {
    public Outcome {
      cures = List.copyOf(cures);
    }
  }

  /**
   * Plans a visit.
   *
   * @param placement at least one foil
   * @param removal how foils are to come out; when empty, all in and then out in the order of
   *     placing where no foil leaves its window by that, else out as they fall due
   * @param hands pairs of hands, 1 or more
   * @throws IllegalArgumentException when there is no foil, or a slot without a product
   */
  public static Outcome plan(
      Placement placement, VisitTerms terms, Optional<Removal> removal, int hands) {
    if (placement.foils().isEmpty()) {
      throw new IllegalArgumentException("a visit without foils has no times");
    }
    placement.foils().forEach(terms::product);
    return new VisitPlanner(placement, terms, hands).plan(removal);
  }

  /**
   * The foils of a placement as the clocks see them on a usual day, with one bowl for all.
   *
   * @param placement at least one foil
   */
  public static List<FoilTask> tasks(Placement placement, VisitTerms terms) {
    return new VisitPlanner(placement, terms, 1).tasks(1, Set.of());
  }

  private Outcome plan(Optional<Removal> removal) {
    Clocked straight = clocked(1, Removal.IN_PLACING_ORDER);
    Clocked straightSlow = clocked(slowFactor, Removal.IN_PLACING_ORDER);
    Clocked usual = straight;
    if (removal.isPresent()) {
      usual = clocked(1, removal.get());
    } else if (straight.result().schedule().isEmpty()) {
      usual = clocked(1, Removal.WHILE_PLACING);
    }
    Visit.Straight finding =
        new Visit.Straight(
            straight.result().overTime(),
            straightSlow.result().overTime(),
            lastSafe(tasks(1, straight.fresh())));
    List<Cure> cures = List.of();
    if (finding.usual().isPresent() || finding.slow().isPresent()) {
      List<FoilTask> tasks =
          finding.usual().isPresent()
              ? tasks(1, usual.fresh())
              : tasks(slowFactor, straightSlow.fresh());
      cures = Cures.of(tasks, hands, Removal.IN_PLACING_ORDER, weakerWindow()).cures();
    }
    Optional<Visit> visit = Optional.empty();
    if (usual.result().schedule().isPresent()) {
      visit = Optional.of(visit(Gathering.of(usual.result().schedule().get()), usual.fresh()));
    }
    return new Outcome(visit, usual.result().overTime(), finding, cures);
  }

  private Visit visit(Schedule schedule, Set<Integer> fresh) {
    Clocked slow = clocked(slowFactor, schedule.removal());
    if (slow.result().schedule().isEmpty()) {
      slow = clocked(slowFactor, Removal.WHILE_PLACING);
    }
    Optional<Schedule> slowDay = slow.result().schedule();
    Checks checks =
        Checks.of(
            schedule,
            placement.foils().stream()
                .map(foil -> terms.product(foil).checkEvery())
                .min(Comparator.naturalOrder())
                .orElseThrow(),
            terms.pace().of(PaceEntry.CHECK_ROUND).mean());
    MixPlan mix = MixPlan.of(placement, terms.products(), terms.mixing(), placed(schedule), fresh);
    Set<Integer> slowFresh = slow.fresh();
    int slowBowls = slowDay.map(s -> bowls(s, slowFresh).bowls().size()).orElse(mix.bowls().size());
    Minutes before =
        mean(AppointmentPhase.CONSULT)
            .plus(mean(AppointmentPhase.GOWN_AND_SECTION))
            .plus(mean(AppointmentPhase.MIX));
    return new Visit(
        terms,
        placement,
        before,
        schedule,
        slowDay,
        checks,
        mix,
        Math.max(slowBowls, mix.bowls().size()),
        phases(schedule, slowDay),
        blocks(schedule, checks, before),
        foilTime(schedule, slowDay),
        chair(schedule, slowDay));
  }

  private List<ThreePoint> times(AppointmentPhase phase) {
    PaceProfile pace = terms.pace();
    return switch (phase) {
      case CONSULT -> List.of(pace.of(PaceEntry.CONSULT));
      case GOWN_AND_SECTION -> List.of(pace.of(PaceEntry.GOWN_AND_SECTION));
      case MIX -> List.of(pace.of(PaceEntry.MIX_BOWL));
      case PLACE -> steps.stream().flatMap(step -> step.times().stream()).toList();
      case DEVELOP -> List.of();
      case REMOVE -> Collections.nCopies(steps.size(), pace.of(PaceEntry.REMOVE_FOIL));
      case RINSE -> List.of(pace.of(PaceEntry.RINSE));
      case APPLY_TONER -> List.of(pace.of(PaceEntry.APPLY_TONER));
      case DEVELOP_TONER -> List.of(pace.of(PaceEntry.DEVELOP_TONER));
      case WASH -> List.of(pace.of(PaceEntry.WASH));
      case DRY -> List.of(pace.drying(terms.meanLength(), terms.density()));
      case RECORD -> List.of(pace.of(PaceEntry.RECORD));
    };
  }

  /**
   * The foils on the clocks under one way of removing.
   *
   * @param fresh numbers of the foils before which a bowl is mixed
   */
  private record Clocked(ScheduleResult result, Set<Integer> fresh) {}

  /** Bowls move the schedule and the schedule moves the bowls, until the bowls stay. */
  private Clocked clocked(double factor, Removal removal) {
    Set<Integer> fresh = Set.of(steps.get(0).foil().number());
    while (true) {
      ScheduleResult result = Scheduler.schedule(tasks(factor, fresh), hands, removal);
      Optional<Set<Integer>> next = Optional.empty();
      if (result.schedule().isPresent()) {
        next = bowls(result.schedule().get(), fresh).next(fresh);
      }
      if (next.isEmpty()) {
        return new Clocked(result, fresh);
      }
      fresh = next.get();
    }
  }

  private Bowls bowls(Schedule schedule, Set<Integer> fresh) {
    return Bowls.of(
        MixPlan.foils(placement, terms.products(), placed(schedule)),
        terms.products(),
        terms.mixing(),
        fresh);
  }

  private static List<MixPlan.Placed> placed(Schedule schedule) {
    return IntStream.range(0, schedule.foils().size())
        .mapToObj(i -> new MixPlan.Placed(schedule.begun(i), schedule.in(i)))
        .toList();
  }

  /** The window of the weakest product that lightens and is not in use, if it lasts longer. */
  private Optional<TimeWindow> weakerWindow() {
    return weaker(placement, terms).map(slot -> terms.products().get(slot).window());
  }

  /**
   * The slot whose product lightens with the weakest developer, when it may stay longer than every
   * product that the foils carry.
   */
  public static Optional<String> weaker(Placement placement, VisitTerms terms) {
    Minutes most =
        placement.foils().stream()
            .map(foil -> terms.window(foil).most())
            .min(Comparator.naturalOrder())
            .orElseThrow();
    return terms.products().entrySet().stream()
        .filter(e -> e.getValue().kind().lightens())
        .filter(e -> e.getValue().window().most().compareTo(most) > 0)
        .min(Comparator.comparing(e -> e.getValue().developerStrength()))
        .map(Map.Entry::getKey);
  }

  private List<FoilTask> tasks(double factor, Set<Integer> freshBefore) {
    Minutes mixing = terms.pace().of(PaceEntry.MIX_BOWL).mean();
    Minutes removal = terms.pace().of(PaceEntry.REMOVE_FOIL).mean();
    List<FoilTask> tasks = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      PlacingStep step = steps.get(i);
      Minutes before = step.setting().mean();
      // The first bowl of the visit is ready when the first section is set.
      if (i > 0 && freshBefore.contains(step.foil().number())) {
        before = before.plus(mixing);
      }
      tasks.add(
          new FoilTask(
              step.foil().number(),
              step.foil().mix(),
              before.times(factor),
              step.placing().mean().times(factor),
              removal.times(factor),
              terms.window(step.foil())));
    }
    return tasks;
  }

  /**
   * How many of the first foils can go straight in and come out in order, all inside windows; what
   * holds for so many holds for fewer.
   */
  private int lastSafe(List<FoilTask> tasks) {
    int low = 0;
    int high = tasks.size();
    while (low < high) {
      int middle = (low + high + 1) / 2;
      if (Scheduler.possible(tasks.subList(0, middle), hands, Removal.IN_PLACING_ORDER)) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }

  private Minutes mean(AppointmentPhase phase) {
    return times(phase).stream().map(ThreePoint::mean).reduce(Minutes.ZERO, Minutes::plus);
  }

  private Map<AppointmentPhase, TimeRange> phases(Schedule schedule, Optional<Schedule> slow) {
    Map<AppointmentPhase, TimeRange> phases = new EnumMap<>(AppointmentPhase.class);
    for (AppointmentPhase phase : AppointmentPhase.values()) {
      TimeEstimate sum =
          TimeEstimate.ofSum(
              phase.hands() ? times(phase) : List.of(),
              phase.hands() ? List.of() : times(phase),
              terms.pace().daySpread());
      phases.put(phase, new TimeRange(sum.p50(), sum.p90()));
    }
    Minutes waiting = waiting(schedule);
    phases.put(
        AppointmentPhase.DEVELOP,
        TimeRange.between(waiting, slow.map(VisitPlanner::waiting).orElse(waiting)));
    return phases;
  }

  private static Minutes waiting(Schedule schedule) {
    return schedule.waits().stream().map(Schedule.Wait::length).reduce(Minutes.ZERO, Minutes::plus);
  }

  private TimeRange foilTime(Schedule schedule, Optional<Schedule> slow) {
    Minutes usual = schedule.end();
    return TimeRange.between(usual, slow.map(Schedule::end).orElse(usual.times(slowFactor)));
  }

  private TimeRange chair(Schedule schedule, Optional<Schedule> slow) {
    Minutes around = Minutes.ZERO;
    for (AppointmentPhase phase : AppointmentPhase.values()) {
      if (phase.hands() && phase != AppointmentPhase.PLACE && phase != AppointmentPhase.REMOVE) {
        around = around.plus(mean(phase));
      }
    }
    Minutes toner = mean(AppointmentPhase.DEVELOP_TONER);
    TimeRange foils = foilTime(schedule, slow);
    return TimeRange.between(
        around.plus(toner).plus(foils.p50()),
        around.times(slowFactor).plus(toner).plus(foils.p90()));
  }

  /** Stretches of a usual day one after another. */
  private List<Block> blocks(Schedule schedule, Checks checks, Minutes before) {
    List<Block> blocks = new ArrayList<>();
    Minutes now = Minutes.ZERO;
    for (AppointmentPhase phase :
        List.of(
            AppointmentPhase.CONSULT, AppointmentPhase.GOWN_AND_SECTION, AppointmentPhase.MIX)) {
      now = add(blocks, phase.words(), Block.Kind.HANDS, now, now.plus(mean(phase)));
    }
    Optional<Schedule.Wait> free =
        checks.longestFree().filter(gap -> gap.length().compareTo(SHORTEST_TOLD) >= 0);
    Minutes busy = Minutes.ZERO;
    for (Schedule.Wait wait : schedule.waits()) {
      if (wait.length().compareTo(SHORTEST_TOLD) < 0) {
        continue;
      }
      work(blocks, schedule, before, busy, wait.start());
      if (free.isPresent() && inside(free.get(), wait)) {
        add(
            blocks,
            DEVELOP,
            Block.Kind.DEVELOPING,
            before.plus(wait.start()),
            before.plus(free.get().start()));
        add(
            blocks,
            DEVELOP,
            Block.Kind.FREE,
            before.plus(free.get().start()),
            before.plus(free.get().end()));
        add(
            blocks,
            DEVELOP,
            Block.Kind.DEVELOPING,
            before.plus(free.get().end()),
            before.plus(wait.end()));
      } else {
        add(
            blocks,
            DEVELOP,
            Block.Kind.DEVELOPING,
            before.plus(wait.start()),
            before.plus(wait.end()));
      }
      busy = wait.end();
    }
    work(blocks, schedule, before, busy, schedule.end());
    now = before.plus(schedule.end());
    for (AppointmentPhase phase :
        List.of(
            AppointmentPhase.RINSE,
            AppointmentPhase.APPLY_TONER,
            AppointmentPhase.DEVELOP_TONER,
            AppointmentPhase.WASH,
            AppointmentPhase.DRY,
            AppointmentPhase.RECORD)) {
      Block.Kind kind = phase.hands() ? Block.Kind.HANDS : Block.Kind.DEVELOPING;
      now = add(blocks, phase.words(), kind, now, now.plus(mean(phase)));
    }
    return blocks;
  }

  private static boolean inside(Schedule.Wait inner, Schedule.Wait outer) {
    return inner.start().compareTo(outer.start()) >= 0 && inner.end().compareTo(outer.end()) <= 0;
  }

  private static Minutes add(
      List<Block> blocks, String name, Block.Kind kind, Minutes start, Minutes end) {
    if (end.compareTo(start) > 0) {
      blocks.add(new Block(name, kind, start, end));
    }
    return end;
  }

  /** A busy stretch of the schedule, named by what is done in it. */
  private static void work(
      List<Block> blocks, Schedule schedule, Minutes before, Minutes from, Minutes to) {
    boolean placing = false;
    boolean removing = false;
    boolean between = false;
    Minutes allIn = schedule.allIn();
    for (Action action : schedule.actions()) {
      if (action.start().compareTo(from) >= 0 && action.start().compareTo(to) < 0) {
        boolean out = action.work() == Action.Work.REMOVE;
        removing |= out;
        placing |= !out;
        between |= out && action.start().compareTo(allIn) < 0;
      }
    }
    String place = AppointmentPhase.PLACE.words();
    String remove = AppointmentPhase.REMOVE.words();
    if (placing && removing && !between) {
      add(blocks, place, Block.Kind.HANDS, before.plus(from), before.plus(allIn));
      add(blocks, remove, Block.Kind.HANDS, before.plus(allIn), before.plus(to));
      return;
    }
    String name =
        placing && removing
            ? "place foils and take out those that are due"
            : placing ? place : remove;
    add(blocks, name, Block.Kind.HANDS, before.plus(from), before.plus(to));
  }
}
