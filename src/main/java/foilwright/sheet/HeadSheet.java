package foilwright.sheet;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.Zone;
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
import foilwright.drawing.Scene;
import foilwright.drawing.SurfaceLoops;
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import foilwright.head.Head;
import foilwright.head.Tape;
import foilwright.units.Area;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A measured head from five sides and unrolled: hairline, zones with their areas, landmarks, and
 * where the tape lies for each measurement with its millimetres, given or assumed. Paper across.
 */
public final class HeadSheet {
  private static final List<Tape> TAPES = List.of(Tape.values());
  private static final List<Landmark> LANDMARKS = List.of(Landmark.values());
  private static final List<Zone> ZONES = List.of(Zone.values());
  private static final Pen TAPE = Pen.of(SheetInk.ACCENT, LineWeight.STRONG);
  private static final double PADDING_MM = 0.35;
  private static final double GAP_MM = 0.2;
  private static final double CORNER_MM = 0.7;
  private static final double CROSS_MM = 1.1;
  private static final double LEAST_FACING = 0.2;
  private static final double LINE_STEP_MM = 1;
  private static final int SPOTS = 24;

  private final Head head;
  private final SheetLayout layout;
  private final DrawnHead drawn;
  private final Map<Tape, List<SurfaceLoops.At>> tapes = new EnumMap<>(Tape.class);
  private final Map<Zone, SurfaceLoops> zones = new EnumMap<>(Zone.class);

  private HeadSheet(Head head, Paper paper) {
    this.head = head;
    this.layout = new SheetLayout(paper);
    this.drawn = DrawnHead.of(head);
    for (Tape tape : TAPES) {
      tapes.put(tape, drawn.line(TapeLines.of(head, tape)));
    }
    for (Zone zone : ZONES) {
      zones.put(zone, drawn.loops(head.zone(zone)));
    }
  }

  /**
   * The sheet of a head.
   *
   * @param subtitle for whom, in one line; may be empty
   */
  public static Scene build(Head head, String title, String subtitle, Paper paper) {
    return new HeadSheet(head, paper).scene(title, subtitle);
  }

  private Scene scene(String title, String subtitle) {
    List<Mark> marks = new ArrayList<>(layout.titles(title, subtitle));
    Set<Zone> unnamed = EnumSet.allOf(Zone.class);
    for (Frame frame : layout.frames(drawn)) {
      marks.addAll(frame.ground(drawn));
      addLines(frame, marks);
      addLabels(frame, marks, unnamed);
    }
    marks.add(layout.scaleBox());
    List<SheetLayout.Sign> signs = new ArrayList<>();
    signs.add(SheetLayout.Sign.line(TAPE, "tape"));
    signs.add(SheetLayout.Sign.line(SheetInk.HAIRLINE, "hairline"));
    signs.add(SheetLayout.Sign.line(SheetInk.ZONE_BORDER, "zone border"));
    if (drawn.partLine().isPresent()) {
      signs.add(SheetLayout.Sign.line(SheetInk.PART_LINE, "part line"));
    }
    marks.addAll(layout.signs(signs, SheetLayout.unrolledNote(drawn)));
    TextFlow flow = words();
    flow.placed().forEach(p -> marks.add(p.mark()));
    String description =
        "A head from the front, back, left, right and top and its unrolled scalp, with "
            + TAPES.size()
            + " tape lines, "
            + LANDMARKS.size()
            + " landmarks and "
            + ZONES.size()
            + " zones.";
    return layout.scene("head", "Head: " + title, description, marks);
  }

  private void addLines(Frame frame, List<Mark> marks) {
    tapes.forEach(
        (tape, line) -> {
          Curve seen = frame.line(line);
          if (isShown(frame, tape) && !seen.isEmpty()) {
            marks.add(
                new Mark(
                    frame.id("tape-" + number(tape)),
                    Role.TAPE_LINE,
                    Layer.LINES,
                    number(tape) + ", " + tape.words() + ", " + millimetres(tape),
                    Map.of("tape", tape.key()),
                    List.of(Part.Shape.drawn(seen, TAPE))));
          }
        });
  }

