package foilwright.head;

import foilwright.units.Angle;
import foilwright.units.Length;
import foilwright.units.Share;

/**
 * House settings that say how every head is divided and meshed.
 *
 * @param occipitalElevation elevation of the outward normal along the occipital line; below it the
 *     head curves in; -10 to 15 degrees
 * @param ridgeElevation elevation of the outward normal along the parietal ridge; hair above it
 *     lies, hair below it hangs; 20 to 60 degrees
 * @param fringeDepth how far back from the front hairline the fringe triangle reaches, as a share
 *     of the front-to-back arc; 10 to 45 percent
 * @param meshEdge length of the edges of the scalp mesh; 1 to 10 mm
 */
public record HeadSettings(
    Angle occipitalElevation, Angle ridgeElevation, Share fringeDepth, Length meshEdge) {
  public static final HeadSettings USUAL =
      new HeadSettings(
          Angle.ofDegrees(0),
          Angle.ofDegrees(32),
          Share.ofFraction(0.25),
          Length.ofMillimetres(2.5));

  public HeadSettings {
    require("occipital elevation", occipitalElevation.toDegrees(), -10, 15, "deg");
    require("ridge elevation", ridgeElevation.toDegrees(), 20, 60, "deg");
    require("fringe depth", fringeDepth.toPercent(), 10, 45, "%");
    require("mesh edge", meshEdge.toMillimetres(), 1, 10, "mm");
  }

  private static void require(String name, double value, double least, double most, String unit) {
    if (!(value >= least - 1e-9 && value <= most + 1e-9)) {
      throw new IllegalArgumentException(
          name + " " + value + " " + unit + " is outside " + least + " to " + most + " " + unit);
    }
  }

  public HeadSettings withMeshEdge(Length edge) {
    return new HeadSettings(occipitalElevation, ridgeElevation, fringeDepth, edge);
  }
}
