package foilwright.hair;

import foilwright.units.Length;
import foilwright.units.Share;

/**
 * Hair of a zone that was lightened before.
 *
 * @param share share of the zone's hair that carries it, 0 to 1
 * @param fromScalp distance along the hair from the scalp at which it begins today: the grown-out
 *     length; 0 or more
 */
public record OldLightener(Share share, Length fromScalp) {
  public OldLightener {
    if (!(share.toFraction() >= 0 && share.toFraction() <= 1)) {
      throw new IllegalArgumentException(
          "a share of lightened hair of " + share + " is outside 0 % to 100 %");
    }
    if (fromScalp.compareTo(Length.ZERO) < 0) {
      throw new IllegalArgumentException(
          "old lightener cannot begin " + fromScalp + " from the scalp");
    }
  }
}
