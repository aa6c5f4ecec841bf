package foilwright.head;

import foilwright.units.Length;
import java.util.Objects;

/**
 * How this person's hairline differs from the usual one.
 *
 * @param recessionDepth how far the hairline between front corner and temple lies behind a line
 *     that runs straight from one to the other, measured along the scalp; 0 to 60 mm
 * @param nape how low the hair grows at the nape; a nape depth measured by tape takes precedence at
 *     the centre
 */
public record HairlineSettings(Length recessionDepth, NapeHeight nape) {
  public static final Length MOST_RECESSION = Length.ofMillimetres(60);
  public static final HairlineSettings USUAL =
      new HairlineSettings(Length.ofMillimetres(10), NapeHeight.MIDDLE);

  public HairlineSettings {
    Objects.requireNonNull(nape);
    if (recessionDepth.compareTo(Length.ZERO) < 0 || recessionDepth.compareTo(MOST_RECESSION) > 0) {
      throw new IllegalArgumentException(
          "a recession of " + recessionDepth + " is outside 0 mm to " + MOST_RECESSION);
    }
  }
}
