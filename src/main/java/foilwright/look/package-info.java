/**
 * What the falling hair shows: pictures of it from five sides as plain pixels, and figures: visible
 * share, ribbons and shelves, contrast, buried hair, balance.
 *
 * <p>Head frame, millimetres; colours as linear light inside and as sRGB in pictures. Hair is drawn
 * by weight: each step of each hair counts in a pixel by how much of it is seen through the hair
 * before it, so that the shares of a pixel add up to one and the order of drawing changes nothing.
 * Figures are counted on the hairs that were followed and carry their sampling error; colours of
 * levels are settings of this program, and a picture is an aid to talking, never a promise about a
 * result.
 */
package foilwright.look;
