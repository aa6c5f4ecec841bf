package foilwright.placement;

import foilwright.anatomy.Side;
import foilwright.anatomy.Zone;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.units.Angle;
import foilwright.units.Area;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.Optional;

/**
 * One foil on the head.
 *
 * @param number its place in the working order, from 1
 * @param section name of its section
 * @param sectionIndex the section's place in the pattern, from 0
 * @param row the slice it holds, from 1 in the section's direction of travel
 * @param inRow its place in that slice, from 1
 * @param side the client's side that holds most of it, or the middle when it lies across the centre
 *     line
 * @param zone the zone that holds most of it
 * @param shape the section's shape in trade words, such as {@code diagonal}
 * @param mix mix slot, such as {@code A}
 * @param region the strip of scalp whose hair it takes hold of: slice by foil width
 * @param parting the first edge of its slice, along the foil, in the direction left to right of a
 *     viewer
 * @param middle the line half way through the slice, in the same direction
 * @param outward unit outward normal at its centre
 * @param partingAngle 0 level, 90 vertical, unsigned, in the section's viewing frame
 * @param lowerEnd which end is lower, in words; empty for a level or vertical parting
 * @param width length of the foil along the parting, on the middle line
 * @param sliceAtStart thickness of the slice at the start of {@code middle}
 * @param sliceAtEnd thickness of the slice at the end of {@code middle}
 * @param backgroundBefore background between the previous slice and this one at the middle of the
 *     foil; zero when back to back; for a first row the hair between the section's edge and it
 * @param area scalp area of {@code region}
 * @param pickedShare share of the hair in the region that the picks take
 * @param picks strokes of the comb that take them: picks and teeth along the parting; 0 for a solid
 *     slice
 * @param hairs hairs that root in the region
 * @param pickedHairs hairs that the picks take
 * @param hair mass of the picked hairs over their treated length
 * @param hairLength mean length of the hair in the region
 * @param startFromScalp distance along the hair from the scalp at which product starts
 * @param centreFind tape terms of the centre
 * @param startFind tape terms of the start of {@code middle}
 * @param endFind tape terms of the end of {@code middle}
 */
public record PlacedFoil(
    int number,
    String section,
    int sectionIndex,
    int row,
    int inRow,
    Side side,
    Zone zone,
    String shape,
    String mix,
    Region region,
    Polyline parting,
    Polyline middle,
    Vector3 outward,
    Angle partingAngle,
    Optional<String> lowerEnd,
    Length width,
    Length sliceAtStart,
    Length sliceAtEnd,
    Length backgroundBefore,
    Area area,
    Share pickedShare,
    double picks,
    double hairs,
    double pickedHairs,
    Mass hair,
    Length hairLength,
    Length startFromScalp,
    Find centreFind,
    Find startFind,
    Find endFind) {

  /** The point of the middle line half way along it, on the scalp, head frame in millimetres. */
  public Vector3 centre() {
    return middle.at(middle.length() / 2);
  }

  /** The same foil at another place in the working order. */
  PlacedFoil withNumber(int value) {
    return new PlacedFoil(
        value,
        section,
        sectionIndex,
        row,
        inRow,
        side,
        zone,
        shape,
        mix,
        region,
        parting,
        middle,
        outward,
        partingAngle,
        lowerEnd,
        width,
        sliceAtStart,
        sliceAtEnd,
        backgroundBefore,
        area,
        pickedShare,
        picks,
        hairs,
        pickedHairs,
        hair,
        hairLength,
        startFromScalp,
        centreFind,
        startFind,
        endFind);
  }

  /** The same foil at a place in the working order, with a mix. */
  PlacedFoil as(int value, String slot) {
    return number == value && mix.equals(slot) ? this : withNumber(value).withMix(slot);
  }

  /** The same foil with another mix. */
  PlacedFoil withMix(String value) {
    return new PlacedFoil(
        number,
        section,
        sectionIndex,
        row,
        inRow,
        side,
        zone,
        shape,
        value,
        region,
        parting,
        middle,
        outward,
        partingAngle,
        lowerEnd,
        width,
        sliceAtStart,
        sliceAtEnd,
        backgroundBefore,
        area,
        pickedShare,
        picks,
        hairs,
        pickedHairs,
        hair,
        hairLength,
        startFromScalp,
        centreFind,
        startFind,
        endFind);
  }
}
