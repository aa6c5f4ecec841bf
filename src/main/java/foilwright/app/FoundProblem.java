package foilwright.app;

import foilwright.problem.Problem;
import foilwright.problem.Severity;

/**
 * A problem and the document it lies in.
 *
 * @param document name of the document as a person would say it; empty when it lies in none
 * @param line from 1; 0 when it concerns the whole
 * @param column from 1; 0 when it concerns the whole
 */
public record FoundProblem(String document, int line, int column, Problem problem) {

  public boolean isError() {
    return problem.severity() == Severity.ERROR;
  }
}
