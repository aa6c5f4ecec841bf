package foilwright.head;

import foilwright.geometry.Vector3;
import foilwright.problem.Problem;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.exception.MathIllegalArgumentException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;

/**
 * Finds the head form that reads what the tape read.
 *
 * <p>The unknowns are the logarithms of the three axis factors, relative to the default head. They
 * meet every given tape to 1e-6 mm and, where that leaves freedom, stay as near to one common
 * factor as they can (least sum of squared deviations), so that one tape alone gives a larger head,
 * not a flatter one. The two centre points of the hairline follow from their tapes, or lie at the
 * default head's proportions, and are solved anew in each round because the front-to-back tape runs
 * between them.
 *
 * <p>A factor more than 12 % from the common one is a contradiction between tapes.
 */
public final class TapeFit {
  /** How far one axis factor may lie from the common one, as a ratio. */
  public static final double MOST_APART = 1.12;

  private static final double SOLVED_MM = 1e-6;
  private static final int MOST_ROUNDS = 60;
  private static final double STEP = 1e-5;

  /**
   * A form with the two ends of its centre line.
   *
   * @param form the head form
   * @param frontRad template angle along the mid-line of the front hairline
   * @param napeRad the same of the nape hairline
   */
  record Solution(HeadForm form, double frontRad, double napeRad) {
    double read(Tape tape) {
      return switch (tape) {
        case AROUND -> Tapes.around(form);
        case FRONT_TO_BACK -> Tapes.alongMidLine(form, frontRad, napeRad);
        case EAR_TO_EAR -> Tapes.earToEar(form);
        case FRONT_HAIRLINE_HEIGHT -> Tapes.alongMidLine(form, Template.BROW_RAD, frontRad);
        case NAPE_DEPTH -> Tapes.alongMidLine(form, Tapes.backAngle(form), napeRad);
      };
    }
  }

  /**
   * What came of a fit: a solution or the problems that stand in its way.
   *
   * @param solution present when no problem is an error
   */
  record Result(Optional<Solution> solution, List<Problem> problems) {}

  private final Vector3 usual;
  private final NapeHeight nape;
  private final TapeMeasurements tapes;

  private TapeFit(Vector3 usual, NapeHeight nape, TapeMeasurements tapes) {
    this.usual = usual;
    this.nape = nape;
    this.tapes = tapes;
  }

  static Result solve(HeadKind kind, NapeHeight nape, TapeMeasurements tapes) {
    TapeFit fit = new TapeFit(Template.factors(kind), nape, tapes);
    Optional<Solution> solution = fit.find();
    if (solution.isEmpty()) {
      return new Result(solution, List.of(fit.contradiction()));
    }
    List<Problem> problems = fit.outOfRange(solution.get());
    return new Result(problems.isEmpty() ? solution : Optional.empty(), problems);
  }

  private Solution at(double[] logs) {
    HeadForm form =
        HeadForm.of(
            Template.SURFACE,
            usual.scaled(new Vector3(Math.exp(logs[0]), Math.exp(logs[1]), Math.exp(logs[2]))));
    double front =
        tapes
            .frontHairlineHeight()
            .map(height -> Tapes.midAngleAfter(form, Template.BROW_RAD, height.toMillimetres()))
            .orElse(Template.FRONT_RAD);
    double back =
        tapes
            .napeDepth()
            .map(depth -> Tapes.midAngleAfter(form, Tapes.backAngle(form), depth.toMillimetres()))
            .orElse(Template.napeRad(nape));
    return new Solution(form, clamp(front, 0.2, 1.6), clamp(back, 3.3, 4.6));
  }

  private static double clamp(double value, double least, double most) {
    return Math.min(Math.max(value, least), most);
  }

