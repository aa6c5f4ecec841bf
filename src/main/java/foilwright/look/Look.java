package foilwright.look;

import foilwright.fall.Strands;
import foilwright.fall.Watch;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Hair seen from several sides: a picture of each, and what the figures are taken from. */
public final class Look {
  private final Strands strands;
  private final Dye dye;
  private final LookSettings settings;
  private final Map<LookSide, LookPicture> pictures;
  private final Map<LookSide, Halves> maps;
  private final byte[] seen;

  private Look(
      Strands strands,
      Dye dye,
      LookSettings settings,
      Map<LookSide, LookPicture> pictures,
      Map<LookSide, Halves> maps,
      byte[] seen) {
    this.strands = strands;
    this.dye = dye;
    this.settings = settings;
    this.pictures = pictures;
    this.maps = maps;
    this.seen = seen;
  }

  /**
   * Looks at hair.
   *
   * @param studio set up for this head
   * @param watch is told how much is done and may stop it
   * @throws java.util.concurrent.CancellationException when the watcher stops it
   */
  public static Look at(
      Strands strands, Dye dye, Studio studio, LookSettings settings, Watch watch) {
    Painting.Hairs hairs = hairs(strands, dye, settings.colours());
    Coat.Sample sample = new Coat.Sample(strands);
    byte[] seen = new byte[strands.pointCount()];
    Map<LookSide, LookPicture> pictures = new EnumMap<>(LookSide.class);
    Map<LookSide, Halves> maps = new EnumMap<>(LookSide.class);
    int sides = settings.sides().size();
    for (LookSide side : settings.sides()) {
      Bust bust = studio.bust(side);
      int done = pictures.size();
      Painting.Result result =
          Painting.of(
              strands, sample, hairs, bust, seen, share -> watch.goOn((done + share) / sides));
      pictures.put(side, result.picture());
      maps.put(side, result.maps());
      watch.told(pictures.size() / (double) sides);
    }
    return new Look(strands, dye, settings, pictures, maps, seen);
  }

  private static Painting.Hairs hairs(Strands strands, Dye dye, HairColours colours) {
    float[] bright = new float[strands.count()];
    for (int i = 0; i < bright.length; i++) {
      bright[i] =
          (float)
              Math.max(
                  0.35,
                  1
                      + 0.15 * uneven(strands.roots().key(i))
                      + 0.11 * uneven(strands.roots().clump(i))
                      + 0.07 * uneven(strands.roots().lock(i)));
    }
    return new Painting.Hairs(dye, HairShades.of(strands.roots(), dye, colours), bright);
  }

  /** About normal with mean 0 and standard deviation 1. */
  private static double uneven(long key) {
    long w = key * 0x9e3779b97f4a7c15L;
    double sum = (w & 0xffff) + (w >>> 16 & 0xffff) + (w >>> 32 & 0xffff) + (w >>> 48);
    return (sum / 65536 - 2) * 1.7320508;
  }

  public Strands strands() {
    return strands;
  }

  public Dye dye() {
    return dye;
  }

  public LookSettings settings() {
    return settings;
  }

  /** The picture from one of the sides that were asked for. */
  public LookPicture picture(LookSide side) {
    return pictures.get(side);
  }

  /** The pictures in the order asked for. */
  public List<LookPicture> pictures() {
    List<LookPicture> list = new ArrayList<>();
    settings.sides().forEach(side -> list.add(pictures.get(side)));
    return list;
  }

  Map<LookSide, Halves> maps() {
    return maps;
  }

  /** For each point of each hair, the most of it that any side sees, 0 to 255. */
  byte[] seen() {
    return seen;
  }
}
