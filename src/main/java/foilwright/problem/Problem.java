package foilwright.problem;

import foilwright.geometry.Vector3;
import java.util.Objects;
import java.util.Optional;

/**
 * One thing that is wrong or worth knowing.
 *
 * @param code stable, lower case with hyphens, such as {@code unknown-key}
 * @param severity how much it stands in the way
 * @param path where in the document, such as {@code sections[2].fill.slice}; empty for the whole
 * @param message what is wrong, in the words of the trade, with figures and units
 * @param cure how to put it right; never empty
 * @param place where on the head it is, head frame in millimetres, if it has a place
 */
public record Problem(
    String code,
    Severity severity,
    String path,
    String message,
    String cure,
    Optional<Vector3> place) {
  public Problem {
    Objects.requireNonNull(severity);
    Objects.requireNonNull(path);
    Objects.requireNonNull(place);
    if (code.isBlank() || message.isBlank() || cure.isBlank()) {
      throw new IllegalArgumentException("a problem needs a code, a message and a cure");
    }
  }

  public static Problem error(String code, String path, String message, String cure) {
    return new Problem(code, Severity.ERROR, path, message, cure, Optional.empty());
  }

  public static Problem warning(String code, String path, String message, String cure) {
    return new Problem(code, Severity.WARNING, path, message, cure, Optional.empty());
  }

  public static Problem note(String code, String path, String message, String cure) {
    return new Problem(code, Severity.NOTE, path, message, cure, Optional.empty());
  }

  public Problem at(Vector3 point) {
    return new Problem(code, severity, path, message, cure, Optional.of(point));
  }
}
