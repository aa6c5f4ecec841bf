package foilwright.app;

import foilwright.pattern.MixSlot;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What scale and watch said after a visit; at least one bowl weighed back or one time.
 *
 * @param mixed all that was mixed for a slot, of all its bowls; as the plan mixes where absent
 * @param left what was left of it, 0 or more and less than was mixed; a slot that was not weighed
 *     back is absent
 * @param took all placing, from the first parting to the last foil; more than 0
 * @param foils each foil of the first ones in working order by itself, without setting its section;
 *     more than 0 each, at most {@value #MOST_FOILS}; not beside {@code took}
 * @param date of the visit
 */
public record Measured(
    Map<MixSlot, Mass> mixed,
    Map<MixSlot, Mass> left,
    Optional<Minutes> took,
    List<Minutes> foils,
    Optional<LocalDate> date) {
  public static final int MOST_FOILS = 1000;

  public Measured {
    mixed = copy(mixed);
    left = copy(left);
    foils = List.copyOf(foils);
    Objects.requireNonNull(date);
    if (left.isEmpty() && mixed.isEmpty() && took.isEmpty() && foils.isEmpty()) {
      throw new IllegalArgumentException("nothing was weighed back and nothing timed");
    }
    mixed.forEach(Measured::checkMixed);
    for (MixSlot slot : mixed.keySet()) {
      if (!left.containsKey(slot)) {
        throw new IllegalArgumentException(
            "what was left of " + slot + " is not told; say 0 g when nothing was left");
      }
    }
    for (Map.Entry<MixSlot, Mass> weighed : left.entrySet()) {
      checkLeft(weighed.getKey(), weighed.getValue(), mixed.get(weighed.getKey()));
    }
    if (took.isPresent() && !foils.isEmpty()) {
      throw new IllegalArgumentException(
          "all placing and single foils cannot be timed at once; give one of the two");
    }
    if (foils.size() > MOST_FOILS) {
      throw new IllegalArgumentException(foils.size() + " foils are more than " + MOST_FOILS);
    }
    took.ifPresent(Measured::checkTime);
    foils.forEach(Measured::checkTime);
  }

  private static Map<MixSlot, Mass> copy(Map<MixSlot, Mass> weights) {
    Map<MixSlot, Mass> copy = new EnumMap<>(MixSlot.class);
    copy.putAll(weights);
    return Collections.unmodifiableMap(copy);
  }

  private static void checkMixed(MixSlot slot, Mass mixed) {
    if (mixed.compareTo(Mass.ZERO) <= 0) {
      throw new IllegalArgumentException(mixed + " mixed of " + slot + " must be more than 0 g");
    }
  }

  private static void checkLeft(MixSlot slot, Mass left, Mass mixed) {
    if (left.compareTo(Mass.ZERO) < 0) {
      throw new IllegalArgumentException(
          left
              + " left of "
              + slot
              + " cannot be less than 0 g; weigh the bowl without its weight");
    }
    if (mixed != null && left.compareTo(mixed) >= 0) {
      throw new IllegalArgumentException(tooMuchLeft(slot, left, mixed));
    }
  }

  static String tooMuchLeft(MixSlot slot, Mass left, Mass mixed) {
    return left
        + " left of "
        + slot
        + " of "
        + mixed
        + " mixed leaves nothing used; weigh what is left without the bowl";
  }

  private static void checkTime(Minutes time) {
    if (time.compareTo(Minutes.ZERO) <= 0) {
      throw new IllegalArgumentException("a time of " + time + " must be more than 0 min");
    }
  }
}
