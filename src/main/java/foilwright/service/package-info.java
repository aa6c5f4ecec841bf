/**
 * Time and materials of one visit: how long placing takes at a person's pace, how long the chair is
 * taken, which products and foils the house holds, and what must be asked before any of it.
 *
 * <p>Every time is three-point (quick, usual, slow) and ends as a range. Values that ship with the
 * program are common practice of the trade, not measurements of anybody; a house replaces them by
 * its own.
 */
package foilwright.service;
