package foilwright.hair;

import foilwright.anatomy.Zone;
import foilwright.units.Density;
import foilwright.units.Length;
import foilwright.units.Mass;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The hair of one person.
 *
 * @param density hairs per area over the whole scalp, more than 0, at most 600 per cm2. Default
 *     200: published group means are 161 (sd 50), 175 (54) and 226 (73) per cm2 (TRI/Princeton
 *     textbook, ch. 6, table 1, citing Loussouarn's survey of more than 500 persons)
 * @param zoneFactors density of a zone over {@code density}, 0 to 3; zones left out have 1. The
 *     same source finds vertex denser than occiput and occiput denser than temple but gives no
 *     factors here: they are a setting of this program
 * @param diameter of one hair, 10 to 200 um. Default 70 um: published ranges are 40-120 um
 *     (Randebrook 1964) and 15-110 um (Kaswell 1953)
 * @param nature level, fineness and porosity of the head as a whole, as far as known
 * @param zoneNatures where a zone differs from that; see {@link #natureIn}
 * @param oldLightener zones that were lightened before; a zone left out was not
 * @param lengths from scalp to tip by zone
 * @param cut the haircut, if known: it decides the lengths where it says how hair was held, and the
 *     table decides elsewhere
 */
public record HairProfile(
    Density density,
    Map<Zone, Double> zoneFactors,
    Length diameter,
    HairNature nature,
    Map<Zone, HairNature> zoneNatures,
    Map<Zone, OldLightener> oldLightener,
    Lengths lengths,
    Optional<Haircut> cut) {
  public static final Density USUAL_DENSITY = Density.ofHairsPerSquareCentimetre(200);
  public static final Density MOST_DENSITY = Density.ofHairsPerSquareCentimetre(600);

  /** Group means of density, least and most; see the record's density. */
  public static final Density LEAST_PUBLISHED_DENSITY = Density.ofHairsPerSquareCentimetre(161);

  public static final Density MOST_PUBLISHED_DENSITY = Density.ofHairsPerSquareCentimetre(226);
  public static final Length USUAL_DIAMETER = Length.ofMillimetres(0.070);
  public static final double MOST_ZONE_FACTOR = 3;

  /**
   * Mass density of hair keratin, 1.32 g/cm3 = 1.32 mg/mm3; the common textbook value (1.30-1.33),
   * quoted from memory rather than from an opened source.
   */
  public static final double KERATIN_MG_PER_MM3 = 1.32;

  public HairProfile {
    if (!(density.toHairsPerSquareCentimetre() > 0) || density.compareTo(MOST_DENSITY) > 0) {
      throw new IllegalArgumentException(
          "a density of " + density + " is outside 0 per cm2 to " + MOST_DENSITY);
    }
    zoneFactors = copy(zoneFactors);
    zoneFactors.forEach(
        (zone, factor) -> {
          if (!(factor >= 0 && factor <= MOST_ZONE_FACTOR)) {
            throw new IllegalArgumentException(
                "a density factor of "
                    + factor
                    + " in the zone "
                    + zone.words()
                    + " is outside 0 to "
                    + MOST_ZONE_FACTOR);
          }
        });
    double micrometres = diameter.toMillimetres() * 1000;
    if (!(micrometres >= 10 - 1e-9 && micrometres <= 200 + 1e-9)) {
      throw new IllegalArgumentException(
          "a hair of " + micrometres + " um across is outside 10 um to 200 um");
    }
    Objects.requireNonNull(nature);
    zoneNatures = copy(zoneNatures);
    oldLightener = copy(oldLightener);
    Objects.requireNonNull(lengths);
    Objects.requireNonNull(cut);
  }

  private static <V> Map<Zone, V> copy(Map<Zone, V> map) {
    Map<Zone, V> copy = new EnumMap<>(Zone.class);
    copy.putAll(map);
    return Collections.unmodifiableMap(copy);
  }

  /** Usual density and diameter, nothing else known, one length everywhere. */
  public static HairProfile usual(Length everywhere) {
    return new HairProfile(
        USUAL_DENSITY,
        Map.of(),
        USUAL_DIAMETER,
        HairNature.UNKNOWN,
        Map.of(),
        Map.of(),
        Lengths.same(everywhere),
        Optional.empty());
  }

  public HairProfile withDensity(Density value) {
    return new HairProfile(
        value, zoneFactors, diameter, nature, zoneNatures, oldLightener, lengths, cut);
  }

  public HairProfile withZoneFactors(Map<Zone, Double> factors) {
    return new HairProfile(
        density, factors, diameter, nature, zoneNatures, oldLightener, lengths, cut);
  }

  public HairProfile withLengths(Lengths table) {
    return new HairProfile(
        density, zoneFactors, diameter, nature, zoneNatures, oldLightener, table, cut);
  }

  public HairProfile withCut(Haircut other) {
    return new HairProfile(
        density,
        zoneFactors,
        diameter,
        nature,
        zoneNatures,
        oldLightener,
        lengths,
        Optional.of(other));
  }

  /** The texture of the hair; straight when no cut says otherwise. */
  public Texture texture() {
    return cut.map(Haircut::texture).orElse(Texture.STRAIGHT);
  }

  public HairProfile withNature(HairNature whole, Map<Zone, HairNature> byZone) {
    return new HairProfile(
        density, zoneFactors, diameter, whole, byZone, oldLightener, lengths, cut);
  }

  public HairProfile withOldLightener(Map<Zone, OldLightener> byZone) {
    return new HairProfile(
        density, zoneFactors, diameter, nature, zoneNatures, byZone, lengths, cut);
  }

  /** Nature of the hair in one zone: what is known there, else what is known of the whole head. */
  public HairNature natureIn(Zone zone) {
    return zoneNatures.getOrDefault(zone, HairNature.UNKNOWN).orElse(nature);
  }

  /** Density in one zone: the profile's density times the zone's factor. */
  public Density densityIn(Zone zone) {
    return density.times(zoneFactors.getOrDefault(zone, 1.0));
  }

  /**
   * Mass of a number of hairs of one length: hairs x length x pi d^2 / 4 x 1.32 g/cm3. One metre of
   * hair 70 um across weighs 5.08 mg.
   *
   * @param hairs how many, a whole number or not
   * @param length along each hair
   */
  public Mass massOf(double hairs, Length length) {
    double d = diameter.toMillimetres();
    double sectionMm2 = Math.PI * d * d / 4;
    return Mass.ofMilligrams(hairs * length.toMillimetres() * sectionMm2 * KERATIN_MG_PER_MM3);
  }
}
