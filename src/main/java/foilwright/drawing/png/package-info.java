/**
 * Renders an SVG sheet as PNG by Batik. A sheet with outlined lettering needs no font of the
 * platform, so that the picture is the same on every machine.
 */
package foilwright.drawing.png;
