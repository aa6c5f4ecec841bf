/**
 * Points, planes and polylines in the head frame.
 *
 * <p>Frame: origin midway between the preauricular points, +x to the client's right, +y to the
 * front, +z up; right-handed. Bare doubles here are millimetres and radians; names say so where it
 * is not plain.
 */
package foilwright.geometry;
