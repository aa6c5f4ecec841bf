/**
 * What the colourist means to do, before any head is known: a pattern is a list of sections in
 * working order; a section is a region, a shape (a family of partings) and a fill (slices,
 * background, picks, foils).
 *
 * <p>All types are immutable and compared by value. Lengths may be proportions of the head ({@link
 * foilwright.pattern.Extent}). Left and right are the client's. Nothing here knows a head, a client
 * or a product: {@link foilwright.pattern.PatternCheck} finds what can be seen to be wrong without
 * one.
 */
package foilwright.pattern;
