package foilwright.document;

import foilwright.problem.Problem;
import foilwright.problem.Severity;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What reading a document gave.
 *
 * @param value present exactly when no problem is an error
 * @param problems all of them, in the order of the document
 * @param places finds the place of a path in the text that was read
 */
public record ReadResult<T>(Optional<T> value, List<LocatedProblem> problems, Places places) {
  public ReadResult {
    problems = List.copyOf(problems);
    Objects.requireNonNull(places);
    boolean errors = problems.stream().anyMatch(p -> p.problem().severity() == Severity.ERROR);
    if (value.isPresent() == errors) {
      throw new IllegalArgumentException("a document has a value exactly when it has no error");
    }
  }

  /** Nothing was read. */
  public static <T> ReadResult<T> refused(Problem why) {
    return new ReadResult<>(
        Optional.empty(), List.of(new LocatedProblem(why, Place.WHOLE)), Places.none());
  }

  /** Puts a problem that was found later, such as on a head, at its place in the document. */
  public LocatedProblem locate(Problem problem) {
    return new LocatedProblem(problem, places.find(problem.path()));
  }
}
