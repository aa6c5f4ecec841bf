package foilwright.service;

import foilwright.units.Minutes;

/** Least and most time that a product may stay on the hair, as its maker's sheet says. */
public record TimeWindow(Minutes least, Minutes most) {
  public TimeWindow {
    if (least.compareTo(Minutes.ZERO) < 0 || most.compareTo(least) < 0) {
      throw new IllegalArgumentException(
          "a window from " + least + " to " + most + " must start at 0 or later and not run back");
    }
  }

  /** Whether the other window lies within this one. */
  public boolean holds(TimeWindow other) {
    return other.least.compareTo(least) >= 0 && other.most.compareTo(most) <= 0;
  }

  /** Such as {@code 20 min to 45 min}. */
  public String words() {
    return least + " to " + most;
  }

  /**
   * How many foils can come out together without one leaving the window, when each takes {@code
   * perFoil} to place: 1 + floor((most - least) / perFoil).
   *
   * @param perFoil more than 0
   */
  public int foilsOutTogether(Minutes perFoil) {
    if (perFoil.compareTo(Minutes.ZERO) <= 0) {
      throw new IllegalArgumentException("a foil takes more than 0 min, not " + perFoil);
    }
    double room = most.minus(least).toSeconds() / perFoil.toSeconds();
    return 1 + (int) Math.min(Math.floor(room * (1 + 1e-12)), Integer.MAX_VALUE - 1.0);
  }
}
