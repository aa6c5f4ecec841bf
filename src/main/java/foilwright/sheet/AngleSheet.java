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
import foilwright.drawing.View;
import foilwright.geometry.Plane;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.Isolines;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.pattern.Pattern;
import foilwright.pattern.Section;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Which way the partings run and what comes of it: for each section the planes of its partings cut
 * through the whole head, the angle with the level, and the parting against the fall of the hair.
 * Paper upright, three sections to a page.
 */
public final class AngleSheet {
  private static final double PICTURE_MM = 90;
  private static final double LABEL_MM = 19.5;
  private static final double STRIP_MM = 4;
  private static final int ON_A_PAGE = 3;
  private static final double LEAST_AREA_MM2 = 0.4;
  private static final double FALL_SPACING_MM = 18;
  private static final double FALL_MM = 6;
  private static final double LEAST_FALL = 0.15;
  private static final double LEAST_FACING = 0.25;
  private static final double LEAST_BEND_MM = 0.4;
  private static final Pen PLANE = Pen.of(SheetInk.ACCENT, LineWeight.MEDIUM).dashed(2, 1);
  private static final Pen PARTING = Pen.of(SheetInk.ACCENT, LineWeight.STRONG);
  private static final Pen LEVEL = Pen.of(Ink.BLACK, LineWeight.MEDIUM).dashed(1.2, 0.8);
  private static final Pen FALL = Pen.of(SheetInk.QUIET, LineWeight.FINE);

  private final DrawnPlan plan;
  private final Pattern pattern;
  private final DirectionField fall;
  private final PageLayout layout;
  private final List<Stroke> strokes;

  /** The fall at a place: from the root onwards. */
  private record Stroke(SurfaceLoops.At root, SurfaceLoops.At end) {}

  private AngleSheet(DrawnPlan plan, Pattern pattern, DirectionField fall, Paper paper) {
    this.plan = plan;
    this.pattern = pattern;
    this.fall = fall;
    this.layout = PageLayout.upright(paper);
    this.strokes = strokes();
  }

  /** The pages; of a mirrored pair the first half stands for both. */
  public static List<Scene> build(
      DrawnPlan plan, Pattern pattern, DirectionField fall, String subtitle, Paper paper) {
    return new AngleSheet(plan, pattern, fall, paper).pages(subtitle);
  }

