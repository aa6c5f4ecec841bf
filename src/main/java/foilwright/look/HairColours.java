package foilwright.look;

import foilwright.anatomy.Zone;
import foilwright.hair.Level;
import foilwright.pattern.MixSlot;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * Which depths of colour the hair has and gets, zone by zone.
 *
 * @param natural as it grows
 * @param slots what each mix slot gives
 * @param lightening slots whose hair counts as lightened
 * @param tone of the lightened hair; other hair is neutral, what old lightener left is warm
 */
public record HairColours(
    Map<Zone, Level> natural,
    Map<MixSlot, Map<Zone, Level>> slots,
    Set<MixSlot> lightening,
    Tone tone) {
  /** Levels that a lightener in foils usually lifts; common practice, no source. */
  public static final int USUAL_LIFT = 4;

  /** Levels by which a slot that does not lighten usually deepens; common practice, no source. */
  public static final int USUAL_DROP = 2;

  public HairColours {
    natural = whole(natural);
    Map<MixSlot, Map<Zone, Level>> copy = new EnumMap<>(MixSlot.class);
    for (MixSlot slot : MixSlot.values()) {
      if (!slots.containsKey(slot)) {
        throw new IllegalArgumentException("mix slot " + slot + " has no levels");
      }
      copy.put(slot, whole(slots.get(slot)));
    }
    slots = Collections.unmodifiableMap(copy);
    lightening = Set.copyOf(lightening);
    Objects.requireNonNull(tone);
  }

  private static Map<Zone, Level> whole(Map<Zone, Level> levels) {
    Map<Zone, Level> copy = new EnumMap<>(Zone.class);
    copy.putAll(levels);
    for (Zone zone : Zone.values()) {
      if (!copy.containsKey(zone)) {
        throw new IllegalArgumentException("the zone " + zone.words() + " has no level");
      }
    }
    return Collections.unmodifiableMap(copy);
  }

  /**
   * Hair of which the result is known, zone by zone.
   *
   * @param natural the level that grows in a zone
   * @param after the level that a slot gives there
   */
  public static HairColours of(
      Function<Zone, Level> natural,
      BiFunction<MixSlot, Zone, Level> after,
      Set<MixSlot> lightening,
      Tone tone) {
    Map<MixSlot, Map<Zone, Level>> slots = new EnumMap<>(MixSlot.class);
    for (MixSlot slot : MixSlot.values()) {
      slots.put(slot, byZone(zone -> after.apply(slot, zone)));
    }
    return new HairColours(byZone(natural), slots, lightening, tone);
  }

  private static Map<Zone, Level> byZone(Function<Zone, Level> levels) {
    Map<Zone, Level> all = new EnumMap<>(Zone.class);
    for (Zone zone : Zone.values()) {
      all.put(zone, levels.apply(zone));
    }
    return all;
  }

  /**
   * The usual result where nothing was asked for: lightened by {@value #USUAL_LIFT} levels or
   * deepened by {@value #USUAL_DROP}.
   *
   * @param lightening slots that lighten
   */
  public static HairColours usual(Level natural, Set<MixSlot> lightening, Tone tone) {
    return of(
        zone -> natural,
        (slot, zone) -> lightening.contains(slot) ? lifted(natural, USUAL_LIFT) : deepened(natural),
        lightening,
        tone);
  }

  /** The usual result when every slot lightens. */
  public static HairColours usual(Level natural) {
    return usual(natural, EnumSet.allOf(MixSlot.class), Tone.NEUTRAL);
  }

  /** A level lifted by some, at most to {@value Level#MOST}; a lift of less than 0 is none. */
  public static Level lifted(Level natural, int levels) {
    return new Level(Math.min(natural.number() + Math.max(levels, 0), Level.MOST));
  }

  /** A level deepened as usual. */
  public static Level deepened(Level natural) {
    return new Level(Math.max(natural.number() - USUAL_DROP, Level.LEAST));
  }

  /** What old lightener left in each zone: a level short of what it usually lifts. */
  Map<Zone, Level> old() {
    return byZone(zone -> lifted(natural.get(zone), USUAL_LIFT - 1));
  }
}
