/**
 * A measured head: its form from a few tape measurements, landmarks, hairline, zones, part line,
 * and the scalp mesh that carries them.
 *
 * <p>Frame: origin midway between the preauricular points, +x to the client's right, +y to the
 * front, +z up with the head level (eye-ear plane, known to about 2 degrees); millimetres, radians.
 * The form is one template scaled along the three axes: a tape is met within 0.5 mm, but a head of
 * another build can differ from its model by several millimetres between the tapes.
 */
package foilwright.head;
