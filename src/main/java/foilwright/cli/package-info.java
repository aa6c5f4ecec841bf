/**
 * The command line. Results go to standard output, messages and progress to standard error; exit
 * codes are in {@link foilwright.cli.Exit}. Commands only tell what {@code app} gives them.
 */
package foilwright.cli;
