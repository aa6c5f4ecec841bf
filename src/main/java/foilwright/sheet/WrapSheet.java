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
import foilwright.drawing.Scene;
import foilwright.drawing.SurfaceLoops;
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.head.Gores;
import foilwright.placement.PlacedFoil;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The scalp in paper gores at true size with the foils printed on them, to be cut out, glued edge
 * to edge and laid over a training head. Paper across where the gores are short enough, else
 * upright.
 */
public final class WrapSheet {
  private static final double TAB_MM = 6;
  private static final double TAB_LENGTH_MM = 24;
  private static final double TAB_GAP_MM = 1.2;
  private static final double BETWEEN_MM = 2.5;
  private static final double ON_EDGE_MM = 1e-6;
  private static final double SIMPLIFIED_MM = 0.05;
  private static final double LEAST_PIECE_MM2 = 3;
  private static final double WORDS_MM = 62;
  private static final int SPOTS = 10;
  private static final double FIGURE_MM = 42;
  private static final double WORDS_HEIGHT_MM = 75;
  private static final Pen CUT = Pen.of(Ink.BLACK, LineWeight.MEDIUM);
  private static final Pen FOLD = Pen.of(SheetInk.QUIET, LineWeight.FINE);
  private static final Pen CENTRE = Pen.of(SheetInk.ACCENT, LineWeight.STRONG);
  private static final Pen ZONES = Pen.of(SheetInk.QUIET, LineWeight.FINE).dashed(1.2, 0.8);

  private final DrawnPlan plan;
  private final Gores gores;
  private final List<Sheet> sheets = new ArrayList<>();
  private final PageLayout layout;
  private final Box words;

  /** A gore flat about its own origin: what is cut out, and its tabs. */
  private record Flat(int gore, Polygon border, List<List<Point>> tabs) {
    Box bounds() {
      Box box = border.curve().bounds();
      for (List<Point> tab : tabs) {
        box = box.union(Curve.polygon(tab).bounds());
      }
      return box;
    }
  }

  /** A gore in its place on a page. */
  private record Sheet(Flat flat, int page, double dx, double dy) {
    Point at(Gores.Place place) {
      return new Point(place.xMm() + dx, place.yMm() + dy);
    }

    List<Point> at(List<Point> points) {
      return points.stream().map(p -> p.plus(dx, dy)).toList();
    }
  }

  private WrapSheet(DrawnPlan plan, Gores gores, Paper paper) {
    this.plan = plan;
    this.gores = gores;
    List<Flat> flats = new ArrayList<>();
    for (int g = 0; g < gores.count(); g++) {
      flats.add(flat(g));
    }
    double tallest =
        flats.stream().mapToDouble(f -> f.bounds().bottom() - f.bounds().y()).max().orElseThrow();
    PageLayout across = PageLayout.across(paper);
    layout = tallest <= across.body().height() ? across : PageLayout.upright(paper);
    Box body = layout.body();
    boolean below = body.height() - tallest > WORDS_HEIGHT_MM;
    words =
        below
            ? new Box(body.x(), body.y() + tallest + 4, body.width(), body.height() - tallest - 4)
            : new Box(body.x(), body.y(), WORDS_MM - 6, body.height());
    double x = below ? body.x() : body.x() + WORDS_MM;
    int page = 0;
    for (Flat flat : flats) {
      Box box = flat.bounds();
      if (x + box.width() > body.right()) {
        page++;
        x = body.x();
      }
      double top = body.y() + 1 - Math.min(0, box.y());
      sheets.add(new Sheet(flat, page, x - box.x(), top));
      x += box.width() + BETWEEN_MM;
    }
  }

  /** The pages of the wrap: as many gores as keep the excess of their edges under 2 %. */
  public static List<Scene> build(DrawnPlan plan, String title, String subtitle, Paper paper) {
    return new WrapSheet(plan, Gores.of(plan.head().head()), paper).pages(title, subtitle);
  }

  private Flat flat(int gore) {
    Region part = gores.part(plan.head().head().scalp(), gore);
    List<List<Point>> rings = new ArrayList<>();
    List<List<Point>> tabs = new ArrayList<>();
    int edge = gore + 1;
    for (Polyline loop : part.outline()) {
      List<Vector3> points = loop.points();
      rings.add(points.subList(1, points.size()).stream().map(p -> at(gore, p)).toList());
      List<Point> run = new ArrayList<>();
      int start = firstOff(points, edge);
      for (int i = 0; i < points.size(); i++) {
        Vector3 p = points.get((start + i) % (points.size() - 1));
        if (isOn(p, edge)) {
          run.add(at(gore, p));
        } else {
          tabs.addAll(tabs(run));
          run = new ArrayList<>();
        }
      }
      tabs.addAll(tabs(run));
    }
    return new Flat(gore, Polygon.of(rings), tabs);
  }