  /** The unrolled scalp shows only what lies on it from end to end. */
  private static boolean isShown(Frame frame, Tape tape) {
    return frame.picture() instanceof SideView
        || tape == Tape.FRONT_TO_BACK
        || tape == Tape.NAPE_DEPTH;
  }

  private void addLabels(Frame frame, List<Mark> marks, Set<Zone> unnamed) {
    List<LabelPlacer.Wish> wishes = new ArrayList<>();
    Map<String, Label> labels = new HashMap<>();
    List<Box> crosses = new ArrayList<>();
    for (Landmark landmark : LANDMARKS) {
      SurfaceLoops.At at = drawn.at(head.landmark(landmark));
      boolean onScalp = isOnScalp(landmark);
      boolean shown = frame.picture() instanceof FlatMap ? onScalp : facing(frame, at) >= -0.02;
      if (shown) {
        Point p = frame.at(at);
        crosses.add(Box.centredOn(p, CROSS_MM, CROSS_MM));
        marks.add(cross(frame, landmark, p));
        add(wishes, labels, landmarkLabel(landmark), around(p));
      }
    }
    for (Tape tape : TAPES) {
      if (isShown(frame, tape)) {
        add(wishes, labels, tapeLabel(tape), alongLine(frame, tapes.get(tape)));
      }
    }
    List<Box> labelled = new ArrayList<>(crosses);
    place(frame, wishes, labels, crosses, marks).forEach(p -> labelled.add(p.box()));
    List<Box> taken = new ArrayList<>(labelled);
    tapes.keySet().stream()
        .filter(tape -> isShown(frame, tape))
        .forEach(tape -> taken.addAll(alongBoxes(frame, tapes.get(tape))));
    drawn.partLine().ifPresent(line -> taken.addAll(alongBoxes(frame, line)));
    labelled.addAll(nameZones(frame, List.of(Zone.values()), taken, false, unnamed, marks));
    if (frame.picture() instanceof FlatMap) {
      // The last picture, on which all of the scalp lies: what no picture names is named over a
      // line.
      nameZones(frame, List.copyOf(unnamed), labelled, true, unnamed, marks);
    }
  }

  private List<Box> nameZones(
      Frame frame,
      List<Zone> zonesToName,
      List<Box> obstacles,
      boolean plate,
      Set<Zone> unnamed,
      List<Mark> marks) {
    List<LabelPlacer.Wish> wishes = new ArrayList<>();
    Map<String, Label> labels = new HashMap<>();
    for (Zone zone : zonesToName) {
      addZone(frame, zone, plate, wishes, labels);
    }
    List<LabelPlacer.Placed> placed = place(frame, wishes, labels, obstacles, marks);
    unnamed.removeIf(zone -> placed.stream().anyMatch(p -> p.name().equals(zoneName(zone))));
    return placed.stream().map(LabelPlacer.Placed::box).toList();
  }

  private static List<LabelPlacer.Placed> place(
      Frame frame,
      List<LabelPlacer.Wish> wishes,
      Map<String, Label> labels,
      List<Box> obstacles,
      List<Mark> marks) {
    List<LabelPlacer.Placed> placed =
        LabelPlacer.place(wishes, List.of(), obstacles, GAP_MM).placed();
    placed.forEach(label -> marks.add(labels.get(label.name()).mark(frame, label.box())));
    return placed;
  }

  /** Small boxes along what can be seen of a line, so that no name lies on it. */
  private static List<Box> alongBoxes(Frame frame, List<SurfaceLoops.At> line) {
    List<Box> boxes = new ArrayList<>();
    for (List<Point> chain : frame.picture().chains(line)) {
      for (int i = 1; i < chain.size(); i++) {
        Point from = frame.at(chain.get(i - 1));
        Point to = frame.at(chain.get(i));
        int steps = Math.max(1, (int) Math.ceil(from.distance(to) / LINE_STEP_MM));
        for (int k = 0; k <= steps; k++) {
          boxes.add(Box.centredOn(from.lerp(to, (double) k / steps), LINE_STEP_MM, LINE_STEP_MM));
        }
      }
    }
    return boxes;
  }

  private static double facing(Frame frame, SurfaceLoops.At at) {
    return frame.picture().facing(at);
  }

