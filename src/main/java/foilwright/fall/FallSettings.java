package foilwright.fall;

import foilwright.units.Length;
import java.util.Objects;

/**
 * How the fall is computed.
 *
 * @param hairs how many hairs are followed, 100 to 400000; where a head has more, each stands for
 *     several; where it has fewer, only those it has
 * @param step distance between the points of a hair, 0.25 to 10 mm
 * @param seed the same seed gives the same hair, to the bit
 * @param grown what has grown since the cut, added to every length
 * @param unevenness of roots, lengths, directions and depth: 1 as hair is, 0 without any
 */
public record FallSettings(
    int hairs, Length step, long seed, HairStyle style, Length grown, double unevenness) {
  public static final int LEAST_HAIRS = 100;
  public static final int MOST_HAIRS = 400_000;
  public static final int USUAL_HAIRS = 60_000;
  public static final FallSettings USUAL =
      new FallSettings(USUAL_HAIRS, Length.ofMillimetres(3), 1, HairStyle.NATURAL, Length.ZERO, 1);

  public FallSettings {
    if (hairs < LEAST_HAIRS || hairs > MOST_HAIRS) {
      throw new IllegalArgumentException(
          hairs + " hairs are outside " + LEAST_HAIRS + " to " + MOST_HAIRS);
    }
    double mm = step.toMillimetres();
    if (!(mm >= 0.25 && mm <= 10)) {
      throw new IllegalArgumentException("a step of " + step + " is outside 0.25 to 10 mm");
    }
    Objects.requireNonNull(style);
    if (grown.compareTo(Length.ZERO) < 0) {
      throw new IllegalArgumentException("hair does not grow by " + grown);
    }
    if (!(unevenness >= 0 && unevenness <= 2)) {
      throw new IllegalArgumentException("an unevenness of " + unevenness + " is outside 0 to 2");
    }
  }

  public FallSettings withHairs(int count) {
    return new FallSettings(count, step, seed, style, grown, unevenness);
  }

  public FallSettings withStyle(HairStyle other) {
    return new FallSettings(hairs, step, seed, other, grown, unevenness);
  }

  public FallSettings withGrown(Length length) {
    return new FallSettings(hairs, step, seed, style, length, unevenness);
  }

  public FallSettings withStep(Length length) {
    return new FallSettings(hairs, length, seed, style, grown, unevenness);
  }

  public FallSettings withSeed(long other) {
    return new FallSettings(hairs, step, other, style, grown, unevenness);
  }

  public FallSettings withUnevenness(double share) {
    return new FallSettings(hairs, step, seed, style, grown, share);
  }
}
