package foilwright.look;

import foilwright.anatomy.Zone;
import foilwright.fall.Roots;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.SurfacePoint;
import foilwright.hair.OldLightener;
import foilwright.head.Head;
import foilwright.pattern.Fill;
import foilwright.pattern.MixSlot;
import foilwright.pattern.Pattern;
import foilwright.pattern.Pick;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * For each hair, which foil holds it, whether a pick takes it, and where along it colour begins.
 *
 * <p>Picks lie centred on their foil, as many as fit it best, so that the share taken of a foil is
 * that of its comb strokes whatever the foil's width. Distances along the hair are from the scalp
 * as it is now, in millimetres: what has grown since the visit has moved the colour on.
 */
public final class Dye {
  /** Over this length the colour of one hair begins; a folded foil never ends in a line. */
  private static final double SOFT_MM = 7;

  private static final double UNEVEN_MM = 3;

  /** Colour classes of a hair: as it grows, old lightener, and then the slots. */
  static final int NATURAL = 0;

  static final int OLD = 1;
  static final int FIRST_SLOT = 2;
  static final int CLASSES = FIRST_SLOT + MixSlot.values().length;

  private static final List<MixSlot> SLOTS = List.of(MixSlot.values());

  private final List<PlacedFoil> foils;
  private final int[] foil;
  private final byte[] mix;
  private final float[] start;
  private final float[] oldStart;
  private final Length grown;

  private Dye(
      List<PlacedFoil> foils,
      int[] foil,
      byte[] mix,
      float[] start,
      float[] oldStart,
      Length grown) {
    this.foils = foils;
    this.foil = foil;
    this.mix = mix;
    this.start = start;
    this.oldStart = oldStart;
    this.grown = grown;
  }

  /** The mix slot of a colour class from {@link #FIRST_SLOT} on. */
  static MixSlot slotOf(int mix) {
    return SLOTS.get(mix - FIRST_SLOT);
  }

  /** The colour class of a mix slot. */
  static int classOf(MixSlot slot) {
    return FIRST_SLOT + SLOTS.indexOf(slot);
  }

  /** Hair as the guest comes in: natural, with the old lightener that is on file. */
  public static Dye before(Roots roots, Length grown) {
    int count = roots.count();
    int[] foil = new int[count];
    Arrays.fill(foil, -1);
    return new Dye(List.of(), foil, new byte[count], new float[count], old(roots, grown), grown);
  }

  /**
   * Hair of which some is coloured from the scalp on, whatever foil would hold it.
   *
   * @param picked which hairs, by number
   */
  public static Dye where(Roots roots, IntPredicate picked, MixSlot slot) {
    Dye dye = before(roots, Length.ZERO);
    for (int i = 0; i < roots.count(); i++) {
      if (picked.test(i)) {
        dye.mix[i] = (byte) classOf(slot);
      }
    }
    return dye;
  }

  /**
   * Hair after a pattern was worked.
   *
   * @param head the one the pattern was placed on: that of the roots, or the same with another part
   * @param pattern the one that was placed
   * @param grown what has grown since
   */
  public static Dye after(
      Roots roots, Placement placement, Head head, Pattern pattern, Length grown) {
    List<PlacedFoil> foils = placement.foils();
    boolean same = roots.hair().head().mesh() == head.mesh();
    List<List<int[]>> pieces = pieces(foils, head.mesh().triangleCount());
    List<Weave> weaves = new ArrayList<>();
    for (PlacedFoil placed : foils) {
      weaves.add(new Weave(placed, pattern.sections().get(placed.sectionIndex()).fill()));
    }
    int count = roots.count();
    int[] foil = new int[count];
    byte[] mix = new byte[count];
    float[] start = new float[count];
    double grownMm = grown.toMillimetres();
    IntStream.range(0, (count + 1023) / 1024)
        .parallel()
        .forEach(
            c -> {
              for (int i = c * 1024; i < Math.min(count, (c + 1) * 1024); i++) {
                SurfacePoint own = roots.point(i);
                SurfacePoint at = same ? own : head.nearestOnScalp(own.point());
                foil[i] = -1;
                for (int[] piece : pieces.get(at.triangle())) {
                  if (foils.get(piece[0]).region().holds(piece[1], at.w1(), at.w2())) {
                    foil[i] = piece[0];
                    break;
                  }
                }
                if (foil[i] >= 0 && weaves.get(foil[i]).takes(at.point())) {
                  PlacedFoil placed = foils.get(foil[i]);
                  mix[i] = (byte) classOf(MixSlot.valueOf(placed.mix()));
                  double from = placed.startFromScalp().toMillimetres();
                  double uneven =
                      from > 0 ? Math.max(0, from + UNEVEN_MM * spread(roots.key(i))) : 0;
                  start[i] = (float) (uneven + grownMm);
                }
              }
            });
    return new Dye(foils, foil, mix, start, old(roots, grown), grown);
  }

  /** Between -1 and 1, the middle likelier. */
  private static double spread(long key) {
    return ((key & 0xffff) + (key >>> 16 & 0xffff)) / 65536.0 - 1;
  }

