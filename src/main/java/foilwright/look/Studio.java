package foilwright.look;

import foilwright.fall.Body;
import foilwright.fall.Strands;
import foilwright.head.HeadForm;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * A head set up to be looked at from several sides in one scale: windows large enough for given
 * hair, and the figure without hair in each. It can be used again for every look at the same head
 * whose hair fits, by several threads.
 */
public final class Studio {
  private static final double MARGIN_MM = 9;
  private static final double LEAST_BOTTOM_MM = -250;
  private static final double LOWEST_MM = -520;
  private static final double ROUND_MM = 20;

  private final Body body;
  private final HeadForm form;
  private final Map<LookSide, Window> windows = new EnumMap<>(LookSide.class);

  /** Made when first looked at. */
  private final Map<LookSide, Bust> busts = new EnumMap<>(LookSide.class);

  private Studio(Body body, HeadForm form) {
    this.body = body;
    this.form = form;
  }

  /** Set up for hair, and for any other that reaches no farther. */
  public static Studio of(Strands strands, int heightPx) {
    return of(List.of(strands), heightPx);
  }

  /**
   * Set up for several falls of hair on one head.
   *
   * @param heightPx of the level pictures
   */
  public static Studio of(List<Strands> falls, int heightPx) {
    double[] box = box(falls.get(0));
    for (Strands strands : falls) {
      double[] other = box(strands);
      for (int c = 0; c < box.length; c++) {
        box[c] = c % 2 == 0 ? Math.min(box[c], other[c]) : Math.max(box[c], other[c]);
      }
    }
    double bottom =
        Math.max(
            LOWEST_MM, Math.min(LEAST_BOTTOM_MM, Math.floor((box[4] - 25) / ROUND_MM) * ROUND_MM));
    double top = Math.ceil(box[5] + MARGIN_MM);
    double half = Math.ceil(Math.max(-box[0], box[1]) + MARGIN_MM);
    double front = Math.ceil(Math.max(box[3], 128) + MARGIN_MM);
    double back = Math.ceil(-box[2] + MARGIN_MM);
    double scale = heightPx / (top - bottom);
    Studio studio = new Studio(falls.get(0).body(), falls.get(0).roots().hair().head().form());
    for (LookSide side : LookSide.values()) {
      studio.windows.put(
          side,
          switch (side) {
            case FRONT, BACK -> Window.of(side, -half, half, bottom, top, scale);
            case LEFT -> Window.of(side, -front, back, bottom, top, scale);
            case RIGHT -> Window.of(side, -back, front, bottom, top, scale);
            case TOP -> Window.of(side, -half, half, -back, front, scale);
          });
    }
    return studio;
  }

  /** Least and greatest x, y and z; strays beyond the last thousandth do not count. */
  private static double[] box(Strands strands) {
    double[] box = new double[6];
    int count = strands.count();
    int step = Math.max(1, count / 3000);
    IntStream.range(0, 3)
        .parallel()
        .forEach(
            c -> {
              float[] p = strands.points();
              List<Float> least = new ArrayList<>();
              List<Float> most = new ArrayList<>();
              for (int h = 0; h < count; h += step) {
                float a = Float.POSITIVE_INFINITY;
                float b = Float.NEGATIVE_INFINITY;
                for (int i = strands.start(h); i < strands.start(h + 1); i++) {
                  a = Math.min(a, p[3 * i + c]);
                  b = Math.max(b, p[3 * i + c]);
                }
                least.add(a);
                most.add(b);
              }
              least.sort(null);
              most.sort(null);
              int stray = least.size() / 1000;
              box[2 * c] = least.get(stray);
              box[2 * c + 1] = most.get(most.size() - 1 - stray);
            });
    return box;
  }

  /** Pixels of all sides together. */
  public long pixels() {
    return windows.values().stream().mapToLong(w -> (long) w.width() * w.height()).sum();
  }

  synchronized Bust bust(LookSide side) {
    Bust bust = busts.get(side);
    if (bust == null) {
      bust = Bust.of(body, form, windows.get(side));
      busts.put(side, bust);
    }
    return bust;
  }
}
