package foilwright.app;

import foilwright.units.Minutes;
import java.util.Optional;

/**
 * What a plan must keep within; foils are given up until it does.
 *
 * @param within from the first parting until the last foil is out, on nine days in ten; more than 0
 * @param mostFoils 1 or more
 */
public record Limits(Optional<Minutes> within, Optional<Integer> mostFoils) {
  public static final Limits NONE = new Limits(Optional.empty(), Optional.empty());

  public Limits {
    if (within.isPresent() && within.get().compareTo(Minutes.ZERO) <= 0) {
      throw new IllegalArgumentException("a limit of " + within.get() + " must be more than 0 min");
    }
    if (mostFoils.isPresent() && mostFoils.get() < 1) {
      throw new IllegalArgumentException("at most " + mostFoils.get() + " foils is no plan");
    }
  }

  public boolean any() {
    return within.isPresent() || mostFoils.isPresent();
  }
}
