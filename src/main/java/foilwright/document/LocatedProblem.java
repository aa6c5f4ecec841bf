package foilwright.document;

import foilwright.problem.Problem;
import java.util.Objects;

/** A problem and the place in the document where it lies. */
public record LocatedProblem(Problem problem, Place place) {
  public LocatedProblem {
    Objects.requireNonNull(problem);
    Objects.requireNonNull(place);
  }

  /** One line: {@code "line 12, column 9: sections[0].fill.slice: message (cure)"}. */
  public String words() {
    StringBuilder words = new StringBuilder();
    if (!place.equals(Place.WHOLE)) {
      words.append("line ").append(place.line()).append(", column ").append(place.column());
      words.append(": ");
    }
    if (!problem.path().isEmpty()) {
      words.append(problem.path()).append(": ");
    }
    return words.append(problem.message()).append("; ").append(problem.cure()).toString();
  }
}
