package foilwright.app;

import java.util.List;
import java.util.Optional;

/**
 * What checking one document gave.
 *
 * @param name the document as the person named it
 * @param kind what it is; empty when it could not be read as anything
 * @param title its own title or number; empty when it has an error
 * @param foils how many foils a pattern without errors lays on a usual head; empty for others
 * @param problems all of them; for a pattern also those of laying it on a usual head
 * @param unreachable whether there is no such document or it cannot be read
 */
public record CheckedDocument(
    String name,
    Optional<DocumentKind> kind,
    Optional<String> title,
    Optional<Integer> foils,
    List<FoundProblem> problems,
    boolean unreachable) {
  public CheckedDocument {
    problems = List.copyOf(problems);
  }

  public boolean hasErrors() {
    return problems.stream().anyMatch(FoundProblem::isError);
  }
}
