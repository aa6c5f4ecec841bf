/**
 * How hair falls over a head: as a direction field on the scalp, and as chains of points for every
 * hair, combed, parted, slid over skin and hair beneath, and hanging free where the head curves in.
 *
 * <p>Head frame, millimetres; gravity is -z with the head level. Steps of 3 mm by default; the
 * result converges as they shrink, and it is the same to the bit for the same seed on any number of
 * processors. Stiffness, depth of the coat and the comb's reach are settings of this program; hair
 * does not push hair aside, so that where strands are swept together they lie closer than real
 * ones.
 */
package foilwright.fall;
