/**
 * The hair of one person: how dense, how thick, how long and in what state, zone by zone, and what
 * follows from it for a part of the scalp: hairs, mean length, mass.
 *
 * <p>Density in hairs per square centimetre, lengths along the hair, mass of dry hair. Published
 * means of density differ by group from 161 to 226 per cm2 with a spread of 50 to 73 between
 * persons of one group, so that a count for a person whose density was not measured is good to
 * about a third; a count for a measured density is exact for the model.
 */
package foilwright.hair;
