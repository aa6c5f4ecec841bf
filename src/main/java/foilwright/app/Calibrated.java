package foilwright.app;

import foilwright.pattern.MixSlot;
import foilwright.service.PlacingTime;
import foilwright.service.TakeUp;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A house whose constants were changed by what was measured, or by taking a measurement away again.
 *
 * @param plan the visit as it was planned before
 * @param weighed what was weighed back now
 * @param timed what was timed now
 * @param products those whose take-up changed
 * @param waste what the house mixes beyond what foils take
 * @param pace the pace, when its times changed
 * @param file where the house is kept now, as seen from the workspace
 * @param kept where the house as it was before is kept; absent when that one ships with the program
 * @param problems how far off the new constants are, if they are
 */
public record Calibrated(
    Plan plan,
    List<Weighed> weighed,
    Optional<Timed> timed,
    List<ChangedProduct> products,
    Share waste,
    Optional<ChangedPace> pace,
    Path file,
    Optional<Path> kept,
    List<FoundProblem> problems) {

  /**
   * A slot that was weighed back.
   *
   * @param mixed in all its bowls
   * @param left of them
   * @param planned what its foils were to take, without waste
   */
  public record Weighed(MixSlot slot, String product, Mass mixed, Mass left, Mass planned) {
    public Mass used() {
      return mixed.minus(left);
    }
  }

  /**
   * What was timed.
   *
   * @param foils how many
   * @param alone whether foils were timed without the setting of sections
   * @param planned expected time of the same
   */
  public record Timed(int foils, boolean alone, Minutes planned, Minutes took) {}

  /**
   * A product whose take-up changed.
   *
   * @param slots of the plan that hold it, by their letters; may be none
   * @param onFoilsBefore what the plan's foils with it took, without waste
   * @param onFoilsAfter what the next plan of the same foils will say
   */
  public record ChangedProduct(
      String name,
      List<String> slots,
      TakeUp before,
      TakeUp after,
      Mass onFoilsBefore,
      Mass onFoilsAfter) {
    public ChangedProduct {
      slots = List.copyOf(slots);
    }
  }

  /**
   * A pace whose times changed; what the plan's foils took by it and what the next plan will say.
   */
  public record ChangedPace(PlacingTime before, PlacingTime after) {}

  public Calibrated {
    Objects.requireNonNull(plan);
    weighed = List.copyOf(weighed);
    Objects.requireNonNull(timed);
    products = List.copyOf(products);
    Objects.requireNonNull(waste);
    Objects.requireNonNull(pace);
    Objects.requireNonNull(file);
    Objects.requireNonNull(kept);
    problems = List.copyOf(problems);
  }
}
