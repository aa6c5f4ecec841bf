package foilwright.look;

import foilwright.anatomy.Zone;
import foilwright.fall.Roots;
import foilwright.geometry.surface.ScalarField;
import foilwright.hair.Level;
import foilwright.pattern.MixSlot;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;

/**
 * The colours of each hair: as it grows, where old lightener is, and what its foil gives. Levels
 * that differ by zone are blended over the zones' borders and told to a tenth.
 */
final class HairShades {
  private static final int TENTHS = 10;
  private static final int DEPTHS = (Level.MOST - Level.LEAST) * TENTHS + 1;

  private final float[] palette;
  private final int[] natural;
  private final int[] old;
  private final int[] fresh;
  private final boolean[] lightens;

  private HairShades(float[] palette, int count) {
    this.palette = palette;
    natural = new int[count];
    old = new int[count];
    fresh = new int[count];
    lightens = new boolean[count];
  }

  static HairShades of(Roots roots, Dye dye, HairColours colours) {
    float[] palette = new float[3 * 3 * DEPTHS];
    Tone[] tones = {Tone.NEUTRAL, Tone.WARM, colours.tone()};
    for (int block = 0; block < tones.length; block++) {
      for (int i = 0; i < DEPTHS; i++) {
        Colour c = Colour.ofHair(Level.LEAST + i / (double) TENTHS, tones[block]);
        int at = 3 * (block * DEPTHS + i);
        palette[at] = (float) c.red();
        palette[at + 1] = (float) c.green();
        palette[at + 2] = (float) c.blue();
      }
    }
    HairShades shades = new HairShades(palette, roots.count());
    Depths grown = new Depths(roots, colours.natural());
    Depths before = new Depths(roots, colours.old());
    Map<MixSlot, Depths> after = new EnumMap<>(MixSlot.class);
    for (int h = 0; h < roots.count(); h++) {
      shades.natural[h] = at(0, grown.of(h));
      shades.old[h] = at(1, before.of(h));
      if (dye.isPicked(h)) {
        MixSlot slot = Dye.slotOf(dye.mix(h));
        shades.lightens[h] = colours.lightening().contains(slot);
        double depth =
            after.computeIfAbsent(slot, s -> new Depths(roots, colours.slots().get(s))).of(h);
        shades.fresh[h] = at(shades.lightens[h] ? 2 : 0, depth);
      }
    }
    return shades;
  }

  private static int at(int block, double depth) {
    return 3 * (block * DEPTHS + (int) Math.round((depth - Level.LEAST) * TENTHS));
  }

  /** Red, green and blue of every shade, linear, one after another. */
  float[] palette() {
    return palette;
  }

  /** Where in the palette a hair's colour as it grows begins. */
  int natural(int hair) {
    return natural[hair];
  }

  /** The same of what old lightener left. */
  int old(int hair) {
    return old[hair];
  }

  /** The same of what its foil gives; only for a picked hair. */
  int fresh(int hair) {
    return fresh[hair];
  }

  /** Whether its foil lightens it. */
  boolean lightens(int hair) {
    return lightens[hair];
  }

  /** Levels by zone, at each root. */
  private static final class Depths {
    private final Roots roots;
    private final double same;
    private final ScalarField field;

    Depths(Roots roots, Map<Zone, Level> levels) {
      this.roots = roots;
      boolean even = new HashSet<>(levels.values()).size() == 1;
      same = levels.get(Zone.CROWN).number();
      field = even ? null : roots.hair().blended(zone -> levels.get(zone).number());
    }

    double of(int hair) {
      return field == null
          ? same
          : Math.min(Level.MOST, Math.max(Level.LEAST, roots.point(hair).valueOf(field)));
    }
  }
}