  private int firstOff(List<Vector3> points, int edge) {
    for (int i = 0; i + 1 < points.size(); i++) {
      if (!isOn(points.get(i), edge)) {
        return i;
      }
    }
    return 0;
  }

  private boolean isOn(Vector3 p, int edge) {
    return Math.abs(gores.besideEdge(edge, p)) < ON_EDGE_MM;
  }

  private Point at(int gore, Vector3 p) {
    Gores.Place place = gores.place(gore, p);
    return new Point(place.xMm(), place.yMm());
  }

  /** Tabs along a stretch of right edge, cut into short ones so that they bend with it. */
  private static List<List<Point>> tabs(List<Point> run) {
    List<List<Point>> tabs = new ArrayList<>();
    if (run.size() < 2) {
      return tabs;
    }
    List<Point> line = new ArrayList<>(run);
    if (line.get(0).y() > line.get(line.size() - 1).y()) {
      Collections.reverse(line);
    }
    double length = 0;
    for (int i = 1; i < line.size(); i++) {
      length += line.get(i).distance(line.get(i - 1));
    }
    int count = Math.max(1, (int) Math.round(length / TAB_LENGTH_MM));
    for (int k = 0; k < count; k++) {
      List<Point> piece =
          between(line, length * k / count + TAB_GAP_MM, length * (k + 1) / count - TAB_GAP_MM);
      Point from = piece.get(0);
      Point to = piece.get(piece.size() - 1);
      double run1 = from.distance(to);
      if (run1 < TAB_MM) {
        continue;
      }
      double nx = (to.y() - from.y()) / run1;
      double ny = -(to.x() - from.x()) / run1;
      List<Point> tab = new ArrayList<>(piece);
      double slope = TAB_MM * 0.6 / run1;
      tab.add(to.lerp(from, slope).plus(nx * TAB_MM, ny * TAB_MM));
      tab.add(from.lerp(to, slope).plus(nx * TAB_MM, ny * TAB_MM));
      tabs.add(tab);
    }
    return tabs;
  }

  private static List<Point> between(List<Point> line, double from, double to) {
    List<Point> piece = new ArrayList<>();
    double arc = 0;
    for (int i = 1; i < line.size(); i++) {
      Point a = line.get(i - 1);
      Point b = line.get(i);
      double step = a.distance(b);
      if (arc <= from && arc + step > from) {
        piece.add(a.lerp(b, (from - arc) / step));
      }
      if (arc + step > from && arc + step < to) {
        piece.add(b);
      }
      if (arc < to && arc + step >= to) {
        piece.add(a.lerp(b, (to - arc) / step));
      }
      arc += step;
    }
    if (piece.size() < 2) {
      piece = new ArrayList<>(List.of(line.get(0), line.get(line.size() - 1)));
    }
    return piece;
  }

  private List<Scene> pages(String title, String subtitle) {
    int count = sheets.get(sheets.size() - 1).page() + 1;
    List<List<Mark>> pages = new ArrayList<>();
    for (int page = 0; page < count; page++) {
      List<Mark> marks = new ArrayList<>();
      String words = subtitle + (count > 1 ? ", page " + (page + 1) + " of " + count : "");
      marks.addAll(layout.titles(title + ": wrap", words));
      marks.add(layout.scaleBox());
      pages.add(marks);
    }
    pages.get(0).addAll(words(count));
    for (Sheet sheet : sheets) {
      pages.get(sheet.page()).addAll(draw(sheet));
    }
    List<Scene> scenes = new ArrayList<>();
    for (int page = 0; page < count; page++) {
      scenes.add(
          layout.scene(
              "wrap" + (page == 0 ? "" : "-" + (page + 1)),
              "Wrap: " + title,
              "The scalp in "
                  + gores.count()
                  + " gores at true size with the foils printed on them, page "
                  + (page + 1)
                  + " of "
                  + count
                  + ".",
              pages.get(page)));
    }
    return List.copyOf(scenes);
  }

