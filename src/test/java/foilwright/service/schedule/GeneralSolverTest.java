package foilwright.service.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.ortools.Loader;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearExpr;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Least ends against a general constraint solver (OR-Tools CP-SAT), in whole seconds. */
class GeneralSolverTest {
  @BeforeAll
  static void load() {
    Loader.loadNativeLibraries();
  }

  private static long seconds(Minutes time) {
    return Math.round(time.toSeconds());
  }

  /** Least end found and least end possible, equal when the solver was done. */
  private record Ends(boolean feasible, long found, long bound) {}

  /** Every action is an interval, at most {@code hands} of which overlap. */
  private static Ends solve(List<FoilTask> foils, int hands) {
    CpModel model = new CpModel();
    long horizon = 0;
    for (FoilTask foil : foils) {
      horizon += seconds(foil.before()) + seconds(foil.placing()) + seconds(foil.removal());
      horizon += seconds(foil.window().most());
    }
    List<IntervalVar> actions = new ArrayList<>();
    IntVar last = model.newIntVar(0, horizon, "last");
    IntVar[] in = new IntVar[foils.size()];
    for (int i = 0; i < in.length; i++) {
      FoilTask foil = foils.get(i);
      long placing = seconds(foil.placing());
      long block = seconds(foil.before()) + placing;
      long removal = seconds(foil.removal());
      in[i] = model.newIntVar(block, horizon, "in " + i);
      IntVar out = model.newIntVar(0, horizon, "out " + i);
      actions.add(
          model.newIntervalVar(
              LinearExpr.affine(in[i], 1, -block), model.newConstant(block), in[i], "place"));
      actions.add(
          model.newIntervalVar(
              LinearExpr.affine(out, 1, -removal), model.newConstant(removal), out, "remove"));
      long least = Math.max(removal, seconds(foil.window().least()));
      model.addLessOrEqual(LinearExpr.affine(in[i], 1, least), out);
      model.addGreaterOrEqual(LinearExpr.affine(in[i], 1, seconds(foil.window().most())), out);
      model.addLessOrEqual(out, last);
      if (i > 0) {
        model.addLessOrEqual(
            LinearExpr.affine(in[i - 1], 1, -seconds(foils.get(i - 1).placing())),
            LinearExpr.affine(in[i], 1, -placing));
      }
    }
    if (hands == 1) {
      model.addNoOverlap(actions);
    } else {
      var cumulative = model.addCumulative(hands);
      actions.forEach(action -> cumulative.addDemand(action, 1));
    }
    model.minimize(last);
    CpSolver solver = new CpSolver();
    solver.getParameters().setMaxTimeInSeconds(2);
    solver.getParameters().setNumWorkers(2);
    solver.getParameters().setRandomSeed(1);
    CpSolverStatus status = solver.solve(model);
    boolean feasible = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
    return new Ends(
        feasible,
        feasible ? Math.round(solver.objectiveValue()) : Long.MAX_VALUE,
        status == CpSolverStatus.INFEASIBLE
            ? Long.MAX_VALUE
            : Math.round(solver.bestObjectiveBound()));
  }

  private static void compare(List<FoilTask> foils, int hands, String where) {
    Optional<Schedule> schedule =
        Scheduler.schedule(foils, hands, Removal.WHILE_PLACING).schedule();
    Ends ends = solve(foils, hands);
    if (schedule.isEmpty()) {
      assertTrue(!ends.feasible(), where);
      return;
    }
    long end = seconds(schedule.get().end());
    long bound = seconds(schedule.get().lowerBound());
    assertEquals(List.of(), ScheduleCheck.violations(schedule.get()), where);
    assertTrue(end >= ends.bound(), where + ": " + end + " is below " + ends.bound());
    assertTrue(bound <= ends.found(), where + ": " + bound + " is above " + ends.found());
  }

  /** 20 to 40 foils of whole seconds in one or two mixes, so narrow that most come out early. */
  private static List<FoilTask> foils(Random random, int n) {
    double[][] windows = {{8, 17}, {10, 16}};
    double removal = (15 + random.nextInt(20)) / 60.0;
    List<FoilTask> foils = new ArrayList<>();
    int slot = 0;
    for (int i = 0; i < n; i++) {
      slot = random.nextInt(6) == 0 ? random.nextInt(2) : slot;
      foils.add(
          Foils.foil(
              i + 1,
              String.valueOf((char) ('A' + slot)),
              random.nextInt(10) == 0 ? 2 : 0,
              (45 + random.nextInt(60)) / 60.0,
              removal,
              windows[slot]));
    }
    return foils;
  }

  @Test
  void onePairOfHands() {
    int proven = 0;
    for (int n = 20; n <= 40; n += 5) {
      List<FoilTask> foils = foils(new Random(n), n);
      compare(foils, 1, n + " foils");
      proven +=
          Scheduler.schedule(foils, 1, Removal.WHILE_PLACING).schedule().orElseThrow().proven()
              ? 1
              : 0;
    }
    assertTrue(proven >= 4, proven + " of 5 proven");
  }

  /** A removal takes half a minute at least: an empty interval would need no hands. */
  private static List<FoilTask> removed(List<FoilTask> foils) {
    return foils.stream()
        .map(
            foil ->
                new FoilTask(
                    foil.number(),
                    foil.slot(),
                    foil.before(),
                    foil.placing(),
                    foil.removal().plus(Minutes.ofSeconds(30)),
                    foil.window()))
        .toList();
  }

  @Test
  void twoPairsOfHands() {
    int proven = 0;
    for (int seed = 0; seed < 28; seed++) {
      Random random = new Random(seed);
      List<FoilTask> foils =
          seed < 24
              ? removed(Foils.few(random, 3 + random.nextInt(3)))
              : foils(random, 4 * seed - 86);
      compare(foils, 2, "seed " + seed);
      proven +=
          Scheduler.schedule(foils, 2, Removal.WHILE_PLACING)
                  .schedule()
                  .map(Schedule::proven)
                  .orElse(false)
              ? 1
              : 0;
    }
    assertTrue(proven >= 20, proven + " of 28 proven");
  }
}
