/**
 * Drawings as data: a scene is a list of marks in sheet millimetres, each with a role, a layer and
 * a stable id; one painter puts a scene on any {@code Graphics2D}; the writers below this package
 * add only what a file format needs.
 *
 * <p>Sheet frame: origin at the top left corner, +x right, +y down, millimetres. Text is measured
 * by the advances of the shipped typeface, never by the platform's fonts, so that the same scene
 * gives the same bytes on every machine. Labels are placed and views chosen before a scene is made.
 */
package foilwright.drawing;
