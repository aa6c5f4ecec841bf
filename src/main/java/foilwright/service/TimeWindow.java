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
}