  private List<Mark> words(int pages) {
    TextFlow flow = new TextFlow(words);
    flow.heading("How to make it");
    flow.paragraph(
        "Print all " + pages + " pages at full size: the box at the foot must measure 50 mm.");
    flow.paragraph(
        "Cut round the outside, tabs included. Fold the tabs back along the edge of the gore.");
    flow.paragraph(
        "Glue each tab under the next number, tick to tick: 1 to 2, 2 to 3, and "
            + gores.count()
            + " to 1.");
    flow.paragraph(
        "Lay it on the training head, hair slicked down under film: the broad line on the centre"
            + " line, the cut edge on the hairline.");
    flow.paragraph("Draw the partings through, or work along the printed edges.");
    flow.heading("How true it is");
    flow.entry("gores", Integer.toString(gores.count()), FIGURE_MM);
    flow.entry("areas within", "1 %", FIGURE_MM);
    flow.entry("joined edges agree within", "0.5 mm", FIGURE_MM);
    flow.entry(
        "edges longer by",
        String.format(Locale.ROOT, "%.1f %%", 100 * gores.worstExcess()),
        FIGURE_MM);
    List<Mark> marks = new ArrayList<>();
    flow.placed().stream().filter(p -> p.page() == 0).forEach(p -> marks.add(p.mark()));
    return marks;
  }

  private List<Mark> draw(Sheet sheet) {
    int gore = sheet.flat().gore();
    String name = "gore-" + (gore + 1);
    List<Mark> marks = new ArrayList<>();
    List<Part> tabs = new ArrayList<>();
    for (List<Point> tab : sheet.flat().tabs()) {
      tabs.add(Part.Shape.drawn(Curve.polygon(sheet.at(tab)), FOLD));
    }
    if (!tabs.isEmpty()) {
      marks.add(Mark.plain(name + "-tabs", Role.FRAME, Layer.PAPER, tabs.toArray(Part[]::new)));
    }
    Polygon border = moved(sheet, sheet.flat().border());
    marks.add(
        Mark.plain(
            name + "-ground",
            Role.SCALP,
            Layer.SCALP,
            Part.Shape.filled(border.curve(), Ink.PAPER)));
    addGrounds(sheet, name, marks);
    addLines(sheet, name, marks);
    marks.add(
        new Mark(
            name,
            Role.OUTLINE,
            Layer.LINES,
            "Gore " + (gore + 1) + " of " + gores.count(),
            Map.of(),
            List.of(Part.Shape.drawn(border.curve(), CUT))));
    addTicks(sheet, name, marks);
    addFoils(sheet, name, border, marks);
    return marks;
  }

  private static Polygon moved(Sheet sheet, Polygon polygon) {
    return Polygon.of(polygon.rings().stream().map(sheet::at).toList());
  }

  /** What a gore holds of a region, flat and in its place. */
  private Polygon piece(Sheet sheet, Region region) {
    int gore = sheet.flat().gore();
    Region part = gores.part(region, gore);
    List<List<Point>> rings = new ArrayList<>();
    if (!part.isEmpty()) {
      for (Polyline loop : part.outline()) {
        rings.add(
            SurfaceLoops.simplified(loop.points(), SIMPLIFIED_MM).stream()
                .skip(1)
                .map(p -> sheet.at(gores.place(gore, p)))
                .toList());
      }
    }
    return Polygon.of(rings);
  }

  private void addGrounds(Sheet sheet, String name, List<Mark> marks) {
    for (DrawnPlan.Ground ground : plan.grounds()) {
      Polygon whole = piece(sheet, ground.section().region());
      if (whole.isEmpty()) {
        continue;
      }
      List<Part> parts = new ArrayList<>();
      parts.add(Part.Shape.filled(whole.curve(), SheetInk.BACKGROUND));
      Polygon untouched = piece(sheet, ground.section().untouched());
      if (!untouched.isEmpty()) {
        parts.add(Part.Shape.filled(untouched.curve(), SheetInk.UNTOUCHED));
      }
      marks.add(
          new Mark(
              name + "-background-" + (ground.place() + 1),
              Role.BACKGROUND,
              Layer.SCALP,
              "Background of " + ground.section().name(),
              Map.of("section", ground.section().name()),
              parts));
    }
  }