  private List<Stroke> strokes() {
    TriangleMesh mesh = fall.mesh();
    List<Vector3> kept = new ArrayList<>();
    List<Stroke> found = new ArrayList<>();
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vector3 at = mesh.point(t, 1.0 / 3, 1.0 / 3);
      Vector3 down = fall.at(t);
      if (down.norm() < LEAST_FALL
          || kept.stream().anyMatch(p -> p.distance(at) < FALL_SPACING_MM)) {
        continue;
      }
      kept.add(at);
      Vector3 end = plan.head().head().form().surfacePoint(at.plus(down.unit().times(FALL_MM)));
      found.add(new Stroke(plan.head().at(at), plan.head().at(end)));
    }
    return found;
  }

  private List<Scene> pages(String subtitle) {
    Map<Integer, PlacedSection> sections = new LinkedHashMap<>();
    plan.placement().sections().stream()
        .filter(s -> !s.foils().isEmpty())
        .sorted(Comparator.comparingInt(s -> s.foils().get(0).number()))
        .forEach(s -> sections.putIfAbsent(s.index(), s));
    List<PlacedSection> all = List.copyOf(sections.values());
    int count = (all.size() + ON_A_PAGE - 1) / ON_A_PAGE;
    List<Scene> pages = new ArrayList<>();
    for (int page = 0; page < count; page++) {
      List<PlacedSection> here =
          all.subList(page * ON_A_PAGE, Math.min(all.size(), (page + 1) * ON_A_PAGE));
      String words = subtitle + (count > 1 ? ", page " + (page + 1) + " of " + count : "");
      List<Mark> marks = new ArrayList<>(layout.titles(pattern.title() + ": angles", words));
      List<Box> rows = layout.rows(ON_A_PAGE);
      for (int i = 0; i < here.size(); i++) {
        if (i > 0) {
          marks.add(layout.rule("rule-" + i, rows.get(i).y()));
        }
        row(here.get(i), rows.get(i), marks);
      }
      marks.add(layout.scaleBox());
      marks.addAll(
          layout.signs(
              List.of(
                  SheetLayout.Sign.line(PARTING, "parting"),
                  SheetLayout.Sign.line(PLANE, "its plane, carried on"),
                  new SheetLayout.Sign(AngleSheet::fallSample, "fall of the hair"))));
      pages.add(
          layout.scene(
              "angles" + (page == 0 ? "" : "-" + (page + 1)),
              "Angles: " + pattern.title(),
              "For each section the planes of its partings on the head, their angle with the level"
                  + " and with the fall of the hair.",
              marks));
    }
    return List.copyOf(pages);
  }

  private void row(PlacedSection section, Box row, List<Mark> marks) {
    String name = "section-" + (section.index() + 1);
    Box cell = new Box(row.x(), row.y() + 1.5, PICTURE_MM, row.height() - 3);
    Frame frame = Frame.fitted(plan.head().view(view(section)), cell, STRIP_MM).named(name);
    draw(frame, section, marks);
    double x = row.x() + PICTURE_MM + 3;
    Box column = new Box(x, row.y() + 1, row.right() - x, row.height() - 2);
    TextFlow flow = new TextFlow(name + "-note", column);
    flow.heading(TextFlow.fitted(section.name(), TextSize.HEADING, column.width()));
    Optional<Section> planned = pattern.sections().stream().skip(section.index()).findFirst();
    OptionalDouble across = Lesson.acrossFall(section.foils(), plan.head().head(), fall);
    flow.entry("partings", section.shape() + ", " + Lesson.angle(section.foils()), LABEL_MM);
    flow.entry("to the fall", toTheFall(across), LABEL_MM);
    flow.entry("look", look(across), LABEL_MM);
    flow.entry("grow-out", growOut(across, section), LABEL_MM);
    planned
        .map(Section::why)
        .filter(why -> !why.isBlank())
        .ifPresent(why -> flow.entry("aim", why, LABEL_MM));
    flow.placed().stream().filter(p -> p.page() == 0).forEach(p -> marks.add(p.mark()));
  }

  static String toTheFall(OptionalDouble across) {
    if (across.isEmpty()) {
      return "hair lies flat here and has no fall of its own";
    }
    String deg = String.format(Locale.ROOT, "%.0f deg: ", across.getAsDouble());
    return switch (Lesson.Way.of(across)) {
      case ACROSS -> deg + "the partings cross it";
      case ALONG -> deg + "the partings follow it";
      default -> deg + "the partings slant to it";
    };
  }

  static String look(OptionalDouble across) {
    return switch (Lesson.Way.of(across)) {
      case ACROSS ->
          "each foil hangs as a sheet under the one above; light shows where the upper sheet parts";
      case ALONG -> "ribbons from root to end, to be seen wherever the hair hangs free";
      case SLANTING -> "ribbons that lean over the fall; light breaks up as the hair moves";
      case FLAT -> "the hair can be worn either way, and the ribbons turn with it";
    };
  }

  static String growOut(OptionalDouble across, PlacedSection section) {
    String way =
        switch (Lesson.Way.of(across)) {
          case ACROSS -> "the roots of a row move down together, as one edge along the parting";
          case ALONG -> "each ribbon moves down by itself, so no edge runs across the head";
          case SLANTING -> "the edge of each row runs slanting, which the eye finds less easily";
          case FLAT -> "the roots show first, since the hair lies open here";
        };
    double off =
        section.foils().stream()
            .mapToDouble(f -> f.startFromScalp().toMillimetres())
            .min()
            .orElse(0);
    return off > 0
        ? way + "; product starts " + Wording.both(off) + " off the scalp, which softens it"
        : way;
  }

  private View view(PlacedSection section) {
    View best = View.BACK;
    double most = -1;
    SurfaceLoops whole = plan.head().loops(section.region());
    for (View view : View.values()) {
      double area = plan.head().view(view).area(whole).area();
      if (area > most + 1e-9) {
        most = area;
        best = view;
      }
    }
    return best;
  }

  private void draw(Frame frame, PlacedSection section, List<Mark> marks) {
    marks.addAll(frame.ground(plan.head()));
    Polygon whole = frame.area(plan.head().loops(section.region()));
    if (whole.area() >= LEAST_AREA_MM2) {
      marks.add(
          Mark.plain(
              frame.id("region"),
              Role.BACKGROUND,
              Layer.SCALP,
              Part.Shape.filled(whole.curve(), SheetInk.UNTOUCHED)));
    }
    fall(frame).ifPresent(marks::add);
    for (PlacedFoil foil : section.foils()) {
      DrawnFoil drawn = plan.foils().get(foil.number() - 1);
      Polygon area = frame.area(drawn.border());
      if (area.area() >= LEAST_AREA_MM2) {
        marks.add(drawn.mark(frame, area));
      }
    }
    Curve.Builder planes = Curve.builder();
    for (PlacedFoil foil : some(section.foils())) {
      for (Polyline cut : planeCut(foil)) {
        planes.every(frame.line(plan.head().line(cut)));
      }
    }
    Curve cuts = planes.build();
    if (!cuts.isEmpty()) {
      marks.add(
          Mark.plain(frame.id("planes"), Role.PARTING, Layer.LINES, Part.Shape.drawn(cuts, PLANE)));
    }
    addAngle(frame, section, marks);
  }

  private Optional<Mark> fall(Frame frame) {
    Curve.Builder lines = Curve.builder();
    for (Stroke stroke : strokes) {
      if (frame.picture().facing(stroke.root()) < LEAST_FACING) {
        continue;
      }
      arrow(lines, frame.at(stroke.root()), frame.at(stroke.end()));
    }
    Curve drawn = lines.build();
    return drawn.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Mark(
                frame.id("fall"),
                Role.FEATURE,
                Layer.BACKGROUND,
                "How the hair falls",
                Map.of(),
                List.of(Part.Shape.drawn(drawn, FALL))));
  }

  private static void arrow(Curve.Builder lines, Point from, Point to) {
    double run = from.distance(to);
    if (run < 0.5) {
      return;
    }
    double ux = (to.x() - from.x()) / run;
    double uy = (to.y() - from.y()) / run;
    double head = Math.min(0.9, run / 2);
    lines.move(from).line(to);
    lines
        .move(to.plus(-head * (ux + 0.6 * uy), -head * (uy - 0.6 * ux)))
        .line(to)
        .line(to.plus(-head * (ux - 0.6 * uy), -head * (uy + 0.6 * ux)));
  }

  private static List<Part> fallSample(Box box) {
    Curve.Builder lines = Curve.builder();
    double y = box.centre().y();
    arrow(lines, new Point(box.x() + 2, y), new Point(box.right() - 2, y));
    return List.of(Part.Shape.drawn(lines.build(), FALL));
  }

  /** The first foil, one in the middle and the last. */
  private static List<PlacedFoil> some(List<PlacedFoil> foils) {
    int n = foils.size();
    return n <= 3 ? foils : List.of(foils.get(0), foils.get(n / 2), foils.get(n - 1));
  }

  /**
   * Where the plane of a straight parting cuts the scalp; empty for a parting that lies in no plane
   * or is too short to tell.
   */
  private List<Polyline> planeCut(PlacedFoil foil) {
    boolean straight =
        switch (foil.shape()) {
          case "horizontal", "diagonal", "vertical" -> true;
          default -> false;
        };
    Polyline line = foil.parting();
    if (!straight || line.size() < 3) {
      return List.of();
    }
    Vector3 a = line.first();
    Vector3 c = line.last();
    Vector3 b = line.at(line.length() / 2);
    double bend = b.distance(a.lerp(c, 0.5));
    if (bend < LEAST_BEND_MM) {
      return List.of();
    }
    Plane plane = Plane.through(b, b.minus(a).cross(c.minus(a)));
    ScalarField distance = ScalarField.distanceFrom(plan.head().head().mesh(), plane);
    return Isolines.of(plan.head().head().scalp(), distance, 0);
  }

  private void addAngle(Frame frame, PlacedSection section, List<Mark> marks) {
    Optional<PlacedFoil> clear =
        section.foils().stream()
            .max(
                Comparator.comparingDouble(
                    (PlacedFoil f) ->
                        frame.picture().facing(plan.head().at(f.centre()))
                            * Math.min(40, f.width().toMillimetres())));
    if (clear.isEmpty()) {
      return;
    }
    PlacedFoil foil = clear.get();
    Polyline edge = Lesson.edge(foil);
    Curve seen = frame.line(plan.head().line(edge));
    if (seen.isEmpty()) {
      return;
    }
    List<Part> parts = new ArrayList<>();
    parts.add(Part.Shape.drawn(seen, PARTING));
    Point from = frame.at(plan.head().at(edge.first()));
    Point to = frame.at(plan.head().at(edge.last()));
    AngleMark.of(from, to, LEVEL).ifPresent(mark -> parts.addAll(mark.parts()));
    double degrees = foil.partingAngle().toDegrees();
    String label = degrees < 1 ? "level" : String.format(Locale.ROOT, "%.0f\u00b0", degrees);
    Typeface face = Typeface.shipped();
    double width = face.width(label, TextSize.SMALL) + 0.8;
    double height = face.capHeight(TextSize.SMALL) + 0.8;
    Box room =
        new Box(
            frame.cell().x(),
            frame.cell().y(),
            frame.cell().width(),
            frame.cell().height() - Frame.CAPTION_MM);
    List<Point> spots =
        AngleMark.labelSpots(from, to).stream()
            .filter(p -> room.contains(Box.centredOn(p, width, height)))
            .toList();
    LabelPlacer.Wish wish = new LabelPlacer.Wish(label, width, height, spots, false);
    for (LabelPlacer.Placed placed :
        LabelPlacer.place(List.of(wish), List.of(), List.of(), 0.3).placed()) {
      parts.add(Part.Shape.filled(Curve.roundedRectangle(placed.box(), 0.7), Ink.PAPER));
      parts.add(Part.Lettering.centred(label, placed.box().centre(), TextSize.SMALL, Ink.BLACK));
    }
    marks.add(
        new Mark(
            frame.id("angle"),
            Role.PARTING,
            Layer.NUMBERS,
            "Partings of " + section.name() + ": " + Lesson.angle(section.foils()),
            Map.of("section", section.name()),
            parts));
  }
}
