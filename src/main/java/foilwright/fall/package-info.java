/**
 * How hair falls over a head. So far as a direction field on the scalp: the pull of gravity along
 * the surface, turned away from the part. Head frame, millimetres; gravity is -z with the head
 * level.
 */
package foilwright.fall;