  private void addLines(Sheet sheet, String name, List<Mark> marks) {
    Curve.Builder zones = Curve.builder();
    for (List<SurfaceLoops.At> line : plan.head().zoneBorders()) {
      strands(sheet, line.stream().map(SurfaceLoops.At::point).toList(), zones);
    }
    Curve borders = zones.build();
    if (!borders.isEmpty()) {
      marks.add(
          Mark.plain(
              name + "-zones",
              Role.ZONE_BORDER,
              Layer.BACKGROUND,
              Part.Shape.drawn(borders, ZONES)));
    }
    Curve.Builder middle = Curve.builder();
    strands(sheet, plan.head().head().centreLine().points(), middle);
    Curve centre = middle.build();
    if (!centre.isEmpty()) {
      marks.add(
          Mark.plain(
              name + "-centre", Role.LANDMARK, Layer.LINES, Part.Shape.drawn(centre, CENTRE)));
    }
    plan.head()
        .partLine()
        .ifPresent(
            line -> {
              Curve.Builder part = Curve.builder();
              strands(sheet, line.stream().map(SurfaceLoops.At::point).toList(), part);
              Curve drawn = part.build();
              if (!drawn.isEmpty()) {
                marks.add(
                    Mark.plain(
                        name + "-part",
                        Role.PART_LINE,
                        Layer.LINES,
                        Part.Shape.drawn(drawn, SheetInk.PART_LINE)));
              }
            });
  }

  /** What a gore holds of a line; cut where it leaves over an edge. */
  private void strands(Sheet sheet, List<Vector3> line, Curve.Builder into) {
    int gore = sheet.flat().gore();
    List<Point> open = new ArrayList<>();
    for (int i = 0; i < line.size(); i++) {
      Vector3 p = line.get(i);
      double left = value(p, gore);
      double right = -value(p, gore + 1);
      boolean inside = left >= -ON_EDGE_MM && right >= -ON_EDGE_MM;
      if (i > 0) {
        Vector3 before = line.get(i - 1);
        double l0 = value(before, gore);
        double r0 = -value(before, gore + 1);
        boolean was = l0 >= -ON_EDGE_MM && r0 >= -ON_EDGE_MM;
        if (was != inside) {
          double t = Math.min(1, Math.max(0, cut(l0, left, r0, right)));
          open.add(sheet.at(gores.place(gore, before.lerp(p, t))));
        }
      }
      if (inside) {
        open.add(sheet.at(gores.place(gore, p)));
      } else if (!open.isEmpty()) {
        flush(open, into);
        open = new ArrayList<>();
      }
    }
    flush(open, into);
  }

  private static double cut(double l0, double l1, double r0, double r1) {
    if (l0 < 0 != l1 < 0) {
      return l0 / (l0 - l1);
    }
    return r0 / (r0 - r1);
  }

  private static void flush(List<Point> open, Curve.Builder into) {
    if (open.size() > 1) {
      into.strand(open, false);
    }
  }

  private double value(Vector3 p, int edge) {
    return gores.besideEdge(edge, p);
  }

  /** Short ticks inside both edges, every 30 mm from the axis, and the number of the gore. */
  private void addTicks(Sheet sheet, String name, List<Mark> marks) {
    int gore = sheet.flat().gore();
    Curve.Builder ticks = Curve.builder();
    for (double opening = 20; opening < 140; opening += 20) {
      for (boolean leftEdge : new boolean[] {true, false}) {
        double edge = leftEdge ? gore : gore + 1;
        Point at = sheet.at(gores.place(gore, gores.at(edge, Math.toRadians(opening))));
        Point in =
            sheet.at(
                gores.place(
                    gore, gores.at(edge + (leftEdge ? 0.12 : -0.12), Math.toRadians(opening))));
        if (moved(sheet, sheet.flat().border()).contains(at.lerp(in, 0.5))) {
          double run = at.distance(in);
          ticks.move(at).line(at.lerp(in, Math.min(1, 2 / run)));
        }
      }
    }
    Curve drawn = ticks.build();
    if (!drawn.isEmpty()) {
      marks.add(Mark.plain(name + "-ticks", Role.FRAME, Layer.LINES, Part.Shape.drawn(drawn, CUT)));
    }
  }

