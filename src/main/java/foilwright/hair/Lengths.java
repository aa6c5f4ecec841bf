package foilwright.hair;

import foilwright.anatomy.Zone;
import foilwright.units.Length;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/** Hair length from scalp to tip in every zone, as a person would type it in a table. */
public final class Lengths {
  /** Longer than any hair that is worn: 3 m. */
  public static final Length MOST = Length.ofMillimetres(3000);

  private final Map<Zone, Length> byZone;

  private Lengths(Map<Zone, Length> byZone) {
    for (Map.Entry<Zone, Length> entry : byZone.entrySet()) {
      Length length = entry.getValue();
      if (length.compareTo(Length.ZERO) < 0 || length.compareTo(MOST) > 0) {
        throw new IllegalArgumentException(
            "a hair length of "
                + length
                + " in the zone "
                + entry.getKey().words()
                + " is outside 0 mm to "
                + MOST);
      }
    }
    this.byZone = Collections.unmodifiableMap(byZone);
  }

  /** The same length everywhere. */
  public static Lengths same(Length everywhere) {
    return of(everywhere, Map.of());
  }

  /**
   * Some zones named, the others at one length.
   *
   * @throws IllegalArgumentException when a length is negative or more than {@link #MOST}
   */
  public static Lengths of(Length elsewhere, Map<Zone, Length> named) {
    Map<Zone, Length> all = new EnumMap<>(Zone.class);
    for (Zone zone : Zone.values()) {
      all.put(zone, named.getOrDefault(zone, elsewhere));
    }
    return new Lengths(all);
  }

  public Length in(Zone zone) {
    return byZone.get(zone);
  }

  /** All zones, in the order of {@link Zone}. */
  public Map<Zone, Length> byZone() {
    return byZone;
  }

  /** The table with left and right exchanged. */
  public Lengths mirrored() {
    Map<Zone, Length> turned = new EnumMap<>(Zone.class);
    byZone.forEach((zone, length) -> turned.put(zone.mirrored(), length));
    return new Lengths(turned);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Lengths that && byZone.equals(that.byZone);
  }

  @Override
  public int hashCode() {
    return byZone.hashCode();
  }

  @Override
  public String toString() {
    return byZone.toString();
  }
}
