package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Point;
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Puts words at moments of a time axis: each beside a line that runs down into the drawing, in as
 * few rows as keep words clear of each other and of every line.
 */
final class Callouts {
  private static final double BESIDE_MM = 0.9;
  private static final double CLEAR_MM = 1.2;
  private static final int MOST_ROWS = 12;

  /** Words for a moment at {@code x} of the sheet. */
  record Wish(String id, String text, double x) {}

  /**
   * Words in their place.
   *
   * @param row from 0 at the drawing upwards
   */
  record Placed(Wish wish, int row, double left) {
    double right() {
      return left + Typeface.shipped().width(wish.text(), TextSize.SMALL);
    }

    /** Whether the words of this one meet those of another or its line. */
    private boolean meets(Placed other) {
      boolean words =
          row == other.row && left < other.right() + CLEAR_MM && other.left < right() + CLEAR_MM;
      boolean line =
          row <= other.row
              && left - BESIDE_MM / 2 < other.wish.x
              && other.wish.x < right() + BESIDE_MM / 2;
      return words || line;
    }
  }

  private Callouts() {}

  /** Places for all wishes between two edges, by rising x. */
  static List<Placed> place(List<Wish> wishes, double leftEdge, double rightEdge) {
    List<Wish> byX = wishes.stream().sorted(Comparator.comparingDouble(Wish::x)).toList();
    for (int rows = 1; rows <= MOST_ROWS; rows++) {
      List<Placed> placed = new ArrayList<>();
      if (places(byX, rows, leftEdge, rightEdge, placed)) {
        return placed;
      }
    }
    throw new IllegalArgumentException("no room for " + byX);
  }

  /** Adds places for the wishes that have none yet; leaves none added where it cannot. */
  private static boolean places(
      List<Wish> wishes, int rows, double leftEdge, double rightEdge, List<Placed> placed) {
    if (placed.size() == wishes.size()) {
      return true;
    }
    Wish wish = wishes.get(placed.size());
    double width = Typeface.shipped().width(wish.text(), TextSize.SMALL);
    for (int row = 0; row < rows; row++) {
      for (double left : List.of(wish.x() + BESIDE_MM, wish.x() - BESIDE_MM - width)) {
        Placed offer = new Placed(wish, row, left);
        boolean inside = left >= leftEdge && left + width <= rightEdge;
        if (inside && placed.stream().noneMatch(o -> offer.meets(o) || o.meets(offer))) {
          placed.add(offer);
          if (places(wishes, rows, leftEdge, rightEdge, placed)) {
            return true;
          }
          placed.remove(placed.size() - 1);
        }
      }
    }
    return false;
  }

  static int rows(List<Placed> placed) {
    return placed.stream().mapToInt(p -> p.row() + 1).max().orElse(0);
  }

  /** The box of the words when the lowest row stands on {@code bottom}. */
  static Box box(Placed placed, double bottom) {
    double height = Typeface.shipped().capHeight(TextSize.SMALL);
    double base = bottom - 1 - placed.row() * TextFlow.LINE_MM;
    return new Box(placed.left(), base - height, placed.right() - placed.left(), height);
  }

  static Point base(Placed placed, double bottom) {
    Box box = box(placed, bottom);
    return new Point(box.x(), box.bottom());
  }
}
