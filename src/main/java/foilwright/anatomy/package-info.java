/**
 * The names of places on a head: zones, sides, landmarks, stretches of the hairline. Left and right
 * always mean the client's.
 */
package foilwright.anatomy;
