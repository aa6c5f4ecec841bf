package foilwright.service;

import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.List;
import java.util.Objects;

/**
 * What the house keeps on file of one product that goes into foils; the maker's sheet decides.
 *
 * @param name plain, such as {@code powder lightener, entry 1}
 * @param kind what it does
 * @param ratio product to developer by weight
 * @param developerStrength label of the developer: hydrogen peroxide, 0 to 12 %
 * @param window how long it may stay
 * @param windowsByLift narrower windows by levels of lift wanted, levels rising, each inside {@code
 *     window}; may be empty
 * @param bowlLife how long a mixed bowl stays good, more than 0
 * @param takeUp how much of the mix a foil takes
 * @param checkEvery time between check rounds once the first foil has had its least time, more than
 *     0
 * @param makersSheetOnFile whether the maker's sheet is on file
 */
public record ProductEntry(
    String name,
    ProductKind kind,
    MixRatio ratio,
    Share developerStrength,
    TimeWindow window,
    List<LiftWindow> windowsByLift,
    Minutes bowlLife,
    TakeUp takeUp,
    Minutes checkEvery,
    boolean makersSheetOnFile) {
  /** The EU limit for hair products (Regulation (EC) 1223/2009, Annex III, entry 12). */
  public static final Share MOST_STRENGTH = Share.ofPercent(12);

  /** Common practice: every 5 to 10 min after the first 20. */
  public static final Minutes USUAL_CHECK_EVERY = Minutes.ofMinutes(10);

  public ProductEntry {
    Objects.requireNonNull(kind);
    Objects.requireNonNull(ratio);
    Objects.requireNonNull(window);
    Objects.requireNonNull(takeUp);
    windowsByLift = List.copyOf(windowsByLift);
    if (name.isBlank()) {
      throw new IllegalArgumentException("a product entry needs a name");
    }
    if (developerStrength.toFraction() < 0
        || developerStrength.toFraction() > MOST_STRENGTH.toFraction() + 1e-9) {
      throw new IllegalArgumentException(
          "a developer of " + developerStrength + " is outside 0 % to " + MOST_STRENGTH);
    }
    if (bowlLife.compareTo(Minutes.ZERO) <= 0) {
      throw new IllegalArgumentException("a bowl life of " + bowlLife + " must be more than 0 min");
    }
    if (checkEvery.compareTo(Minutes.ZERO) <= 0) {
      throw new IllegalArgumentException(
          "check rounds every " + checkEvery + " must be more than 0 min apart");
    }
    int levels = 0;
    for (LiftWindow part : windowsByLift) {
      if (part.levels() <= levels) {
        throw new IllegalArgumentException(
            "the windows by lift must go by rising levels: " + levels + ", then " + part.levels());
      }
      levels = part.levels();
      if (!window.holds(part.window())) {
        throw new IllegalArgumentException(
            "the window for "
                + levels
                + " levels, "
                + part.window().words()
                + ", leaves the product's "
                + window.words());
      }
    }
  }

  /** An entry without windows by lift, checked as usual. */
  public ProductEntry(
      String name,
      ProductKind kind,
      MixRatio ratio,
      Share developerStrength,
      TimeWindow window,
      Minutes bowlLife,
      TakeUp takeUp,
      boolean makersSheetOnFile) {
    this(
        name,
        kind,
        ratio,
        developerStrength,
        window,
        List.of(),
        bowlLife,
        takeUp,
        USUAL_CHECK_EVERY,
        makersSheetOnFile);
  }

  public ProductEntry withTakeUp(TakeUp weighed) {
    return new ProductEntry(
        name,
        kind,
        ratio,
        developerStrength,
        window,
        windowsByLift,
        bowlLife,
        weighed,
        checkEvery,
        makersSheetOnFile);
  }

  /**
   * The window for a lift: that of the first entry which reaches so many levels, the last when none
   * does, the whole window when the product has no such entries.
   *
   * @param levels wanted, 1 or more
   */
  public TimeWindow windowForLift(int levels) {
    return windowsByLift.stream()
        .filter(part -> part.levels() >= levels)
        .findFirst()
        .or(() -> windowsByLift.stream().reduce((first, second) -> second))
        .map(LiftWindow::window)
        .orElse(window);
  }
}