  private static boolean isOnScalp(Landmark landmark) {
    return switch (landmark) {
      case APEX, BACK_POINT, FRONT_HAIRLINE, NAPE_HAIRLINE -> true;
      case BROW, EAR_LEFT, EAR_RIGHT -> false;
    };
  }

  /**
   * A zone is named where its name fits inside it, on one line or on several; on a plate it may
   * also reach beyond.
   */
  private void addZone(
      Frame frame,
      Zone zone,
      boolean plate,
      List<LabelPlacer.Wish> wishes,
      Map<String, Label> labels) {
    Polygon area = frame.area(zones.get(zone));
    if (area.isEmpty()) {
      return;
    }
    String lines = zone.words().replace(' ', '\n');
    if (plate) {
      Label label = new Label(zoneName(zone), Role.NOTE, lines, SheetInk.QUIET, true);
      add(wishes, labels, label, within(area, 0, 0));
      return;
    }
    for (String text : List.of(zone.words(), lines)) {
      Label label = new Label(zoneName(zone), Role.NOTE, text, SheetInk.QUIET, false);
      List<Point> spots = within(area, label.width(), label.height());
      if (!spots.isEmpty()) {
        add(wishes, labels, label, spots);
        return;
      }
    }
  }

  private static void add(
      List<LabelPlacer.Wish> wishes, Map<String, Label> labels, Label label, List<Point> spots) {
    if (spots.isEmpty()) {
      return;
    }
    labels.put(label.name(), label);
    wishes.add(new LabelPlacer.Wish(label.name(), label.width(), label.height(), spots, false));
  }

  /** Text at a place, on a plate or bare. */
  private record Label(String name, Role role, String text, Ink ink, boolean plate) {
    private List<String> lines() {
      return List.of(text.split("\n", -1));
    }

    double width() {
      Typeface face = Typeface.shipped();
      double widest =
          lines().stream()
              .mapToDouble(line -> face.width(line, TextSize.SMALL))
              .max()
              .orElseThrow();
      return widest + 2 * PADDING_MM;
    }

    double height() {
      return Typeface.shipped().capHeight(TextSize.SMALL)
          + (lines().size() - 1) * TextFlow.LINE_MM
          + 2 * PADDING_MM;
    }

    Mark mark(Frame frame, Box box) {
      List<Part> parts = new ArrayList<>();
      if (plate) {
        parts.add(Part.Shape.filled(Curve.roundedRectangle(box, CORNER_MM), Ink.PAPER));
      }
      List<String> lines = lines();
      double y = box.centre().y() - (lines.size() - 1) * TextFlow.LINE_MM / 2;
      for (String line : lines) {
        parts.add(
            Part.Lettering.centred(line, new Point(box.centre().x(), y), TextSize.SMALL, ink));
        y += TextFlow.LINE_MM;
      }
      return new Mark(frame.id(name), role, Layer.NUMBERS, "", Map.of(), parts);
    }
  }

  private static Label landmarkLabel(Landmark landmark) {
    return new Label(
        "landmark-" + letter(landmark).toLowerCase(Locale.ROOT),
        Role.LANDMARK,
        letter(landmark),
        Ink.BLACK,
        true);
  }

  private Label tapeLabel(Tape tape) {
    return new Label(
        "tape-label-" + number(tape),
        Role.TAPE_LINE,
        number(tape) + ": " + millimetres(tape),
        SheetInk.ACCENT,
        true);
  }

  static String zoneName(Zone zone) {
    return "zone-" + (ZONES.indexOf(zone) + 1);
  }

  private static Mark cross(Frame frame, Landmark landmark, Point p) {
    double half = CROSS_MM / 2;
    Curve lines =
        Curve.builder()
            .move(p.plus(-half, -half))
            .line(p.plus(half, half))
            .move(p.plus(-half, half))
            .line(p.plus(half, -half))
            .build();
    return new Mark(
        frame.id("cross-" + (LANDMARKS.indexOf(landmark) + 1)),
        Role.LANDMARK,
        Layer.NUMBERS,
        letter(landmark) + ", " + landmark.words(),
        Map.of(),
        List.of(Part.Shape.drawn(lines, Pen.of(Ink.BLACK, LineWeight.MEDIUM))));
  }

