package foilwright.app;

import foilwright.document.DocumentFiles;
import foilwright.document.Documents;
import foilwright.document.HouseDocument;
import foilwright.document.ReadResult;
import foilwright.pattern.MixSlot;
import foilwright.placement.PlacedFoil;
import foilwright.problem.Problem;
import foilwright.problem.Severity;
import foilwright.service.PaceProfile;
import foilwright.service.PlacingTime;
import foilwright.service.ProductEntry;
import foilwright.service.TakeUp;
import foilwright.service.ThreePoint;
import foilwright.service.mix.SlotMix;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Brings a house's constants nearer to what its scale and its watch say: grams left over of what
 * was mixed change how much a foil takes, minutes change how fast a pace is. Each measurement is an
 * entry in the house document and can be taken away again; the document as it was is kept.
 *
 * <p>What was planned comes from planning the same pattern on the same guest by the house as it is.
 * A single measurement outside {@link TakeUp#LEAST_FACTOR} to {@link TakeUp#MOST_FACTOR} times the
 * constants as written is refused as a slip.
 */
public final class Calibration {
  private final Workspace workspace;
  private final Plan plan;
  private final HouseDocument before;
  private final List<FoundProblem> problems = new ArrayList<>();
  private final List<Calibrated.Weighed> weighed = new ArrayList<>();
  private Optional<Calibrated.Timed> timed = Optional.empty();

  private Calibration(Workspace workspace, Plan plan, HouseDocument before) {
    this.workspace = workspace;
    this.plan = plan;
    this.before = before;
  }

  /**
   * Takes measurements into the house document.
   *
   * @param request how the visit was planned
   * @param progress is told each step as it begins
   * @throws IOException when the house cannot be written; it is then as it was
   */
  public static CalibrationOutcome calibrate(
      Workspace workspace, PlanRequest request, Measured measured, Consumer<String> progress)
      throws IOException {
    return change(
        workspace,
        request,
        progress,
        (now, house) -> now.time(now.weigh(house, measured), measured));
  }

  /**
   * Takes the newest weighing of a product away again.
   *
   * @param slot that holds it; not needed while only one product was ever weighed back
   * @throws IOException when the house cannot be written; it is then as it was
   */
  public static CalibrationOutcome undoWeighBack(
      Workspace workspace, PlanRequest request, Optional<MixSlot> slot, Consumer<String> progress)
      throws IOException {
    return change(workspace, request, progress, (now, house) -> now.withoutWeighBack(house, slot));
  }

  /**
   * Takes the newest timing of the request's pace away again.
   *
   * @throws IOException when the house cannot be written; it is then as it was
   */
  public static CalibrationOutcome undoTiming(
      Workspace workspace, PlanRequest request, Consumer<String> progress) throws IOException {
    return change(workspace, request, progress, Calibration::withoutTiming);
  }

  private static CalibrationOutcome change(
      Workspace workspace,
      PlanRequest request,
      Consumer<String> progress,
      BiFunction<Calibration, HouseDocument, HouseDocument> change)
      throws IOException {
    String named = request.house().orElse(Planning.USUAL_HOUSE);
    PlanOutcome planned = Planning.plan(workspace, request, progress);
    Optional<HouseDocument> house = workspace.house(named).value();
    if (planned.plan().isEmpty() || house.isEmpty()) {
      return new CalibrationOutcome(Optional.empty(), planned.problems(), planned.unreachable());
    }
    Calibration now = new Calibration(workspace, planned.plan().get(), house.get());
    now.checkPlacement();
    HouseDocument after = change.apply(now, house.get());
    byte[] bytes = Documents.write(after);
    now.checkReadsBack(bytes, after);
    if (!now.problems.isEmpty()) {
      return new CalibrationOutcome(Optional.empty(), now.problems, false);
    }
    progress.accept("keeping the house");
    return new CalibrationOutcome(
        Optional.of(now.save(workspace.houseFile(named), bytes, after)), List.of(), false);
  }

  private void refuse(String code, String path, String message, String cure) {
    problems.add(new FoundProblem("", 0, 0, Problem.error(code, path, message, cure)));
  }

  /** Foils that could not be placed would be missing from what was planned. */
  private void checkPlacement() {
    plan.problems().stream()
        .filter(found -> plan.placement().problems().contains(found.problem()))
        .filter(FoundProblem::isError)
        .forEach(problems::add);
  }

  private void checkReadsBack(byte[] bytes, HouseDocument after) {
    ReadResult<HouseDocument> back = Documents.readHouse(bytes);
    if (problems.isEmpty() && !back.value().equals(Optional.of(after))) {
      refuse(
          "cannot-be-kept",
          "",
          "the house document cannot hold this: "
              + back.problems().stream()
                  .map(located -> located.problem().message())
                  .collect(Collectors.joining("; ")),
          "measure more foils, or a whole visit");
    }
  }

  private List<PlacedFoil> foils(String slot) {
    return plan.placement().foils().stream().filter(foil -> foil.mix().equals(slot)).toList();
  }

  private static Mass onFoils(List<PlacedFoil> foils, TakeUp takeUp) {
    return foils.stream().map(foil -> takeUp.mixed(foil.hair())).reduce(Mass.ZERO, Mass::plus);
  }

  private HouseDocument weigh(HouseDocument house, Measured measured) {
    HouseDocument now = house;
    for (MixSlot slot : measured.left().keySet()) {
      now = weigh(now, slot, measured);
    }
    return now;
  }

  /** Two slots may hold one product; each takes what the one before it made of the take-up. */
  private HouseDocument weigh(HouseDocument house, MixSlot slot, Measured measured) {
    List<PlacedFoil> foils = foils(slot.name());
    ProductEntry product = house.productsBySlot().get(slot.name());
    if (foils.isEmpty() || product == null) {
      refuse(
          "slot-not-used",
          "",
          foils.isEmpty()
              ? "the pattern has no foil with mix " + slot
              : "slot " + slot + " holds no product in this house, so nothing of it was mixed",
          "weigh back one of: " + slotsInUse());
      return house;
    }
    Optional<Mass> mixed =
        Optional.ofNullable(measured.mixed().get(slot)).or(() -> mixedByPlan(slot));
    if (mixed.isEmpty()) {
      refuse(
          "mixed-not-known",
          "",
          "how much was mixed of " + slot + " is not known, since no visit could be planned",
          "say what all its bowls weighed together");
      return house;
    }
    Mass left = measured.left().get(slot);
    if (left.compareTo(mixed.get()) >= 0) {
      refuse(
          "more-left-than-mixed",
          "",
          Measured.tooMuchLeft(slot, left, mixed.get()),
          "check the weights, or say what was mixed");
      return house;
    }
    Mass used = mixed.get().minus(left);
    TakeUp takeUp = product.takeUp();
    Mass planned = onFoils(foils, takeUp);
    double ratio = used.toGrams() / planned.toGrams() * takeUp.factor();
    if (!(ratio >= TakeUp.LEAST_FACTOR && ratio <= TakeUp.MOST_FACTOR)) {
      refuse(
          "weighed-back-far-off",
          "",
          far(
              used + " used of " + slot,
              ratio,
              planned.times(1 / takeUp.factor()).toString(),
              TakeUp.LEAST_FACTOR,
              TakeUp.MOST_FACTOR),
          "look for a slip in the weights; if they are right, correct the film and the grams per"
              + " gram of "
              + product.name()
              + " in the house document");
      return house;
    }
    weighed.add(new Calibrated.Weighed(slot, product.name(), mixed.get(), left, planned));
    return house.withProduct(
        product.withTakeUp(takeUp.withWeighBack(planned, used, measured.date())));
  }

  /** What is mixed in all bowls of a usual day; nothing when the plan has no visit. */
  private Optional<Mass> mixedByPlan(MixSlot slot) {
    return plan.times().stream()
        .flatMap(times -> times.visits().stream())
        .flatMap(visit -> visit.mix().slot(slot.name()).stream())
        .map(SlotMix::mixed)
        .reduce(Mass::plus);
  }

  private static String far(String what, double ratio, String planned, double least, double most) {
    return String.format(
        Locale.ROOT,
        "%s would be %.2f of the %s by the constants as written; only %.1f to %.1f can be taken in",
        what,
        ratio,
        planned,
        least,
        most);
  }

  private String slotsInUse() {
    return plan.placement().foils().stream()
        .map(PlacedFoil::mix)
        .filter(plan.house().products()::containsKey)
        .distinct()
        .sorted()
        .collect(Collectors.joining(", "));
  }

  private HouseDocument time(HouseDocument house, Measured measured) {
    int all = plan.placement().foils().size();
    boolean alone = !measured.foils().isEmpty();
    if (measured.took().isEmpty() && !alone) {
      return house;
    }
    int count = alone ? measured.foils().size() : all;
    if (all == 0 || count > all) {
      refuse(
          "more-timed-than-placed",
          "",
          count + " foils are timed, but the plan has " + all,
          "check pattern and guest, and leave out what was not a foil");
      return house;
    }
    PaceProfile pace = plan.house().pace();
    PlacingTime placing = plan.placing().get(0);
    Minutes planned =
        alone
            ? placing.foils().subList(0, count).stream()
                .map(ThreePoint::mean)
                .reduce(Minutes.ZERO, Minutes::plus)
            : placing.total().mean();
    Minutes took =
        measured
            .took()
            .orElseGet(() -> measured.foils().stream().reduce(Minutes.ZERO, Minutes::plus));
    double ratio = took.toMinutes() / planned.toMinutes() * pace.timedFactor();
    if (!(ratio >= PaceProfile.LEAST_FACTOR && ratio <= PaceProfile.MOST_FACTOR)) {
      refuse(
          "timed-far-off",
          "",
          far(
              took + " for " + count + (count == 1 ? " foil" : " foils"),
              ratio,
              planned.times(1 / pace.timedFactor()).toString(),
              PaceProfile.LEAST_FACTOR,
              PaceProfile.MOST_FACTOR),
          "look for a slip in the times, or name the pace of the person who placed the foils"
              + " instead of "
              + pace.name());
      return house;
    }
    timed = Optional.of(new Calibrated.Timed(count, alone, planned, took));
    return house.withPace(pace.withTiming(planned, took, count, measured.date()));
  }

  private HouseDocument withoutWeighBack(HouseDocument house, Optional<MixSlot> slot) {
    List<ProductEntry> candidates =
        house.products().stream()
            .filter(product -> !product.takeUp().weighBacks().isEmpty())
            .filter(
                product ->
                    slot.isEmpty()
                        || product.name().equals(house.slots().getOrDefault(slot.get(), "")))
            .toList();
    if (candidates.size() == 1) {
      ProductEntry product = candidates.get(0);
      return house.withProduct(product.withTakeUp(product.takeUp().withoutLastWeighBack()));
    }
    if (candidates.isEmpty()) {
      refuse(
          "nothing-to-undo",
          "products",
          slot.map(s -> "what slot " + s + " holds was never weighed back")
              .orElse("nothing was ever weighed back in this house"),
          "there is nothing to take away");
    } else {
      refuse(
          "which-product",
          "products",
          candidates.size() + " products were weighed back",
          "name the slot of one of them: "
              + house.slots().entrySet().stream()
                  .filter(
                      entry -> candidates.stream().anyMatch(p -> p.name().equals(entry.getValue())))
                  .map(entry -> entry.getKey() + " (" + entry.getValue() + ")")
                  .collect(Collectors.joining(", ")));
    }
    return house;
  }

  private HouseDocument withoutTiming(HouseDocument house) {
    PaceProfile pace = plan.house().pace();
    if (pace.timings().isEmpty()) {
      String others =
          house.paces().stream()
              .filter(other -> !other.timings().isEmpty())
              .map(PaceProfile::name)
              .collect(Collectors.joining(", "));
      refuse(
          "nothing-to-undo",
          "paces",
          "the pace " + pace.name() + " was never timed",
          others.isEmpty() ? "there is nothing to take away" : "name a pace that was: " + others);
      return house;
    }
    return house.withPace(pace.withoutLastTiming());
  }

  private Calibrated save(Path file, byte[] bytes, HouseDocument after) throws IOException {
    Optional<Path> kept = DocumentFiles.save(file, bytes);
    List<Calibrated.ChangedProduct> products = new ArrayList<>();
    List<FoundProblem> far = new ArrayList<>();
    for (int p = 0; p < after.products().size(); p++) {
      ProductEntry old = before.products().get(p);
      ProductEntry product = after.products().get(p);
      if (!product.equals(old)) {
        products.add(changed(old, product));
        tellWarnings(product.takeUp().problems("products[" + p + "].takeUp"), far);
      }
    }
    PaceProfile old = plan.house().pace();
    PaceProfile pace = after.findPace(old.name()).orElseThrow();
    if (!pace.equals(old)) {
      tellWarnings(pace.problems("paces"), far);
    }
    return new Calibrated(
        plan,
        weighed,
        timed,
        products,
        after.mixing().waste(),
        pace.equals(old)
            ? Optional.empty()
            : Optional.of(
                new Calibrated.ChangedPace(
                    plan.placing().get(0), PlacingTime.of(plan.placement(), pace))),
        workspace.fromHere(file),
        kept.map(workspace::fromHere),
        far);
  }

  private static void tellWarnings(List<Problem> found, List<FoundProblem> told) {
    found.stream()
        .filter(problem -> problem.severity() != Severity.NOTE)
        .forEach(problem -> told.add(new FoundProblem("", 0, 0, problem)));
  }

  private Calibrated.ChangedProduct changed(ProductEntry old, ProductEntry product) {
    List<String> slots =
        before.productsBySlot().entrySet().stream()
            .filter(entry -> entry.getValue().name().equals(product.name()))
            .map(Map.Entry::getKey)
            .filter(slot -> !foils(slot).isEmpty())
            .toList();
    List<PlacedFoil> its = slots.stream().flatMap(slot -> foils(slot).stream()).toList();
    return new Calibrated.ChangedProduct(
        product.name(),
        slots,
        old.takeUp(),
        product.takeUp(),
        onFoils(its, old.takeUp()),
        onFoils(its, product.takeUp()));
  }
}
