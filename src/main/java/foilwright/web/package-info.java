/**
 * The page: a local web server for the screen beside the chair. Handlers here, templates beside
 * them, drawings and plans from {@code app}.
 *
 * <p>It listens to this machine alone, answers to its own name alone, runs no script and shows no
 * style that it did not send as a file of its own, and writes to the workspace's own folders only.
 * Lengths are shown in millimetres or inches as the person chooses; documents keep millimetres.
 */
package foilwright.web;
