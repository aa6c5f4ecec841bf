/**
 * Writes a scene as SVG sized in millimetres, with a title, a description, roles and data
 * attributes on its marks; the same scene gives the same bytes in any locale, time zone and
 * process.
 */
package foilwright.drawing.svg;
