package foilwright.placement;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * One slice of one arm of a section, before it is divided into foils.
 *
 * @param row the slice's place in the direction of travel, from 0
 * @param slice its scalp
 * @param first its edge on the side where travel begins, one or more lines
 * @param middle the line half way through it, without teeth
 * @param last its other edge
 * @param thicknessMm along the guide line
 * @param thicknessAt along the surface at a point of the scalp, mm
 * @param backgroundAt what lies between the strip before and this one at a point of the scalp, mm;
 *     for a first strip the offset from the edge of the section
 * @param rising how a straight parting rises to the viewer's right, radians
 * @param firstPoint where its first edge crosses the guide line
 * @param lastPoint where its last edge crosses the guide line
 */
record Strip(
    int row,
    Region slice,
    List<Polyline> first,
    List<Polyline> middle,
    List<Polyline> last,
    double thicknessMm,
    ToDoubleFunction<Vector3> thicknessAt,
    ToDoubleFunction<Vector3> backgroundAt,
    OptionalDouble rising,
    Vector3 firstPoint,
    Vector3 lastPoint) {

  /**
   * The strips of one arm.
   *
   * @param backgrounds between strips, in the direction of travel
   * @param untouched before the first strip and after the last
   * @param leftMm what stays over along the guide after the last strip; negative when a demanded
   *     count does not fit
   * @param most how many strips would fit
   */
  record Arm(
      List<Strip> strips, List<Region> backgrounds, Region untouched, double leftMm, int most) {}
}
