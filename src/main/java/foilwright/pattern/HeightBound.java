package foilwright.pattern;

import foilwright.units.Angle;
import java.util.Objects;
import java.util.function.Function;

/** A height that bounds a region from above or below. */
public sealed interface HeightBound {
  /**
   * The isoline of the surface normal's elevation: 0 where the scalp stands upright, 90 deg where
   * it is level.
   */
  record NormalElevation(Angle elevation) implements HeightBound {
    public NormalElevation {
      Require.within(elevation, -90, 90, "a normal elevation");
    }
  }

  /** A named height. */
  record AtLandmark(HeightLandmark landmark) implements HeightBound {
    public AtLandmark {
      Objects.requireNonNull(landmark);
    }
  }

  /** The level plane through the point at a distance along the centre line. */
  record AlongCentreLine(Extent distance, CentreStart from) implements HeightBound {
    public AlongCentreLine {
      Require.notNegative(distance, "a distance along the centre line");
      Objects.requireNonNull(from);
    }
  }

  /** The level at which an earlier section's first parting crosses its guide line. */
  record StartOf(String section) implements HeightBound {
    public StartOf {
      Require.text(section, "a section's name");
    }
  }

  /** The level at which an earlier section's last slice ends on its guide line. */
  record EndOf(String section) implements HeightBound {
    public EndOf {
      Require.text(section, "a section's name");
    }
  }

  default <R> R match(
      Function<NormalElevation, R> elevation,
      Function<AtLandmark, R> landmark,
      Function<AlongCentreLine, R> centreLine,
      Function<StartOf, R> start,
      Function<EndOf, R> end) {
    if (this instanceof NormalElevation e) {
      return elevation.apply(e);
    } else if (this instanceof AtLandmark l) {
      return landmark.apply(l);
    } else if (this instanceof AlongCentreLine c) {
      return centreLine.apply(c);
    } else if (this instanceof StartOf s) {
      return start.apply(s);
    }
    return end.apply((EndOf) this);
  }
}
