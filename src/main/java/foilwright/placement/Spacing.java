package foilwright.placement;

import foilwright.pattern.Remainder;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * Where slices lie on a length: offset, slice, background, slice, … All in millimetres along the
 * guide line.
 *
 * @param slices start and end of each slice, from the start of the length
 * @param left what stays over after the last slice, negative when a demanded count does not fit
 * @param most how many slices would fit
 */
record Spacing(List<Span> slices, double left, int most) {
  private static final double ROUNDING_MM = 1e-6;

  /** A first and a last value of a width, in millimetres; between them by place in the order. */
  record Widths(double first, double last) {
    double at(int i, int count) {
      return count < 2 ? first : first + (last - first) * i / (count - 1);
    }
  }

  /** From and to, in millimetres. */
  record Span(double from, double to) {}

  static Spacing place(
      double length,
      OptionalInt count,
      double offset,
      Widths slice,
      Widths background,
      Remainder remainder) {
    int most = 0;
    while (total(most + 1, offset, slice, background) <= length + ROUNDING_MM) {
      most++;
    }
    int n = count.orElse(most);
    if (n == 0) {
      return new Spacing(List.of(), length, most);
    }
    double left = length - total(n, offset, slice, background);
    double shift = 0;
    double stretch = 0;
    if (left > 0 && remainder == Remainder.BALANCE) {
      shift = left / 2;
    } else if (left > 0 && remainder == Remainder.STRETCH && n > 1) {
      stretch = left / (n - 1);
    }
    List<Span> spans = new ArrayList<>();
    double at = offset + shift;
    for (int i = 0; i < n; i++) {
      double to = at + slice.at(i, n);
      spans.add(new Span(at, to));
      if (i + 1 < n) {
        at = to + background.at(i, n - 1) + stretch;
      }
    }
    return new Spacing(List.copyOf(spans), left < 0 ? left : length - spans.get(n - 1).to(), most);
  }

  private static double total(int n, double offset, Widths slice, Widths background) {
    double sum = offset;
    for (int i = 0; i < n; i++) {
      sum += slice.at(i, n);
      if (i + 1 < n) {
        sum += background.at(i, n - 1);
      }
    }
    return sum;
  }
}
