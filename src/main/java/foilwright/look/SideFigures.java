package foilwright.look;

import foilwright.units.Length;
import foilwright.units.Share;
import java.util.Locale;

/**
 * What one picture, or a part of one, shows. Figures of ribbons, bands and shelf are 0 from above,
 * where hair runs all ways.
 *
 * @param visible lightened share of the hair that is seen
 * @param ribbons how many ribbons lie side by side across the fall, the mean over level lines; 0
 *     when the light blends, so that places differ no more than single hairs do by chance
 * @param ribbonWidth the median of their widths, square to the hair
 * @param bands how many bands lie one above another, the mean over upright lines; 0 when there are
 *     none
 * @param bandHeight the median of their heights
 * @param spread how many times as far light goes on across the fall as down it: distances at which
 *     places still agree half (covariance between two independent halves of the hair of what the
 *     share over 5 mm differs by from that of the 41 mm round about); over 1 reads as bands, under
 *     1 as ribbons; 0 when the light blends, so that the halves differ by more than they agree on
 * @param shelf depth of darker hair down the fall from where hair begins to be seen to the first 6
 *     mm that have half the picture's mean of light, the mean over strips 9 mm wide
 * @param contrast how much places differ from their surroundings of 41 mm: the root of the mean
 *     square of their difference in CIE 1976 L*a*b*, weighed as CIEDE2000 weighs small differences
 *     about the colour half way; colours are taken without lamp and shade over 5 mm, which is what
 *     an eye tells apart at arm's length. For the square stands the product of the differences of
 *     two independent halves of the hair, so that what single hairs do by chance falls out and the
 *     figure does not depend on how many are followed; 0 when that is all there is
 * @param left lightened share of the hair that is seen on the client's left half; of the whole in a
 *     picture from a side
 * @param right the same of the right half
 */
public record SideFigures(
    Share visible,
    double ribbons,
    Length ribbonWidth,
    double bands,
    Length bandHeight,
    double spread,
    Length shelf,
    double contrast,
    Share left,
    Share right) {
  /** Where nothing lightened is seen. */
  public static final SideFigures NONE =
      new SideFigures(
          Share.ZERO, 0, Length.ZERO, 0, Length.ZERO, 0, Length.ZERO, 0, Share.ZERO, Share.ZERO);

  /** Fewer runs than this in a line are chance meetings, not a look. */
  private static final double FEW = 1.5;

  /** Bands reach this much farther across than down; the same the other way for ribbons. */
  private static final double BANDED = 1.5;

  /**
   * How the light reads in words of the trade, such as {@code as 9 ribbons 8 mm wide, contrast
   * 4.2}.
   */
  public String reading() {
    String stands = ", " + contrastWords();
    if (bands >= FEW && spread > BANDED) {
      return String.format(
              Locale.ROOT, "as %.0f bands %.0f mm high", bands, bandHeight.toMillimetres())
          + stands;
    }
    return isRibboned()
        ? String.format(
                Locale.ROOT, "as %.0f ribbons %.0f mm wide", ribbons, ribbonWidth.toMillimetres())
            + stands
        : "as a veil, no single ribbons" + stands;
  }

  /** The contrast in words; where what single hairs do by chance is as much, that. */
  public String contrastWords() {
    return contrast > 0
        ? String.format(Locale.ROOT, "contrast %.1f", contrast)
        : "too fine to tell from single hairs";
  }

  /** Whether ribbons can be told apart. */
  public boolean isRibboned() {
    return ribbons >= FEW;
  }
}
