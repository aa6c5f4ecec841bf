package foilwright.head;

import foilwright.anatomy.HairlineStretch;
import foilwright.anatomy.Landmark;
import foilwright.anatomy.Zone;
import foilwright.units.Length;
import java.util.Locale;

/**
 * Where a point of the scalp is, as a person with a tape would find it: four distances, of which
 * any two that cross well lead there.
 *
 * @param zone the zone it lies in
 * @param stretch the stretch of hairline that is nearest
 * @param fromHairline distance along the surface from it, 0 or more
 * @param fromCentre distance along the surface from the centre line; positive to the client's right
 * @param fromEarLine distance along the surface from the ear line; positive in front of it
 * @param landmark the landmark that is nearest
 * @param fromLandmark length of a tape laid straight from it
 */
public record TapeDirections(
    Zone zone,
    HairlineStretch stretch,
    Length fromHairline,
    Length fromCentre,
    Length fromEarLine,
    Landmark landmark,
    Length fromLandmark) {
  /** The same with every distance rounded to the millimetre, as it is printed. */
  public TapeDirections toTheMillimetre() {
    return new TapeDirections(
        zone,
        stretch,
        rounded(fromHairline),
        rounded(fromCentre),
        rounded(fromEarLine),
        landmark,
        rounded(fromLandmark));
  }

  private static Length rounded(Length length) {
    return Length.ofMillimetres(Math.rint(length.toMillimetres()));
  }

  /** One sentence with every distance to the millimetre. */
  public String words() {
    return String.format(
        Locale.ROOT,
        "%s: %.0f mm from the %s, %s, %s; %.0f mm from the %s",
        zone.words(),
        fromHairline.toMillimetres(),
        stretch.words(),
        aside(fromCentre.toMillimetres(), "right of", "left of", "centre line"),
        aside(fromEarLine.toMillimetres(), "in front of", "behind", "ear line"),
        fromLandmark.toMillimetres(),
        landmark.words());
  }

  private static String aside(double mm, String positive, String negative, String line) {
    double whole = Math.rint(mm);
    return whole == 0
        ? "on the " + line
        : String.format(
            Locale.ROOT,
            "%.0f mm %s the %s",
            Math.abs(whole),
            whole > 0 ? positive : negative,
            line);
  }
}
