/**
 * Lays the sections of a pattern on a head: partings, slices, backgrounds and numbered foils.
 *
 * <p>Head frame, millimetres. Every part of a section is a {@link
 * foilwright.geometry.surface.Region} of the scalp mesh, so that foils, remainders, backgrounds and
 * what is left untouched add up to the section in area to 1e-9 relative. Left and right mean the
 * client's.
 */
package foilwright.placement;