  private static List<List<int[]>> pieces(List<PlacedFoil> foils, int triangles) {
    List<List<int[]>> pieces = new ArrayList<>();
    for (int t = 0; t < triangles; t++) {
      pieces.add(List.of());
    }
    for (int f = 0; f < foils.size(); f++) {
      Region region = foils.get(f).region();
      for (int k = 0; k < region.fragmentCount(); k++) {
        int t = region.triangle(k);
        if (pieces.get(t).isEmpty()) {
          pieces.set(t, new ArrayList<>(2));
        }
        pieces.get(t).add(new int[] {f, k});
      }
    }
    return pieces;
  }

  private static float[] old(Roots roots, Length grown) {
    float[] start = new float[roots.count()];
    Arrays.fill(start, Float.POSITIVE_INFINITY);
    Map<Zone, OldLightener> zones = roots.hair().hair().oldLightener();
    if (zones.isEmpty()) {
      return start;
    }
    Head head = roots.hair().head();
    for (int i = 0; i < start.length; i++) {
      OldLightener old = zones.get(head.zoneAt(roots.point(i)));
      // Old foils took picks, not single hairs: neighbours go together.
      if (old != null && (roots.clump(i) >>> 11) * 0x1.0p-53 < old.share().toFraction()) {
        start[i] =
            (float)
                (old.fromScalp().toMillimetres()
                    + grown.toMillimetres()
                    + UNEVEN_MM * spread(roots.key(i)));
      }
    }
    return start;
  }

  /** The foils, in working order. */
  public List<PlacedFoil> foils() {
    return foils;
  }

  /** What has grown since the visit. */
  public Length grown() {
    return grown;
  }

  /** Place in {@link #foils} of the foil that holds a hair, or -1. */
  public int foil(int hair) {
    return foil[hair];
  }

  /** Whether a pick takes a hair. */
  public boolean isPicked(int hair) {
    return mix[hair] >= FIRST_SLOT;
  }

  /** Distance along the hair at which the colour of its foil begins; only for a picked hair. */
  public double startMm(int hair) {
    return start[hair];
  }

  /** The colour class of a picked hair. */
  int mix(int hair) {
    return mix[hair];
  }

  double oldStartMm(int hair) {
    return oldStart[hair];
  }

  /**
   * Share of a new colour at a distance along the hair: 0 before it begins, 1 where it is full. One
   * that begins at the scalp is full there.
   */
  static float share(double alongMm, double startMm) {
    if (startMm <= 0) {
      return 1;
    }
    double t = (alongMm - startMm) / SOFT_MM + 0.5;
    double h = Math.min(Math.max(t, 0), 1);
    return (float) (h * h * (3 - 2 * h));
  }

  /** The comb strokes of one foil. */
  private static final class Weave {
    private final List<Pick> picks;
    private final Polyline middle;
    private final double width;
    private final Polyline edge;
    private final double sliceStart;
    private final double sliceEnd;
    private final boolean deep;

    Weave(PlacedFoil foil, Fill fill) {
      picks = fill.picks();
      middle = foil.middle();
      width = middle.length();
      edge = foil.parting();
      sliceStart = foil.sliceAtStart().toMillimetres();
      sliceEnd = foil.sliceAtEnd().toMillimetres();
      Length slice = Length.ofMillimetres((sliceStart + sliceEnd) / 2);
      boolean whole = true;
      for (Pick pick : picks) {
        whole &= within(pick, slice) >= 1 - 1e-9;
      }
      deep = whole;
    }

    private static double within(Pick pick, Length slice) {
      return pick.pickedShare(slice).toFraction() / pick.shareAlong().toFraction();
    }

    /** Arc along the middle line; what lies beyond its ends goes straight on. */
    private double along(Vector3 p) {
      double along = middle.nearestArc(p);
      if (along <= 0) {
        return p.minus(middle.first()).dot(middle.tangentAt(0));
      }
      return along >= width ? width + p.minus(middle.last()).dot(middle.tangentAt(width)) : along;
    }

    boolean takes(Vector3 p) {
      double along = along(p);
      double length = width;
      double depth = 0;
      double slice = sliceStart + (sliceEnd - sliceStart) * along / width;
      if (!deep) {
        depth = edge.at(edge.nearestArc(p)).distance(p) / slice;
      }
      for (Pick pick : picks) {
        double share = pick.shareAlong().toFraction();
        if (share >= 1) {
          continue;
        }
        if (!deep && depth > within(pick, Length.ofMillimetres(slice))) {
          return false;
        }
        double period = 1 / pick.picksPerMillimetre();
        double fitted = length / Math.max(1, Math.round(length / period));
        double strokes = along / fitted;
        double from = strokes - Math.floor(strokes) - (1 - share) / 2;
        if (from < 0 || from >= share) {
          return false;
        }
        along = (Math.floor(strokes) * share + from) * fitted;
        length *= share;
      }
      return true;
    }
  }
}
