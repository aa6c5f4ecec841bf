package foilwright.service;

import java.util.Objects;

/**
 * The part of a product's window that goes with a number of levels of lift.
 *
 * @param levels lift wanted, up to so many levels; 1 or more
 */
public record LiftWindow(int levels, TimeWindow window) {
  public LiftWindow {
    Objects.requireNonNull(window);
    if (levels < 1 || levels > 9) {
      throw new IllegalArgumentException("a lift of " + levels + " levels is outside 1 to 9");
    }
  }
}
