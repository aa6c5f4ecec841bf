/**
 * Writes scenes as a PDF at true size: one millimetre of the scene is one millimetre on paper,
 * within 0.001 mm. The typeface is embedded, its text can be copied, and the same scenes give the
 * same bytes.
 */
package foilwright.drawing.pdf;
