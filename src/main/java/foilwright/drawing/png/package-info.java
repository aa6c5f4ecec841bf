/**
 * Paints scenes as PNG pictures. Letters are painted as their shapes, so that a machine without any
 * font makes the same picture.
 */
package foilwright.drawing.png;
