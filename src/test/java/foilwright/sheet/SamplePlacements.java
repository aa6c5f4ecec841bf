package foilwright.sheet;

import foilwright.head.HeadKind;
import foilwright.placement.Placement;

/** Placements for tests of other packages. */
public final class SamplePlacements {
  private SamplePlacements() {}

  /** The diagonals toward the back on a usual head. */
  public static Placement diagonals() {
    return SampleMaps.place("diagonals-back", SampleMaps.head(HeadKind.WOMAN));
  }
}
