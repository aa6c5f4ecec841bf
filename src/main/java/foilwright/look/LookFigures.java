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
  private static final double ENOUGH = 0.5;
  private static final int EYE_CELLS = 1;
  private static final int ROUND_CELLS = 13;
  private static final int LINE_STEP = 2;
  private static final int CLOSE_LAG = 3;
  private static final int MOST_LAG = 80;
  private static final double LEAST_LIGHT = 0.002;

  /** A step of hair counts as seen somewhere when a fifth of it is. */
  private static final int SEEN_SOMEWHERE = 51;

  private static final double FACE_MM = 112;
  private static final double CHIN_MM = -112;
  private static final double FOREHEAD_MM = 95;

  public LookFigures {
    sides = Collections.unmodifiableMap(new EnumMap<>(sides));
    foils = List.copyOf(foils);
  }

  /** The figures of a look. */
  public static LookFigures of(Look look) {
    Map<LookSide, SideFigures> sides = new EnumMap<>(LookSide.class);
    Colours colours = new Colours(look.settings().colours());
    look.maps().forEach((side, map) -> sides.put(side, new Reading(map, colours, false).figures()));
    FigureMap front = look.maps().get(LookSide.FRONT);
    SideFigures face =
        front == null
            ? new SideFigures(
                Share.ZERO, 0, Length.ZERO, Length.ZERO, Length.ZERO, 0, Share.ZERO, Share.ZERO)
            : new Reading(front, colours, true).figures();
    return ofHairs(look, sides, face, colours);
  }

  private static LookFigures ofHairs(
      Look look, Map<LookSide, SideFigures> sides, SideFigures face, Colours colours) {
    Strands strands = look.strands();
    Roots roots = strands.roots();
    Dye dye = look.dye();
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
      boolean lightens = taken && colours.counted[dye.mix(h)];
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

  private static Share share(double part, double whole) {
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

  /** The colour of each class and whether it counts as lightened. */
  private static final class Colours {
    final Colour[] of = new Colour[Dye.CLASSES];
    final boolean[] counted = new boolean[Dye.CLASSES];

    Colours(HairColours colours) {
      of[Dye.NATURAL] = colours.natural();
      of[Dye.OLD] = colours.old();
      counted[Dye.OLD] = true;
      for (MixSlot slot : MixSlot.values()) {
        of[Dye.classOf(slot)] = colours.of(slot);
        counted[Dye.classOf(slot)] = colours.lightening().contains(slot);
      }
    }
  }

  /** Reads one map, or its part beside the face. */
  private static final class Reading {
    private final FigureMap map;
    private final Colours colours;
    private final boolean[] part;
    private final double[] share;
    private final int width;
    private final int height;

    Reading(FigureMap map, Colours colours, boolean faceOnly) {
      this.map = map;
      this.colours = colours;
      width = map.width;
      height = map.height;
      part = new boolean[width * height];
      for (int row = 0; row < height; row++) {
        for (int column = 0; column < width; column++) {
          int at = row * width + column;
          part[at] = map.cover(at) >= ENOUGH && (!faceOnly || isBesideFace(row, column));
        }
      }
      share = eyed(map.share(colours.counted));
    }

    private double acrossMm(int column) {
      return map.window.leftMm() + (column + 0.5) * Painting.FIGURE_CELL_MM;
    }

    private boolean isBesideFace(int row, int column) {
      double z = map.window.topMm() - (row + 0.5) * Painting.FIGURE_CELL_MM;
      return Math.abs(acrossMm(column)) < FACE_MM && z > CHIN_MM && z < FOREHEAD_MM;
    }

    /** Shares as an eye takes them in: over neighbours, by how much hair each cell shows. */
    private double[] eyed(double[] raw) {
      double[] out = new double[raw.length];
      for (int row = 0; row < height; row++) {
        for (int column = 0; column < width; column++) {
          double sum = 0;
          double weight = 0;
          for (int j = Math.max(0, row - EYE_CELLS);
              j <= Math.min(height - 1, row + EYE_CELLS);
              j++) {
            for (int i = Math.max(0, column - EYE_CELLS);
                i <= Math.min(width - 1, column + EYE_CELLS);
                i++) {
              sum += raw[j * width + i] * map.seen[j * width + i];
              weight += map.seen[j * width + i];
            }
          }
          out[row * width + column] = weight > 0 ? sum / weight : 0;
        }
      }
      return out;
    }

    SideFigures figures() {
      double[] raw = map.share(colours.counted);
      double light = 0;
      double all = 0;
      double[] half = new double[4];
      for (int at = 0; at < raw.length; at++) {
        if (part[at]) {
          double seen = map.seen[at];
          light += raw[at] * seen;
          all += seen;
          int side = clientsRight(acrossMm(at % width)) ? 2 : 0;
          half[side] += raw[at] * seen;
          half[side + 1] += seen;
        }
      }
      double mean = all > 0 ? light / all : 0;
      boolean whole = map.window.side() == LookSide.LEFT || map.window.side() == LookSide.RIGHT;
      Share visible = LookFigures.share(light, all);
      Share left = whole ? visible : LookFigures.share(half[0], half[1]);
      Share right = whole ? visible : LookFigures.share(half[2], half[3]);
      if (mean < LEAST_LIGHT) {
        return new SideFigures(
            visible, 0, Length.ZERO, Length.ZERO, Length.ZERO, contrast(), left, right);
      }
      double[] off = offSurroundings();
      return new SideFigures(
          visible,
          ribbons(mean),
          Length.ofMillimetres(extent(off, true)),
          Length.ofMillimetres(extent(off, false)),
          Length.ofMillimetres(shelf(mean / 2)),
          contrast(),
          left,
          right);
    }

    private boolean clientsRight(double acrossMm) {
      return map.window.side() == LookSide.FRONT ? acrossMm < 0 : acrossMm > 0;
    }

    /** Mean number of runs above a share, each at least two cells wide, in a level line. */
    private double ribbons(double above) {
      int count = 0;
      int used = 0;
      for (int row = 0; row < height; row += LINE_STEP) {
        int run = 0;
        boolean any = false;
        for (int column = 0; column <= width; column++) {
          int at = row * width + column;
          boolean in = column < width && part[at];
          any |= in;
          boolean bright = in && share[at] > above;
          count += !bright && run > 1 ? 1 : 0;
          run = bright ? run + 1 : 0;
        }
        used += any ? 1 : 0;
      }
      return used > 0 ? count / (double) used : 0;
    }

    /**
     * How far light goes on across or down, millimetres: twice the distance at which places agree
     * half as well as close ones do (autocovariance of what they differ by from their surroundings,
     * that at 4.5 mm being the measure, so that the grain of single hairs does not count).
     */
    private double extent(double[] off, boolean across) {
      int length = Math.min(MOST_LAG, (across ? width : height) / 2);
      double close = covariance(off, CLOSE_LAG, across);
      if (!(close > 0)) {
        return 0;
      }
      double before = 1;
      for (int lag = CLOSE_LAG + 1; lag < length; lag++) {
        double now = covariance(off, lag, across) / close;
        if (now < 0.5) {
          double at = lag - 1 + (before - 0.5) / (before - now);
          return 2 * at * Painting.FIGURE_CELL_MM;
        }
        before = now;
      }
      return 2 * length * Painting.FIGURE_CELL_MM;
    }

    /** Each place's share less that of its surroundings of 40 mm. */
    private double[] offSurroundings() {
      double[][] sums = new double[2][(width + 1) * (height + 1)];
      for (int row = 0; row < height; row++) {
        for (int column = 0; column < width; column++) {
          int at = row * width + column;
          int s = (row + 1) * (width + 1) + column + 1;
          double[] here = {part[at] ? share[at] : 0, part[at] ? 1 : 0};
          for (int c = 0; c < 2; c++) {
            sums[c][s] = here[c] + sums[c][s - 1] + sums[c][s - width - 1] - sums[c][s - width - 2];
          }
        }
      }
      double[] off = new double[share.length];
      for (int row = 0; row < height; row++) {
        for (int column = 0; column < width; column++) {
          int at = row * width + column;
          double count = box(sums[1], row, column, ROUND_CELLS);
          off[at] = count > 0 ? share[at] - box(sums[0], row, column, ROUND_CELLS) / count : 0;
        }
      }
      return off;
    }

    /** Sum over a box about a cell, from sums over all before it. */
    private double box(double[] sums, int row, int column, int reach) {
      int top = Math.max(0, row - reach);
      int bottom = Math.min(height, row + reach + 1);
      int left = Math.max(0, column - reach);
      int right = Math.min(width, column + reach + 1);
      return sums[bottom * (width + 1) + right]
          - sums[top * (width + 1) + right]
          - sums[bottom * (width + 1) + left]
          + sums[top * (width + 1) + left];
    }

    private double covariance(double[] off, int lag, boolean across) {
      double sum = 0;
      long pairs = 0;
      int step = across ? lag : lag * width;
      int rows = across ? height : height - lag;
      int columns = across ? width - lag : width;
      for (int row = 0; row < rows; row++) {
        for (int column = 0; column < columns; column++) {
          int at = row * width + column;
          if (part[at] && part[at + step]) {
            sum += off[at] * off[at + step];
            pairs++;
          }
        }
      }
      return pairs > 0 ? sum / pairs : 0;
    }

    private double shelf(double enough) {
      double cells = 0;
      int lines = 0;
      for (int column = 0; column < width; column += LINE_STEP) {
        int dark = 0;
        boolean found = false;
        for (int row = 0; row < height && !found; row++) {
          int at = row * width + column;
          if (part[at]) {
            found = share[at] >= enough;
            dark += found ? 0 : 1;
          }
        }
        if (found) {
          cells += dark;
          lines++;
        }
      }
      return lines > 0 ? cells / lines * Painting.FIGURE_CELL_MM : 0;
    }

    private double contrast() {
      double[][] sums = new double[4][(width + 1) * (height + 1)];
      for (int row = 0; row < height; row++) {
        for (int column = 0; column < width; column++) {
          int at = row * width + column;
          double[] rgb = new double[4];
          if (map.seen[at] > 0) {
            double rest = map.seen[at];
            for (int c = 1; c < Dye.CLASSES; c++) {
              double share = map.classes[c][at];
              rest -= share;
              mix(rgb, colours.of[c], share);
            }
            mix(rgb, colours.of[Dye.NATURAL], Math.max(0, rest));
            rgb[3] = map.seen[at];
          }
          for (int c = 0; c < 4; c++) {
            int s = (row + 1) * (width + 1) + column + 1;
            sums[c][s] = rgb[c] + sums[c][s - 1] + sums[c][s - width - 1] - sums[c][s - width - 2];
          }
        }
      }
      double squares = 0;
      double weight = 0;
      for (int row = 0; row < height; row += 2) {
        for (int column = 0; column < width; column += 2) {
          if (part[row * width + column]) {
            Colour here = mean(sums, row, column, EYE_CELLS);
            Colour round = mean(sums, row, column, ROUND_CELLS);
            double d = here.toLab().difference(round.toLab());
            squares += d * d;
            weight++;
          }
        }
      }
      return weight > 0 ? Math.sqrt(squares / weight) : 0;
    }

    private static void mix(double[] rgb, Colour colour, double weight) {
      rgb[0] += colour.red() * weight;
      rgb[1] += colour.green() * weight;
      rgb[2] += colour.blue() * weight;
    }

    private Colour mean(double[][] sums, int row, int column, int reach) {
      double[] box = new double[4];
      for (int c = 0; c < 4; c++) {
        box[c] = box(sums[c], row, column, reach);
      }
      double w = Math.max(box[3], 1);
      return new Colour(Math.max(0, box[0] / w), Math.max(0, box[1] / w), Math.max(0, box[2] / w));
    }
  }
}
