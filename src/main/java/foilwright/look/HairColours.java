package foilwright.look;

import foilwright.hair.Level;
import foilwright.pattern.MixSlot;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * Which colours the hair has and gets.
 *
 * @param natural as it grows
 * @param old hair that was lightened at an earlier visit
 * @param slots what each mix slot gives
 * @param lightening slots whose hair counts as lightened
 */
public record HairColours(
    Colour natural, Colour old, Map<MixSlot, Colour> slots, Set<MixSlot> lightening) {
  /** Levels that a lightener in foils usually lifts; common practice, no source. */
  public static final int USUAL_LIFT = 4;

  /** Levels by which a slot that does not lighten usually deepens; common practice, no source. */
  public static final int USUAL_DROP = 2;

  public HairColours {
    Objects.requireNonNull(natural);
    Objects.requireNonNull(old);
    Map<MixSlot, Colour> copy = new EnumMap<>(MixSlot.class);
    copy.putAll(slots);
    for (MixSlot slot : MixSlot.values()) {
      if (!copy.containsKey(slot)) {
        throw new IllegalArgumentException("mix slot " + slot + " has no colour");
      }
    }
    slots = Collections.unmodifiableMap(copy);
    lightening = Set.copyOf(lightening);
  }

  /**
   * The usual result from a natural level: lightened by {@value #USUAL_LIFT} levels, deepened by
   * {@value #USUAL_DROP}, and old lightener one level short of new.
   *
   * @param lightening slots that lighten
   * @param tone of the lightened hair
   */
  public static HairColours usual(Level natural, Set<MixSlot> lightening, Tone tone) {
    Level lifted = level(natural.number() + USUAL_LIFT);
    Map<MixSlot, Colour> slots = new EnumMap<>(MixSlot.class);
    int stronger = 0;
    for (MixSlot slot : MixSlot.values()) {
      if (lightening.contains(slot)) {
        // Each further lightener of one plan is there to differ from the one before.
        slots.put(slot, Colour.ofHair(level(lifted.number() + stronger), tone));
        stronger = stronger <= 0 ? 1 - stronger : -stronger;
      } else {
        slots.put(slot, Colour.ofHair(level(natural.number() - USUAL_DROP), Tone.NEUTRAL));
      }
    }
    return new HairColours(
        Colour.ofHair(natural, Tone.NEUTRAL),
        Colour.ofHair(level(natural.number() + USUAL_LIFT - 1), Tone.WARM),
        slots,
        lightening);
  }

  /** The usual result when every slot lightens. */
  public static HairColours usual(Level natural) {
    return usual(natural, EnumSet.allOf(MixSlot.class), Tone.NEUTRAL);
  }

  private static Level level(int number) {
    return new Level(Math.min(Math.max(number, Level.LEAST), Level.MOST));
  }

  Colour of(MixSlot slot) {
    return slots.get(slot);
  }
}