  /** The solution, unless the given tapes cannot be met with factors near a common one. */
  private Optional<Solution> find() {
    List<Tape> given = given();
    double[] logs = new double[3];
    for (int round = 0; round < MOST_ROUNDS; round++) {
      Solution here = at(logs);
      double[] off = off(here, given);
      double worst = 0;
      for (int i = 0; i < off.length; i++) {
        worst = Math.max(worst, Math.abs(off[i]) * given.get(i).in(tapes).get().toMillimetres());
      }
      double[] step = step(logs, off, given);
      double longest = 0;
      for (int i = 0; i < 3; i++) {
        longest = Math.max(longest, Math.abs(step[i]));
      }
      if (worst < SOLVED_MM && longest < 1e-9) {
        return spread(logs) <= Math.log(MOST_APART) ? Optional.of(here) : Optional.empty();
      }
      double damp = Math.min(1, 0.5 / longest);
      for (int i = 0; i < 3; i++) {
        logs[i] += damp * step[i];
        if (!(Math.abs(logs[i]) < 5)) {
          return Optional.empty();
        }
      }
    }
    return Optional.empty();
  }

  /** The given tapes that the axis factors must meet. */
  private List<Tape> given() {
    List<Tape> given = new ArrayList<>();
    for (Tape tape : List.of(Tape.AROUND, Tape.FRONT_TO_BACK, Tape.EAR_TO_EAR)) {
      if (tape.in(tapes).isPresent()) {
        given.add(tape);
      }
    }
    return given;
  }

  /** Logarithm of what each tape reads over what it read. */
  private double[] off(Solution solution, List<Tape> given) {
    double[] off = new double[given.size()];
    for (int i = 0; i < off.length; i++) {
      Tape tape = given.get(i);
      off[i] = Math.log(solution.read(tape) / tape.in(tapes).get().toMillimetres());
    }
    return off;
  }

  private static double spread(double[] logs) {
    double mean = (logs[0] + logs[1] + logs[2]) / 3;
    double most = 0;
    for (double log : logs) {
      most = Math.max(most, Math.abs(log - mean));
    }
    return most;
  }

  /** Newton step of the least deviation from a common factor, with every given tape met. */
  private double[] step(double[] logs, double[] off, List<Tape> given) {
    int tapeCount = given.size();
    if (tapeCount == 0) {
      return new double[3];
    }
    int size = 3 + tapeCount;
    double[][] matrix = new double[size][size];
    double[] right = new double[size];
    double mean = (logs[0] + logs[1] + logs[2]) / 3;
    for (int i = 0; i < 3; i++) {
      double[] moved = logs.clone();
      moved[i] += STEP;
      double[] changed = off(at(moved), given);
      for (int j = 0; j < tapeCount; j++) {
        double slope = (changed[j] - off[j]) / STEP;
        matrix[i][3 + j] = slope;
        matrix[3 + j][i] = slope;
      }
      for (int j = 0; j < 3; j++) {
        matrix[i][j] = (i == j ? 1 : 0) - 1.0 / 3;
      }
      right[i] = mean - logs[i];
    }
    for (int j = 0; j < tapeCount; j++) {
      right[3 + j] = -off[j];
    }
    try {
      return new LUDecomposition(new Array2DRowRealMatrix(matrix, false), 1e-14)
          .getSolver()
          .solve(new ArrayRealVector(right, false))
          .toArray();
    } catch (MathIllegalArgumentException singular) {
      return new double[] {Double.POSITIVE_INFINITY, 0, 0};
    }
  }

  private List<Problem> outOfRange(Solution solution) {
    List<Problem> problems = new ArrayList<>();
    HeadForm form = solution.form();
    if (solution.frontRad() < Template.LEAST_FRONT_RAD
        || solution.frontRad() > Template.MOST_FRONT_RAD) {
      problems.add(
          unlikely(
              Tape.FRONT_HAIRLINE_HEIGHT,
              Tapes.alongMidLine(form, Template.BROW_RAD, Template.LEAST_FRONT_RAD),
              Tapes.alongMidLine(form, Template.BROW_RAD, Template.MOST_FRONT_RAD)));
    }
    if (solution.napeRad() < Template.LEAST_NAPE_RAD
        || solution.napeRad() > Template.MOST_NAPE_RAD) {
      double back = Tapes.backAngle(form);
      problems.add(
          unlikely(
              Tape.NAPE_DEPTH,
              Tapes.alongMidLine(form, back, Template.LEAST_NAPE_RAD),
              Tapes.alongMidLine(form, back, Template.MOST_NAPE_RAD)));
    }
    return problems;
  }

