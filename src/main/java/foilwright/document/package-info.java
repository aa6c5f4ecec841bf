/**
 * Documents as text: strict, position-tracking reading with every problem at once, exact writing,
 * format versions, and saving without ever losing what was there.
 *
 * <p>Quantities carry their unit in the text. A document is at most 1 MB and {@value
 * foilwright.document.Limits#DEPTH} levels deep; both are checked before anything is built. A value
 * that is read and written again reads back equal, to the last bit.
 */
package foilwright.document;
