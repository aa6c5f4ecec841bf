package foilwright.placement;

import foilwright.head.TapeDirections;
import foilwright.units.Length;

/**
 * Where a point of the scalp is, in tape measure terms.
 *
 * @param fromHairline distance along the surface from the nearest hairline, 0 or more
 * @param fromCentre distance along the surface from the centre line; positive to the client's right
 * @param words the same said as a person would find it, with the stretch of hairline and the zone
 *     named
 */
public record Find(Length fromHairline, Length fromCentre, String words) {
  static Find of(TapeDirections directions) {
    return new Find(directions.fromHairline(), directions.fromCentre(), directions.words());
  }
}
