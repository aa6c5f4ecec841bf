package foilwright.app;

import foilwright.fall.FallSettings;
import foilwright.fall.HairStyle;
import foilwright.look.LookSettings;
import foilwright.look.Tone;
import java.util.Objects;

/**
 * What to look at.
 *
 * @param plan the pattern, guest and house
 * @param style how the hair is worn
 * @param months after the visit for the later pictures, 0 to 12; 0 leaves them out
 * @param hairs how many hairs are followed at most
 * @param heightPx of the level pictures
 * @param tone of the lightened hair
 */
public record LookRequest(
    PlanRequest plan, HairStyle style, double months, int hairs, int heightPx, Tone tone) {
  public static final double USUAL_MONTHS = 3;
  public static final double MOST_MONTHS = 12;

  public LookRequest {
    Objects.requireNonNull(plan);
    Objects.requireNonNull(style);
    Objects.requireNonNull(tone);
    if (!(months >= 0 && months <= MOST_MONTHS)) {
      throw new IllegalArgumentException(months + " months are outside 0 to " + MOST_MONTHS);
    }
  }

  /** A plan as it is usually looked at. */
  public static LookRequest of(PlanRequest plan) {
    return new LookRequest(
        plan,
        HairStyle.NATURAL,
        USUAL_MONTHS,
        FallSettings.USUAL_HAIRS,
        LookSettings.USUAL_HEIGHT,
        Tone.NEUTRAL);
  }

  public LookRequest withStyle(HairStyle other) {
    return new LookRequest(plan, other, months, hairs, heightPx, tone);
  }

  public LookRequest withMonths(double later) {
    return new LookRequest(plan, style, later, hairs, heightPx, tone);
  }

  public LookRequest withHairs(int count) {
    return new LookRequest(plan, style, months, count, heightPx, tone);
  }

  public LookRequest withHeight(int pixels) {
    return new LookRequest(plan, style, months, hairs, pixels, tone);
  }

  public LookRequest withTone(Tone other) {
    return new LookRequest(plan, style, months, hairs, heightPx, other);
  }
}
