package foilwright.app;

import java.util.List;
import java.util.Optional;

/**
 * What calibrating gave.
 *
 * @param calibrated absent when a document could not be read or the measurement was refused;
 *     nothing was written then
 * @param problems why
 * @param unreachable whether a document does not exist or cannot be read
 */
public record CalibrationOutcome(
    Optional<Calibrated> calibrated, List<FoundProblem> problems, boolean unreachable) {
  public CalibrationOutcome {
    problems = List.copyOf(problems);
  }
}
