package foilwright.pattern;

import foilwright.units.Length;

/**
 * The tape lengths of one head against which proportions are resolved.
 *
 * @param frontToBack over the top along the centre line, front hairline to nape hairline
 * @param earToEar over the apex from in front of one ear to in front of the other
 * @param around the largest way round
 */
public record HeadDimensions(Length frontToBack, Length earToEar, Length around) {
  public HeadDimensions {
    Require.positive(frontToBack, "front-to-back");
    Require.positive(earToEar, "ear-to-ear");
    Require.positive(around, "around");
  }

  public Length of(HeadMeasure measure) {
    return switch (measure) {
      case FRONT_TO_BACK -> frontToBack;
      case EAR_TO_EAR -> earToEar;
      case AROUND -> around;
    };
  }
}
