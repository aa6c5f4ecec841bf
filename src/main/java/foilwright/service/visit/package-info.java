/**
 * The whole visit: the schedule of a plan's foils with its bowls, the appointment in blocks, its
 * price, what has grown out since the last visit and when to come again.
 */
package foilwright.service.visit;
