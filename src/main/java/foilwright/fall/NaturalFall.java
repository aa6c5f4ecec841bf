package foilwright.fall;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.ScalarField;
import foilwright.head.Head;
import java.util.Optional;

/**
 * The direction in which hair leaves the scalp when it is combed to fall by itself.
 *
 * <p>Gravity along the surface (1 where the scalp stands upright, 0 where it is level), and beside
 * a part a push away from it of the same strength, fading by a factor e every 40 mm (a setting of
 * this program, without a source). Without a part it is gravity alone, so that lines across it are
 * level planes.
 */
public final class NaturalFall {
  private static final double FADE_MM = 40;

  private NaturalFall() {}

  /** The field of a head with its part. */
  public static DirectionField over(Head head) {
    Optional<ScalarField> part = head.distanceFromPart();
    return DirectionField.compute(
        head.mesh(),
        t -> {
          Vector3 down = Vector3.UP.negated();
          if (part.isEmpty()) {
            return down;
          }
          ScalarField distance = part.get();
          double mean = (distance.at(t, 0) + distance.at(t, 1) + distance.at(t, 2)) / 3;
          return down.plus(
              DirectionField.gradientIn(head.mesh(), distance, t).times(Math.exp(-mean / FADE_MM)));
        });
  }
}
