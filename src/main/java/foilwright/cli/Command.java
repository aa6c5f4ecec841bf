package foilwright.cli;

import java.io.IOException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** One command of the program. */
interface Command {
  /** Its name, options and help. */
  CommandSpec spec();

  /**
   * Does it.
   *
   * @return an exit code
   * @throws IOException when a file cannot be written
   * @throws UsageException when options contradict each other or name what is not there
   */
  int run(ParseResult options, Terminal terminal) throws IOException;
}
