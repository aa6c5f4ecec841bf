package foilwright.pattern;

import foilwright.units.Length;

/**
 * A parting drawn with the comb in teeth, both edges of a slice in phase, so that its area is the
 * same on average.
 *
 * @param toothDepth from point to point across the parting
 * @param toothWidth from one point to the next on the same side, along the parting
 */
public record ZigzagParting(Length toothDepth, Length toothWidth) {
  public ZigzagParting {
    Require.positive(toothDepth, "a zigzag parting's tooth depth");
    Require.positive(toothWidth, "a zigzag parting's tooth width");
  }
}
