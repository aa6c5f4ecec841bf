package foilwright.pattern;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.Side;
import java.util.Objects;
import java.util.function.Function;

/** Where the partings of a pivot meet. */
public sealed interface PivotPoint {
  record AtLandmark(Landmark landmark) implements PivotPoint {
    public AtLandmark {
      Objects.requireNonNull(landmark);
    }
  }

  /**
   * A surface distance along the centre line, then a surface distance to one side of it.
   *
   * @param aside nothing when the side is the middle, more than nothing otherwise
   */
  record AlongCentreLine(Extent distance, CentreStart from, Extent aside, Side side)
      implements PivotPoint {
    public AlongCentreLine {
      Require.notNegative(distance, "a distance along the centre line");
      Objects.requireNonNull(from);
      Objects.requireNonNull(side);
      if (side == Side.MIDDLE ? aside.amount() != 0 : !(aside.amount() > 0)) {
        throw new IllegalArgumentException(
            "a pivot point " + aside.text() + " aside cannot lie on side " + side.words());
      }
    }
  }

  default <R> R match(Function<AtLandmark, R> landmark, Function<AlongCentreLine, R> centreLine) {
    if (this instanceof AtLandmark l) {
      return landmark.apply(l);
    }
    return centreLine.apply((AlongCentreLine) this);
  }

  default PivotPoint mirrored() {
    return match(
        l ->
            switch (l.landmark()) {
              case EAR_LEFT -> new AtLandmark(Landmark.EAR_RIGHT);
              case EAR_RIGHT -> new AtLandmark(Landmark.EAR_LEFT);
              default -> l;
            },
        c -> new AlongCentreLine(c.distance(), c.from(), c.aside(), c.side().mirrored()));
  }
}
