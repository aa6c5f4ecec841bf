package foilwright.cli;

/** Exit codes of the program. */
final class Exit {
  /** Done. */
  static final int DONE = 0;

  /** A document has problems that must be put right first. */
  static final int PROBLEMS = 1;

  /** The command was not understood. */
  static final int USAGE = 2;

  /** A file cannot be read or written, or the program itself failed. */
  static final int FAILURE = 3;

  private Exit() {}
}
