package foilwright.cli;

/** The command line cannot be obeyed as it stands; the message says why and what would do. */
final class UsageException extends RuntimeException {
  UsageException(String message) {
    super(message);
  }
}
