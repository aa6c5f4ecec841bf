package foilwright.app;

import foilwright.document.LocatedProblem;
import foilwright.document.ReadResult;
import foilwright.problem.Problem;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * A document that was looked for and read.
 *
 * @param name the document as the person named it
 */
record Found<T>(String name, ReadResult<T> result) {
  private static final Set<String> UNREACHABLE =
      Set.of(
          Workspace.NO_SUCH_DOCUMENT, "missing-file", "is-folder", "no-permission", "not-readable");

  Found {
    Objects.requireNonNull(name);
    Objects.requireNonNull(result);
  }

  Optional<T> value() {
    return result.value();
  }

  List<FoundProblem> problems() {
    return result.problems().stream().map(this::tell).toList();
  }

  /** A problem that was found later, at its place in this document. */
  FoundProblem locate(Problem problem) {
    return tell(result.locate(problem));
  }

  private FoundProblem tell(LocatedProblem located) {
    return new FoundProblem(
        name, located.place().line(), located.place().column(), located.problem());
  }

  /** Whether there is no such document or it cannot be read, so that nothing it says is known. */
  boolean unreachable() {
    return result.problems().stream()
        .anyMatch(located -> UNREACHABLE.contains(located.problem().code()));
  }
}
