package foilwright.cli;

import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;

/**
 * What a command speaks to.
 *
 * @param out for results
 * @param err for messages and progress
 * @param folder from which file names are read and in which own documents lie
 * @param today the day it is
 */
record Terminal(PrintStream out, PrintStream err, Path folder, LocalDate today) {}
