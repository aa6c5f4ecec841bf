package foilwright.app;

import foilwright.geometry.surface.DirectionField;
import foilwright.hair.HairOnHead;
import foilwright.pattern.Extent;
import foilwright.pattern.HeadDimensions;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
import foilwright.problem.Problem;
import foilwright.problem.Severity;
import foilwright.service.PlacingTime;
import foilwright.service.schedule.Cure;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Which problems of a plan the program can cure by itself, by their codes. A value that is offered
 * was tried: with it the section is placed without the problem and without a new one.
 */
public final class Remedies {
  private static final Pattern PLACE =
      Pattern.compile("sections\\[(\\d{1,4})\\](?:.*\\.picks\\[(\\d{1,4})\\])?.*");

  /** Slices are offered in such steps, mm. */
  private static final double STEP_MM = 0.5;

  private final Plan plan;
  private final Problem problem;
  private final int index;
  private final Section section;
  private final HairOnHead hair;
  private final DirectionField fall;

  private Remedies(Workspace workspace, Plan plan, Problem problem, int index) {
    this.plan = plan;
    this.problem = problem;
    this.index = index;
    section = plan.pattern().sections().get(index);
    hair = workspace.heads().hair(plan.head(), plan.guest().hair());
    fall = workspace.heads().fall(plan.pattern(), hair);
  }

  /**
   * What cures a problem, each on its own; empty when that needs judgement.
   *
   * @param workspace in which the plan was made
   */
  public static List<Remedy> of(Workspace workspace, Plan plan, Problem problem) {
    if (problem.code().equals(OverTimeWords.FAILED)) {
      return plan.times().map(times -> inTime(plan, times)).orElse(List.of());
    }
    Matcher place = PLACE.matcher(problem.path());
    if (!place.matches()) {
      return List.of();
    }
    int index = Integer.parseInt(place.group(1));
    String name = plan.pattern().sections().get(index).name();
    return switch (problem.code()) {
      case "count-does-not-fit" -> List.of(new Remedy.FillToTheEnd(index, name));
      case "foil-too-narrow" -> List.of(new Remedy.DivideEvenly(index, name));
      case "brick-lay-without-rows" ->
          List.of(new Remedy.DivideEvenly(index, name), new Remedy.DoNotShiftRows(index, name));
      case "depth-beyond-slice" ->
          thinnest(plan.pattern().sections().get(index).fill().slice()).stream()
              .map(
                  slice ->
                      (Remedy)
                          new Remedy.SetPickDepth(
                              index, name, Integer.parseInt(place.group(2)), slice))
              .toList();
      case "comb-cannot-hold" -> new Remedies(workspace, plan, problem, index).slicesToHold();
      case "slice-thicker-than-section" ->
          new Remedies(workspace, plan, problem, index).slicesThatFit();
      case "cover-leaves-nothing" -> new Remedies(workspace, plan, problem, index).lessCover();
      default -> List.of();
    };
  }

  // Values, each tried.

  private List<Remedy> slicesToHold() {
    PlacingSettings hold = plan.house().placing();
    List<PlacedFoil> foils =
        plan.placement().foils().stream().filter(f -> f.sectionIndex() == index).toList();
    double thin =
        foils.stream()
            .flatMap(f -> Stream.of(f.sliceAtStart(), f.sliceAtEnd()))
            .mapToDouble(Length::toMillimetres)
            .min()
            .orElse(0);
    double thick =
        foils.stream()
            .flatMap(f -> Stream.of(f.sliceAtStart(), f.sliceAtEnd()))
            .mapToDouble(Length::toMillimetres)
            .max()
            .orElse(0);
    boolean thicker = thin < hold.thinnestSlice().toMillimetres();
    double factor =
        thicker
            ? hold.thinnestSlice().toMillimetres() / Math.max(thin, 0.01)
            : hold.thickestSlice().toMillimetres() / thick;
    return slice(DoubleStream.of(factor, factor * Math.sqrt(factor), factor * factor), thicker);
  }

  private List<Remedy> slicesThatFit() {
    List<Remedy> remedies = new ArrayList<>();
    Remedy.OfSection edge = new Remedy.BeginAtTheEdge(index, section.name());
    if (!edge.applied(section).equals(section) && cures(edge)) {
      remedies.add(edge);
    }
    remedies.addAll(slice(DoubleStream.of(0.75, 0.5, 0.25, 0.1), false));
    return remedies;
  }

