/**
 * One builder for each sheet: from results to a scene, with every choice of view, label and place
 * made here, so that a writer decides nothing.
 *
 * <p>Sheet frame in millimetres, +x right and +y down; the head frame where a surface is drawn.
 * Left and right mean the client's, and every view says which is which.
 */
package foilwright.sheet;
