package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Curve;
import foilwright.drawing.Ink;
import foilwright.drawing.LabelPlacer;
import foilwright.drawing.Layer;
import foilwright.drawing.LineWeight;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Pen;
import foilwright.drawing.Point;
import foilwright.drawing.Polygon;
import foilwright.drawing.Role;
import foilwright.drawing.SurfaceLoops;
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import foilwright.placement.PlacedFoil;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A foil prepared for drawing.
 *
 * @param middle the line half way through its slice
 * @param spots places for its number along it, best first
 * @param label its number, with the letter of its mix where the plan has several
 * @param slot place of its mix among those of the plan, from 0
 */
record DrawnFoil(
    PlacedFoil foil,
    SurfaceLoops border,
    List<SurfaceLoops.At> middle,
    List<SurfaceLoops.At> spots,
    SectionStyle style,
    String label,
    int slot) {
  /** Shares of the length at which a number may stand, nearest to the middle first. */
  private static final List<Double> SHARES =
      List.of(
          0.5, 0.44, 0.56, 0.38, 0.62, 0.32, 0.68, 0.26, 0.74, 0.2, 0.8, 0.14, 0.86, 0.08, 0.92);

  private static final double LEAST_FACING_AT_HOME = 0.12;
  private static final double LEAST_FACING = 0.4;
  private static final double PADDING_MM = 0.28;

  /**
   * Seen more edgeways than this, a foil is drawn without hatch and black edge: both would clot.
   */
  private static final double LEAST_SEEN = 0.4;

  /** A foil drawn thinner than this has fine lines inside, so that its colour still shows. */
  private static final double NARROW_MM = 1.2;

  /** In one thinner than this a line would hide the colour: the letter alone tells its mix. */
  private static final double LEAST_FOR_CORE_MM = 0.85;

  private static final double CORNER_MM = 0.7;
  private static final double DOT_MM = 0.35;

  /** Length of a soft end on the sheet. */
  private static final double SOFT_MM = 2.2;

  DrawnFoil {
    middle = List.copyOf(middle);
    spots = List.copyOf(spots);
  }

  static DrawnFoil of(PlacedFoil foil, DrawnHead head, String label, int slot) {
    DrawnHead.Strip strip = head.strip(foil, SHARES);
    return new DrawnFoil(
        foil,
        strip.border(),
        strip.middle(),
        strip.spots(),
        SectionStyle.of(foil.sectionIndex()),
        label,
        slot);
  }

  int number() {
    return foil.number();
  }

  private Map<String, String> data() {
    Map<String, String> data = new LinkedHashMap<>();
    data.put("number", Integer.toString(foil.number()));
    data.put("section", foil.section());
    data.put("mix", foil.mix());
    return data;
  }

  /** The strip itself. */
  Mark mark(Frame frame, Polygon area) {
    String title =
        "Foil "
            + foil.number()
            + ", "
            + foil.section()
            + ", mix "
            + foil.mix()
            + ": centre "
            + foil.centreFind().words();
    if (isEdgeways(frame, area)) {
      return new Mark(
          frame.id("foil-" + number()), Role.FOIL, Layer.FOILS, title, data(), style.faint(area));
    }
    List<Part> parts = new ArrayList<>(style.parts(area, inside(frame, area)));
    parts.addAll(softEnds(frame, area));
    core(frame, area).ifPresent(parts::add);
    return new Mark(frame.id("foil-" + number()), Role.FOIL, Layer.FOILS, title, data(), parts);
  }

  private boolean isEdgeways(Frame frame, Polygon area) {
    double whole = foil.area().toSquareMillimetres() * frame.scale() * frame.scale();
    return area.area() < LEAST_SEEN * whole;
  }

  private double thicknessMm(Frame frame, Polygon area) {
    return area.area() / (foil.width().toMillimetres() * frame.scale());
  }

  private LineWeight inside(Frame frame, Polygon area) {
    return thicknessMm(frame, area) < NARROW_MM ? LineWeight.FINE : LineWeight.MEDIUM;
  }

  /** The line that tells the mix, where this foil has room for it and its mix has one. */
  Optional<Part> core(Frame frame, Polygon area) {
    if (isEdgeways(frame, area) || thicknessMm(frame, area) < LEAST_FOR_CORE_MM) {
      return Optional.empty();
    }
    Curve along = frame.line(middle);
    return core(slot, inside(frame, area))
        .filter(pen -> !along.isEmpty())
        .map(pen -> Part.Shape.drawn(along, pen));
  }

  /** The strip of a step that lies behind: grey, without number. */
  Mark past(Frame frame, Polygon area) {
    return Mark.plain(
        frame.id("foil-" + number()),
        Role.FOIL,
        Layer.FOILS,
        Part.Shape.of(area.curve(), SheetInk.DONE, Pen.of(SheetInk.QUIET, LineWeight.FINE)));
  }

  /**
   * Paler ends of a foil whose product starts off the scalp, on what shows of them; nothing where
   * the strip is too small to show it.
   */
  private List<Part> softEnds(Frame frame, Polygon area) {
    double length = foil.width().toMillimetres() * frame.scale();
    if (foil.startFromScalp().toMillimetres() <= 0 || length < 4 * SOFT_MM) {
      return List.of();
    }
    List<Part> parts = new ArrayList<>();
    for (boolean atStart : new boolean[] {true, false}) {
      SurfaceLoops.At end = middle.get(atStart ? 0 : middle.size() - 1);
      SurfaceLoops.At next =
          middle.get(atStart ? Math.min(1, middle.size() - 1) : Math.max(0, middle.size() - 2));
      Point tip = frame.at(end);
      Point inward = frame.at(next);
      double run = tip.distance(inward);
      if (frame.picture().facing(end) <= 0 || run == 0) {
        continue;
      }
      for (double share : new double[] {1, 0.5}) {
        Point cut = tip.lerp(inward, share * SOFT_MM / run);
        Polygon pale = area.half(cut, new Point(tip.x() - inward.x(), tip.y() - inward.y()));
        if (!pale.isEmpty()) {
          Ink ink = style.tint().towards(Ink.PAPER, share == 1 ? 0.45 : 0.8);
          parts.add(Part.Shape.filled(pale.curve(), ink));
        }
      }
    }
    return parts;
  }

  /** A sample of a soft end. */
  static List<Part> softSample(Box box) {
    Ink tint = SectionStyle.of(0).tint();
    double step = box.width() / 6;
    List<Part> parts = new ArrayList<>();
    parts.add(Part.Shape.of(Curve.rectangle(box), tint, Pen.of(Ink.BLACK, LineWeight.FINE)));
    for (double x : new double[] {box.x(), box.right() - 2 * step}) {
      Box end = new Box(x, box.y(), 2 * step, box.height());
      parts.add(Part.Shape.filled(Curve.rectangle(end), tint.towards(Ink.PAPER, 0.45)));
    }
    for (double x : new double[] {box.x(), box.right() - step}) {
      Box end = new Box(x, box.y(), step, box.height());
      parts.add(Part.Shape.filled(Curve.rectangle(end), tint.towards(Ink.PAPER, 0.8)));
    }
    return parts;
  }

  /** The line along the foil that tells the mix: none, whole, dashed, dotted. */
  static Optional<Pen> core(int slot, LineWeight weight) {
    Pen whole = Pen.of(Ink.BLACK, weight);
    return switch (slot) {
      case 0 -> Optional.empty();
      case 1 -> Optional.of(whole);
      case 2 -> Optional.of(whole.dashed(1.6, 0.8));
      default -> Optional.of(whole.dashed(0.4, 0.5));
    };
  }

  /**
   * The wish for a place for the number.
   *
   * @param scalp what is seen of the scalp: places where the number stays on it come first
   * @param home whether this is the picture that shows the foil best: only there may a number stand
   *     where the foil is much foreshortened, or beside the picture
   */
  LabelPlacer.Wish wish(Frame frame, Polygon area, Polygon scalp, boolean home) {
    Typeface face = Typeface.shipped();
    double width = face.width(label, TextSize.SMALL) + 2 * PADDING_MM;
    double height = face.capHeight(TextSize.SMALL) + 2 * PADDING_MM;
    double least = home ? LEAST_FACING_AT_HOME : LEAST_FACING;
    List<Point> within = new ArrayList<>();
    List<Point> across = new ArrayList<>();
    for (SurfaceLoops.At spot : spots) {
      Point at = frame.at(spot);
      if (frame.picture().facing(spot) >= least && area.contains(at)) {
        (liesWithin(scalp, Box.centredOn(at, width, height)) ? within : across).add(at);
      }
    }
    List<Point> free = new ArrayList<>(within);
    free.addAll(across);
    return new LabelPlacer.Wish(label, width, height, free, home);
  }

  private static boolean liesWithin(Polygon area, Box box) {
    return Stream.of(
            new Point(box.x(), box.y()),
            new Point(box.right(), box.y()),
            new Point(box.x(), box.bottom()),
            new Point(box.right(), box.bottom()))
        .allMatch(area::contains);
  }

  /** The number in its place. */
  Mark number(Frame frame, LabelPlacer.Placed place) {
    return number(frame, place, style.tint());
  }

  /** The number in its place, on white. */
  Mark plainNumber(Frame frame, LabelPlacer.Placed place) {
    return number(frame, place, Ink.PAPER);
  }

  private Mark number(Frame frame, LabelPlacer.Placed place, Ink plate) {
    List<Part> parts = new ArrayList<>();
    Box box = place.box();
    if (!place.leader().isEmpty()) {
      Point from = place.leader().get(0);
      parts.add(
          Part.Shape.drawn(
              Curve.line(from, place.leader().get(1)), Pen.of(Ink.BLACK, LineWeight.FINE)));
      parts.add(Part.Shape.filled(Curve.circle(from, DOT_MM), Ink.BLACK));
    }
    parts.add(Part.Shape.filled(Curve.roundedRectangle(box, CORNER_MM), plate));
    parts.add(Part.Lettering.centred(label, box.centre(), TextSize.SMALL, Ink.BLACK));
    return new Mark(frame.id("number-" + number()), Role.NUMBER, Layer.NUMBERS, "", data(), parts);
  }
}
