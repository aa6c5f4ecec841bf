package foilwright.app;

import foilwright.service.visit.Regrowth;
import java.util.Objects;
import java.util.Optional;

/**
 * What has grown out since the last visit.
 *
 * @param pattern that was worked then, if it is on file
 * @param overlaps of this visit's foils with those of the last one; none when that pattern is not
 *     known
 */
public record PlannedRegrowth(
    Regrowth regrowth, Optional<String> pattern, Regrowth.Overlaps overlaps) {
  public PlannedRegrowth {
    Objects.requireNonNull(regrowth);
    Objects.requireNonNull(pattern);
    Objects.requireNonNull(overlaps);
  }
}