  private Problem unlikely(Tape tape, double leastMm, double mostMm) {
    return Problem.error(
        "tape-out-of-range",
        tape.key(),
        tape.words()
            + " of "
            + tape.in(tapes).orElseThrow()
            + " puts the hairline where no scalp is on a head of this size",
        "measure again: "
            + range(leastMm, mostMm)
            + " would be accepted; or leave it out to take the default");
  }

  private static String range(double leastMm, double mostMm) {
    return String.format(Locale.ROOT, "%.0f to %.0f mm", Math.ceil(leastMm), Math.floor(mostMm));
  }

  /** Says which tape fits least with the others, and what it might have read. */
  private Problem contradiction() {
    List<Tape> given = given();
    Map<Tape, double[]> accepted = new EnumMap<>(Tape.class);
    Tape blamed = null;
    double worst = 0;
    for (Tape tape : given) {
      TapeFit others = new TapeFit(usual, nape, tape.without(tapes));
      Optional<Solution> rest = others.find();
      if (rest.isEmpty()) {
        continue;
      }
      double expected = rest.get().read(tape);
      double[] bounds = {limit(tape, expected, 0.5), limit(tape, expected, 2)};
      accepted.put(tape, bounds);
      double value = tape.in(tapes).orElseThrow().toMillimetres();
      double beyond = Math.abs(Math.log(value / expected));
      if (beyond > worst) {
        worst = beyond;
        blamed = tape;
      }
    }
    if (blamed == null) {
      // Even two of the three do not agree: say so of two of them.
      for (Tape tape : given) {
        TapeFit two = new TapeFit(usual, nape, tape.without(tapes));
        if (given.size() > 1 && two.find().isEmpty()) {
          return two.contradiction();
        }
      }
      throw new IllegalStateException("the tapes " + tapes + " have no solution");
    }
    double[] bounds = accepted.get(blamed);
    List<String> others = new ArrayList<>();
    for (Tape tape : given) {
      if (tape != blamed) {
        others.add(tape.words() + " " + tape.in(tapes).orElseThrow());
      }
    }
    return Problem.error(
        "tapes-contradict",
        blamed.key(),
        blamed.words()
            + " "
            + blamed.in(tapes).orElseThrow()
            + " does not go with "
            + String.join(" and ", others)
            + ": one direction of the head would be more than 12 % out of proportion",
        "measure "
            + blamed.words()
            + " again ("
            + range(bounds[0], bounds[1])
            + " would be accepted), or check the other tapes");
  }

  /** The value nearest to {@code factor} times the expected one that would still be accepted. */
  private double limit(Tape tape, double expected, double factor) {
    double good = 0;
    double bad = Math.log(factor);
    for (int i = 0; i < 20; i++) {
      double middle = (good + bad) / 2;
      TapeMeasurements tried = tape.with(tapes, expected * Math.exp(middle));
      if (new TapeFit(usual, nape, tried).find().isPresent()) {
        good = middle;
      } else {
        bad = middle;
      }
    }
    return expected * Math.exp(good);
  }

  /**
   * A value that no tape gave.
   *
   * @param tape which
   * @param value what the fitted head reads there
   */
  public record Assumed(Tape tape, Length value) {
    /** For a sheet: {@code "ear to ear 336 mm (assumed)"}. */
    public String words() {
      return String.format(
          Locale.ROOT, "%s %.0f mm (assumed)", tape.words(), value.toMillimetres());
    }
  }
}