  private static List<Point> around(Point p) {
    List<Point> spots = new ArrayList<>();
    for (double reach : new double[] {3, 3.6, 4.4}) {
      for (int i = 0; i < 8; i++) {
        double t = -Math.PI / 4 + Math.PI / 4 * i;
        spots.add(p.plus(reach * Math.cos(t), reach * Math.sin(t)));
      }
    }
    return spots;
  }

  /** Points of a line that can be seen well, from its middle outwards. */
  private List<Point> alongLine(Frame frame, List<SurfaceLoops.At> line) {
    List<Point> spots = new ArrayList<>();
    int n = line.size();
    for (int i = 0; i < n; i++) {
      int k = n / 2 + (i % 2 == 0 ? i / 2 : -(i + 1) / 2);
      if (k >= 0 && k < n && facing(frame, line.get(k)) >= LEAST_FACING) {
        spots.add(frame.at(line.get(k)));
      }
    }
    return spots;
  }

  /** Centres at which a box lies within an area, the ones deepest inside first. */
  private static List<Point> within(Polygon area, double width, double height) {
    Box bounds = area.curve().bounds();
    Map<Point, Double> room = new HashMap<>();
    for (int i = 1; i < SPOTS; i++) {
      for (int j = 1; j < SPOTS; j++) {
        Point p =
            new Point(
                bounds.x() + bounds.width() * i / SPOTS, bounds.y() + bounds.height() * j / SPOTS);
        Box box = Box.centredOn(p, width, height);
        if (area.contains(p) && clear(area, box)) {
          room.put(p, distance(area, p));
        }
      }
    }
    List<Point> spots = new ArrayList<>(room.keySet());
    spots.sort(
        Comparator.comparingDouble((Point p) -> -room.get(p))
            .thenComparingDouble(Point::x)
            .thenComparingDouble(Point::y));
    return spots;
  }

  private static boolean clear(Polygon area, Box box) {
    return sides(area).noneMatch(side -> box.meets(side.from(), side.to()));
  }

  private static double distance(Polygon area, Point p) {
    return sides(area).mapToDouble(side -> side.distance(p)).min().orElseThrow();
  }

  /** A straight piece of a border. */
  private record Line(Point from, Point to) {
    double distance(Point p) {
      double dx = to.x() - from.x();
      double dy = to.y() - from.y();
      double square = dx * dx + dy * dy;
      double t = square > 0 ? ((p.x() - from.x()) * dx + (p.y() - from.y()) * dy) / square : 0;
      return p.distance(from.lerp(to, Math.min(1, Math.max(0, t))));
    }
  }

  private static Stream<Line> sides(Polygon area) {
    return area.rings().stream()
        .flatMap(
            ring ->
                IntStream.range(0, ring.size())
                    .mapToObj(i -> new Line(ring.get(i), ring.get((i + 1) % ring.size()))));
  }

  private static int number(Tape tape) {
    return TAPES.indexOf(tape) + 1;
  }

  private static String letter(Landmark landmark) {
    return Character.toString('A' + LANDMARKS.indexOf(landmark));
  }

  private String millimetres(Tape tape) {
    return Math.round(head.reading(tape).toMillimetres()) + " mm";
  }

  private TextFlow words() {
    TextFlow flow = layout.words();
    flow.heading("Tape");
    for (Tape tape : TAPES) {
      boolean given = tape.in(head.tapes()).isPresent();
      flow.figure(
          number(tape) + "  " + tape.words(), millimetres(tape) + (given ? "" : ", assumed"));
    }
    flow.heading("Landmarks");
    for (Landmark landmark : LANDMARKS) {
      flow.paragraph(letter(landmark) + "  " + landmark.words());
    }
    flow.heading("Zones");
    double sum = 0;
    for (Zone zone : ZONES) {
      double area = head.zone(zone).area();
      sum += area;
      flow.figure(zone.words(), squareCentimetres(area));
    }
    flow.figure("whole scalp", squareCentimetres(sum));
    return flow;
  }

  private static String squareCentimetres(double squareMillimetres) {
    return Area.ofSquareMillimetres(squareMillimetres).toString().replace("cm2", "cm\u00b2");
  }
}
