package foilwright.look;

import foilwright.units.Length;
import foilwright.units.Share;

/**
 * What one picture, or a part of one, shows.
 *
 * @param visible lightened share of the hair that is seen
 * @param ribbons how many ribbons lie side by side across the fall, the mean over level lines 3 mm
 *     apart; 0 when nothing lightened is seen
 * @param ribbonWidth how far light goes on across the fall: twice the distance at which places
 *     agree half as well as those 4.5 mm apart (autocovariance of the lightened share)
 * @param bandHeight the same down the fall
 * @param shelf depth of darker hair down the fall from where hair begins to be seen to the first
 *     that has half the picture's mean of light, the mean over upright lines
 * @param contrast how much places differ from their surroundings of 40 mm: the root mean square of
 *     the CIEDE2000 difference, colours being taken without lamp and shade over 4.5 mm, which is
 *     what an eye tells apart at arm's length
 * @param left lightened share of the hair that is seen on the client's left half; of the whole in a
 *     picture from a side
 * @param right the same of the right half
 */
public record SideFigures(
    Share visible,
    double ribbons,
    Length ribbonWidth,
    Length bandHeight,
    Length shelf,
    double contrast,
    Share left,
    Share right) {

  /** How many times as wide across the fall a patch of light is as it is high down the fall. */
  public double spread() {
    double height = bandHeight.toMillimetres();
    return height > 0 ? ribbonWidth.toMillimetres() / height : 0;
  }
}
