package foilwright.service.marking;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.Set;

/**
 * One piece of practice work as it was measured.
 *
 * @param learner whose, by number and never by name, such as {@code learner-04}
 * @param foils those that were measured, each once
 * @param foilsLeft how many foils were placed on the client's left
 * @param foilsRight how many on the right
 */
public record Attempt(
    String learner, List<Measured> foils, OptionalInt foilsLeft, OptionalInt foilsRight) {
  public Attempt {
    if (!learner.matches("learner-\\d{2,6}")) {
      throw new IllegalArgumentException(
          "a learner is told by a number such as learner-04, not \"" + learner + "\"");
    }
    foils = List.copyOf(foils);
    Objects.requireNonNull(foilsLeft);
    Objects.requireNonNull(foilsRight);
    Set<Integer> numbers = new HashSet<>();
    for (Measured measured : foils) {
      if (!numbers.add(measured.foil())) {
        throw new IllegalArgumentException("foil " + measured.foil() + " comes twice");
      }
    }
    if (foilsLeft.orElse(0) < 0 || foilsRight.orElse(0) < 0) {
      throw new IllegalArgumentException("a number of foils cannot be less than 0");
    }
  }
}