  private void addFoils(Sheet sheet, String name, Polygon border, List<Mark> marks) {
    int gore = sheet.flat().gore();
    List<LabelPlacer.Wish> wishes = new ArrayList<>();
    Typeface face = Typeface.shipped();
    double height = face.capHeight(TextSize.SMALL) + 0.6;
    for (DrawnFoil foil : plan.foils()) {
      if (!mayHold(gore, foil.foil())) {
        continue;
      }
      Polygon piece = piece(sheet, foil.foil().region());
      if (piece.area() < LEAST_PIECE_MM2 / 10) {
        continue;
      }
      marks.add(
          new Mark(
              name + "-foil-" + foil.number(),
              Role.FOIL,
              Layer.FOILS,
              "Foil " + foil.number() + ", " + foil.foil().section(),
              Map.of("number", Integer.toString(foil.number()), "section", foil.foil().section()),
              foil.style().parts(piece)));
      if (piece.area() >= LEAST_PIECE_MM2) {
        double width = face.width(foil.label(), TextSize.SMALL) + 0.6;
        wishes.add(
            new LabelPlacer.Wish(
                Integer.toString(foil.number()),
                width,
                height,
                spots(sheet, foil, piece, border, width),
                false));
      }
    }
    List<Box> taken = new ArrayList<>();
    number(sheet, border)
        .ifPresent(
            mark -> {
              marks.add(mark);
              taken.add(mark.bounds().grown(0.5));
            });
    for (LabelPlacer.Placed placed : LabelPlacer.place(wishes, List.of(), taken, 0.3).placed()) {
      DrawnFoil foil = plan.foils().get(Integer.parseInt(placed.name()) - 1);
      marks.add(
          new Mark(
              name + "-number-" + foil.number(),
              Role.NUMBER,
              Layer.NUMBERS,
              "",
              Map.of("number", Integer.toString(foil.number())),
              List.of(
                  Part.Shape.filled(Curve.roundedRectangle(placed.box(), 0.7), foil.style().tint()),
                  Part.Lettering.centred(
                      foil.label(), placed.box().centre(), TextSize.SMALL, Ink.BLACK))));
    }
  }

  private boolean mayHold(int gore, PlacedFoil foil) {
    return foil.region().greatest(gores.besideEdge(gore)) > 0
        && foil.region().least(gores.besideEdge(gore + 1)) < 0;
  }

  /**
   * Points along the middle of what a gore holds of a foil, those first at which the number stays
   * on the gore, and of these the ones nearest the middle of the piece.
   */
  private List<Point> spots(
      Sheet sheet, DrawnFoil foil, Polygon piece, Polygon border, double width) {
    int gore = sheet.flat().gore();
    Box box = piece.curve().bounds();
    List<Point> spots = new ArrayList<>();
    foil.spots().forEach(at -> spots.add(sheet.at(gores.place(gore, at.point()))));
    for (int i = 1; i < SPOTS; i++) {
      for (int j = 1; j < SPOTS; j++) {
        spots.add(new Point(box.x() + box.width() * i / SPOTS, box.y() + box.height() * j / SPOTS));
      }
    }
    Point middle = box.centre();
    double half = width / 2 + 0.3;
    return spots.stream()
        .filter(piece::contains)
        .sorted(
            Comparator.comparing(
                    (Point p) ->
                        !border.contains(p.plus(-half, 0)) || !border.contains(p.plus(half, 0)))
                .thenComparingDouble(p -> p.distance(middle)))
        .toList();
  }

  /** The number of the gore, in the highest place that is wide enough. */
  private Optional<Mark> number(Sheet sheet, Polygon border) {
    int gore = sheet.flat().gore();
    String text = Integer.toString(gore + 1);
    double half = Typeface.shipped().width(text, TextSize.HEADING) / 2 + 1;
    for (double opening = 12; opening < 80; opening += 1) {
      Point at = sheet.at(gores.place(gore, gores.at(gore + 0.5, Math.toRadians(opening))));
      if (border.contains(at.plus(-half, -2))
          && border.contains(at.plus(half, -2))
          && border.contains(at.plus(-half, 2))
          && border.contains(at.plus(half, 2))) {
        Box plate = Box.centredOn(at, 2 * half, 4.4);
        return Optional.of(
            new Mark(
                "gore-" + (gore + 1) + "-name",
                Role.HEADING,
                Layer.NUMBERS,
                "",
                Map.of(),
                List.of(
                    Part.Shape.of(Curve.roundedRectangle(plate, 2), Ink.PAPER, CUT),
                    Part.Lettering.centred(text, at, TextSize.HEADING, Ink.BLACK))));
      }
    }
    return Optional.empty();
  }
}
