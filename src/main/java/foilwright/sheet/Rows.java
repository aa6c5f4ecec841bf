package foilwright.sheet;

import java.util.ArrayList;
import java.util.List;

/** Puts stretches into as few rows as they need, each into the first row that is free. */
final class Rows {
  private final List<Double> ends = new ArrayList<>();

  /**
   * The row, from 0, of the next stretch; starts must not fall.
   *
   * @param end where it ends, with the clear space behind it
   */
  int next(double start, double end) {
    for (int row = 0; row < ends.size(); row++) {
      if (ends.get(row) <= start) {
        ends.set(row, end);
        return row;
      }
    }
    ends.add(end);
    return ends.size() - 1;
  }

  int count() {
    return ends.size();
  }
}
