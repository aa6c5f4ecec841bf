package foilwright.drawing;

import java.util.List;

/**
 * How a line is drawn; joins are round, ends are cut square at the end point.
 *
 * @param dash lengths of dash and gap in turn, millimetres; empty for a whole line
 */
public record Pen(Ink ink, LineWeight weight, List<Double> dash) {
  public Pen {
    dash = List.copyOf(dash);
    if (dash.stream().anyMatch(d -> !(d > 0))) {
      throw new IllegalArgumentException("a dash must be longer than 0 mm");
    }
  }

  public static Pen of(Ink ink, LineWeight weight) {
    return new Pen(ink, weight, List.of());
  }

  public Pen dashed(double dash, double gap) {
    return new Pen(ink, weight, List.of(dash, gap));
  }
}
