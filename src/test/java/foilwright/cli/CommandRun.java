package foilwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;

/**
 * One command line, run in this process.
 *
 * @param out what went to standard output
 * @param err what went to standard error
 */
record CommandRun(int code, String out, String err) {
  static CommandRun in(Path folder, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Foilwright.run(
            args,
            new Terminal(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                folder,
                LocalDate.of(2026, 3, 2)));
    return new CommandRun(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
