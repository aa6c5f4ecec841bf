/**
 * The command line: commands, options, exit codes. Results to standard output, messages to standard
 * error.
 */
package foilwright.cli;