  private List<Remedy> lessCover() {
    List<Remedy> remedies = new ArrayList<>();
    DoubleFunction<Remedy.OfSection> keep =
        share -> new Remedy.KeepLessCover(index, section.name(), share);
    DoubleStream.of(0.5, 0.25)
        .mapToObj(keep)
        .filter(this::cures)
        .findFirst()
        .ifPresent(remedies::add);
    Stream.of(keep.apply(0)).filter(this::cures).forEach(remedies::add);
    return remedies;
  }

  /** The first of some factors on the slice that cures. */
  private List<Remedy> slice(DoubleStream factors, boolean up) {
    Run run = section.fill().slice();
    if (!run.isEven()) {
      return List.of();
    }
    double now = mm(run.first());
    PlacingSettings hold = plan.house().placing();
    return factors
        .map(factor -> factor * now / STEP_MM)
        .map(steps -> STEP_MM * (up ? Math.ceil(steps) : Math.floor(steps)))
        .map(mm -> Math.max(mm, hold.thinnestSlice().toMillimetres()))
        .map(mm -> Math.min(mm, hold.thickestSlice().toMillimetres()))
        .filter(mm -> mm != now)
        .distinct()
        .mapToObj(Length::ofMillimetres)
        .map(slice -> (Remedy.OfSection) new Remedy.SetSlice(index, section.name(), slice))
        .filter(this::cures)
        .<Remedy>map(remedy -> remedy)
        .limit(1)
        .toList();
  }

  private double mm(Extent extent) {
    HeadDimensions head =
        new HeadDimensions(plan.head().frontToBack(), plan.head().earToEar(), plan.head().around());
    return extent.resolve(head).toMillimetres();
  }

  /** Whether the problem is gone when the pattern is placed with it, and no other has come. */
  private boolean cures(Remedy.OfSection remedy) {
    Set<String> before = codes(plan.placement().problems());
    before.remove(key(problem));
    List<Problem> after =
        Placer.place(remedy.applied(plan.pattern()), hair, plan.house().placing(), fall).problems();
    return before.containsAll(codes(after));
  }

  private static Set<String> codes(List<Problem> problems) {
    Set<String> codes = new HashSet<>();
    problems.stream().filter(p -> p.severity() != Severity.NOTE).forEach(p -> codes.add(key(p)));
    return codes;
  }

  private static String key(Problem problem) {
    return problem.code() + " " + problem.path();
  }

  // The clocks.

  private static List<Remedy> inTime(Plan plan, PlannedTimes times) {
    List<Remedy> remedies = new ArrayList<>();
    for (Cure cure : times.told()) {
      if (cure instanceof Cure.InWaves) {
        remedies.add(new Remedy.TakeOut(WayOut.WAVES));
      } else if (cure instanceof Cure.OutWhilePlacing) {
        remedies.add(new Remedy.TakeOut(WayOut.WHILE_PLACING));
      } else if (cure instanceof Cure.WeakerMixFirst) {
        remedies.add(new Remedy.TakeOut(WayOut.TWO_MIXES));
      } else if (cure instanceof Cure.TwoVisits) {
        remedies.add(new Remedy.TakeOut(WayOut.TWO_VISITS));
      } else if (cure instanceof Cure.AnotherPair pair) {
        remedies.add(new Remedy.WorkTogether(pair.hands()));
      }
    }
    // A pace that this person does not reach may be another's.
    for (Cure cure : times.cures()) {
      if (cure instanceof Cure.FasterPace pace) {
        remedies.addAll(paces(plan, pace.factor().orElse(0.0)));
      }
    }
    if (plan.placement().foils().size() > 1) {
      remedies.add(new Remedy.LeaveOutUntilItFits());
    }
    return remedies;
  }

  /** The house's other paces that take no more than a share of the planned time. */
  private static List<Remedy> paces(Plan plan, double share) {
    double most = share * plan.placingTime().p50().toMinutes();
    return plan.placing().stream()
        .filter(other -> !other.pace().name().equals(plan.house().pace().name()))
        .filter(other -> other.total().p50().toMinutes() <= most)
        .map(PlacingTime::pace)
        .<Remedy>map(pace -> new Remedy.PlanAtPace(pace.name()))
        .toList();
  }

  private static Optional<Length> thinnest(Run slice) {
    if (slice.first() instanceof Extent.Absolute first
        && slice.last() instanceof Extent.Absolute last) {
      return Optional.of(
          first.length().compareTo(last.length()) <= 0 ? first.length() : last.length());
    }
    return Optional.empty();
  }
}
