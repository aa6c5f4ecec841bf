package foilwright.app;

import foilwright.pattern.Pattern;
import foilwright.placement.Thinning;
import java.util.List;
import java.util.Objects;

/**
 * What was given up so that a plan keeps within its limits.
 *
 * @param limits as asked for
 * @param before foils of the whole pattern
 * @param givenUp foils of the whole pattern under its numbers, in the order of giving up; empty
 *     when it kept within the limits as it was
 * @param pattern what is left, to be planned or kept
 */
public record Trimmed(Limits limits, int before, List<Thinning.Choice> givenUp, Pattern pattern) {
  public Trimmed {
    Objects.requireNonNull(limits);
    Objects.requireNonNull(pattern);
    givenUp = List.copyOf(givenUp);
  }
}
