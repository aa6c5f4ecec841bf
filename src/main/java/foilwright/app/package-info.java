/**
 * What a person does with the program: find documents, check them, plan a pattern on a guest, look
 * at a head; and the results of each, ready to be told by a command or a page.
 *
 * <p>The only package that brings documents, head, placement, times and sheets together. Results
 * carry what they were made from, figures with units, and all problems. Only {@link
 * foilwright.app.Workspace} and {@link foilwright.app.OutputFolder} touch files.
 */
package foilwright.app;
