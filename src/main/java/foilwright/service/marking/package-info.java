/**
 * Marks practice work against a plan: what a teacher measures on a training head beside what the
 * plan says, with the house's tolerances, and what many attempts of one class have in common.
 *
 * <p>Errors are signed: more than nothing where the work is thicker, wider or steeper than planned.
 * Nothing here judges a person; it says by how much a foil is off.
 */
package foilwright.service.marking;
