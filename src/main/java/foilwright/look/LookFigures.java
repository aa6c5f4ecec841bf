package foilwright.look;

import foilwright.fall.Roots;
import foilwright.fall.Strands;
import foilwright.pattern.MixSlot;
import foilwright.placement.PlacedFoil;
import foilwright.units.Area;
import foilwright.units.Length;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a look comes to in numbers.
 *
 * <p>All of it is counted on the hairs that were followed: with n hairs a share s is good to about
 * the square root of s (1 - s) / (n / 50), since neighbouring hairs lie together.
 *
 * @param picked lightened share of all hair, by count of roots
 * @param sides each side that was looked at
 * @param faceFrame the hair beside the face, seen from the front, between chin and hairline; as
 *     empty when the front was not looked at
 * @param hairSeen share of the length of all hair that some side sees, to hold a foil's against
 * @param buried share of the lightened hairs that no side sees anywhere along their colour
 * @param foils each foil, in working order
 */
public record LookFigures(
    Share picked,
    Map<LookSide, SideFigures> sides,
    SideFigures faceFrame,
    Share hairSeen,
    Share buried,
    List<FoilSeen> foils) {
  /** A step of hair counts as seen somewhere when a fifth of it is. */
  private static final int SEEN_SOMEWHERE = 51;

  public LookFigures {
    sides = Collections.unmodifiableMap(new EnumMap<>(sides));
    foils = List.copyOf(foils);
  }

  /** The figures of a look. */
  public static LookFigures of(Look look) {
    Map<LookSide, SideFigures> sides = new EnumMap<>(LookSide.class);
    look.maps().forEach((side, maps) -> sides.put(side, Reading.whole(maps)));
    Halves front = look.maps().get(LookSide.FRONT);
    return ofHairs(look, sides, front == null ? SideFigures.NONE : Reading.besideFace(front));
  }

  private static LookFigures ofHairs(
      Look look, Map<LookSide, SideFigures> sides, SideFigures face) {
    Strands strands = look.strands();
    Roots roots = strands.roots();
    Dye dye = look.dye();
    Set<MixSlot> lightening = look.settings().colours().lightening();
    byte[] seen = look.seen();
    List<PlacedFoil> foils = dye.foils();
    double[] colouredMm = new double[foils.size()];
    double[] seenMm = new double[foils.size()];
    int[] hairs = new int[foils.size()];
    int[] hidden = new int[foils.size()];
    double step = strands.stepMm();
    double all = 0;
    double allSeen = 0;
    int picked = 0;
    int light = 0;
    int lost = 0;
    for (int h = 0; h < strands.count(); h++) {
      int from = strands.start(h);
      int to = strands.start(h + 1);
      boolean taken = dye.isPicked(h);
      boolean lightens = taken && lightening.contains(Dye.slotOf(dye.mix(h)));
      picked += lightens ? 1 : 0;
      double mine = 0;
      double mineSeen = 0;
      int most = 0;
      for (int i = from + 1; i < to; i++) {
        int s = Math.max(seen[i] & 0xff, seen[i - 1] & 0xff);
        allSeen += s;
        if (taken) {
          double share = Dye.share((i - from - 0.5) * step, dye.startMm(h));
          mine += share;
          mineSeen += share * s;
          most = share > 0.5 ? Math.max(most, s) : most;
        }
      }
      all += to - from - 1;
      if (taken) {
        int f = dye.foil(h);
        light += lightens ? 1 : 0;
        lost += lightens && most < SEEN_SOMEWHERE ? 1 : 0;
        if (f < 0) {
          continue;
        }
        colouredMm[f] += mine * step;
        seenMm[f] += mineSeen / 255 * step;
        hairs[f]++;
        hidden[f] += most < SEEN_SOMEWHERE ? 1 : 0;
      }
    }
    double wide = roots.hair().hair().diameter().toMillimetres() * roots.each();
    List<FoilSeen> list = new ArrayList<>();
    for (int f = 0; f < foils.size(); f++) {
      list.add(
          new FoilSeen(
              foils.get(f),
              share(seenMm[f], colouredMm[f]),
              share(hidden[f], hairs[f]),
              Area.ofSquareMillimetres(seenMm[f] * wide),
              Length.ofMillimetres(colouredMm[f] * roots.each())));
    }
    return new LookFigures(
        share(picked, strands.count()),
        sides,
        face,
        share(allSeen / 255, all),
        share(lost, light),
        list);
  }

  static Share share(double part, double whole) {
    return whole > 0 ? Share.ofFraction(Math.min(1, part / whole)) : Share.ZERO;
  }

  /** The look as a whole from its level sides: the mean of their visible shares, evenly. */
  public Share visible() {
    return Share.ofFraction(
        sides.entrySet().stream()
            .filter(e -> e.getKey() != LookSide.TOP)
            .mapToDouble(e -> e.getValue().visible().toFraction())
            .average()
            .orElse(0));
  }
}
