package foilwright.sheet;

import foilwright.drawing.Curve;
import foilwright.drawing.Ink;
import foilwright.drawing.LineWeight;
import foilwright.drawing.Part;
import foilwright.drawing.Pen;
import foilwright.drawing.Polygon;
import java.util.ArrayList;
import java.util.List;

/**
 * How the foils of one section look: a hue that people with any colour vision can tell apart (Okabe
 * and Ito 2008, without black) and a hatch that says the same in grey. No two of the first 56
 * sections share both, and no two of the first eight share the hatch.
 */
record SectionStyle(Ink hue, List<Double> hatchDegrees) {
  private static final int[] HUES = {
    0xe69f00, 0x56b4e9, 0x009e73, 0xcc79a7, 0x0072b2, 0xd55e00, 0xf0e442
  };
  private static final List<List<Double>> HATCHES =
      List.of(
          List.of(),
          List.of(45.0),
          List.of(135.0),
          List.of(90.0),
          List.of(45.0, 135.0),
          List.of(0.0),
          List.of(0.0, 90.0),
          List.of(0.0, 45.0));
  private static final double TOWARDS_PAPER = 0.62;
  private static final double TOWARDS_BLACK = 0.25;
  private static final double SPACING_MM = 1.15;
  private static final Pen EDGE = Pen.of(Ink.BLACK, LineWeight.FINE);

  SectionStyle {
    hatchDegrees = List.copyOf(hatchDegrees);
  }

  /** The style of the section at a place in the pattern, from 0. */
  static SectionStyle of(int index) {
    return new SectionStyle(
        new Ink(HUES[index % HUES.length]), HATCHES.get(index % HATCHES.size()));
  }

  /** The light ground of a foil, on which black text stands out. */
  Ink tint() {
    return hue.towards(Ink.PAPER, TOWARDS_PAPER);
  }

  Ink hatchInk() {
    return hue.towards(Ink.BLACK, TOWARDS_BLACK);
  }

  /** An area in this style, with an edge. */
  List<Part> parts(Polygon area) {
    return parts(area, LineWeight.MEDIUM);
  }

  /**
   * An area in this style, with an edge.
   *
   * @param hatching how heavy the hatch is
   */
  List<Part> parts(Polygon area, LineWeight hatching) {
    List<Part> parts = new ArrayList<>();
    Curve border = area.curve();
    parts.add(Part.Shape.filled(border, tint()));
    for (double degrees : hatchDegrees) {
      Curve lines = area.hatched(Math.toRadians(degrees), SPACING_MM);
      if (!lines.isEmpty()) {
        parts.add(Part.Shape.drawn(lines, Pen.of(hatchInk(), hatching)));
      }
    }
    parts.add(Part.Shape.drawn(border, EDGE));
    return parts;
  }

  /** The same for a foil that is seen nearly edgeways: ground and edge in its own hue. */
  List<Part> faint(Polygon area) {
    return List.of(Part.Shape.of(area.curve(), tint(), Pen.of(hatchInk(), LineWeight.FINE)));
  }
}
