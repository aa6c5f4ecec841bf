package foilwright.service;

import foilwright.hair.HairProfile;
import foilwright.placement.PlacedFoil;
import foilwright.units.Density;
import foilwright.units.Length;
import foilwright.units.Share;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * How fast one person works, on a usual day.
 *
 * @param name such as {@code stylist}
 * @param basis where the times come from, such as {@code common practice} or {@code own timing}
 * @param times one for every entry
 * @param daySpread standard deviation, over the mean, of the pace-of-the-day factor: all times of a
 *     day are longer or shorter together; 0 to 0.5, usually 0.12
 */
public record PaceProfile(
    String name, String basis, Map<PaceEntry, ThreePoint> times, Share daySpread) {
  public static final Share USUAL_DAY_SPREAD = Share.ofPercent(12);
  public static final Share MOST_DAY_SPREAD = Share.ofPercent(50);

  public PaceProfile {
    if (name.isBlank() || basis.isBlank()) {
      throw new IllegalArgumentException("a pace profile needs a name and a basis");
    }
    Map<PaceEntry, ThreePoint> copy = new EnumMap<>(PaceEntry.class);
    copy.putAll(times);
    if (copy.size() < PaceEntry.values().length) {
      throw new IllegalArgumentException(
          "the pace profile "
              + name
              + " has no time for "
              + Arrays.stream(PaceEntry.values())
                  .filter(entry -> !copy.containsKey(entry))
                  .map(PaceEntry::key)
                  .collect(Collectors.joining(", ")));
    }
    times = Collections.unmodifiableMap(copy);
    if (daySpread.toFraction() < 0 || daySpread.compareTo(MOST_DAY_SPREAD) > 0) {
      throw new IllegalArgumentException(
          "a day's spread of " + daySpread + " is outside 0 % to " + MOST_DAY_SPREAD);
    }
  }

  public ThreePoint of(PaceEntry entry) {
    return times.get(entry);
  }

  /**
   * Time to place one foil: parting, picks, foil, product and fold.
   *
   * @param width of the foil along the parting, 0 or more
   * @param picks strokes of the comb, 0 or more
   * @param hairLength mean length of the hair in it, 0 or more
   */
  public ThreePoint placing(Length width, double picks, Length hairLength) {
    return of(PaceEntry.FOIL)
        .plus(of(PaceEntry.PER_CENTIMETRE_OF_PARTING).times(width.toMillimetres() / 10))
        .plus(of(PaceEntry.PER_PICK).times(picks))
        .plus(of(PaceEntry.PER_CENTIMETRE_OF_HAIR).times(hairLength.toMillimetres() / 10));
  }

  public ThreePoint placing(PlacedFoil foil) {
    return placing(foil.width(), foil.picks(), foil.hairLength());
  }

  /** Time to dry hair of this mean length and density over the head. */
  public ThreePoint drying(Length meanLength, Density density) {
    double fullness =
        density.toHairsPerSquareCentimetre()
            / HairProfile.USUAL_DENSITY.toHairsPerSquareCentimetre();
    return of(PaceEntry.DRY)
        .plus(
            of(PaceEntry.DRY_PER_CENTIMETRE_OF_HAIR)
                .times(meanLength.toMillimetres() / 10 * fullness));
  }
}
