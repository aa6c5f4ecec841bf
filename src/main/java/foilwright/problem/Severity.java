package foilwright.problem;

/** How much a problem stands in the way. */
public enum Severity {
  /** The plan cannot be made, or part of it is wrong, until this is put right. */
  ERROR,
  /** The plan is made; the person should look at this before working from it. */
  WARNING,
  /** Worth knowing; nothing to put right. */
  NOTE
}
