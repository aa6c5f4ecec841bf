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
import foilwright.geometry.Polyline;
import foilwright.geometry.surface.DirectionField;
import foilwright.pattern.Pattern;
import foilwright.placement.PlacedFoil;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The plan as a lesson, three steps to a page: what is done in grey, what is new in colour, with
 * the angle of the first parting and its lower end, and beside it what to do. Paper upright.
 */
public final class StepSheet {
  private static final double PICTURES_MM = 90;
  private static final double LABEL_MM = 19.5;
  private static final double LEAST_AREA_MM2 = 0.4;
  private static final double LABEL_GAP_MM = 0.3;
  private static final double LEAST_SHARE = 0.15;
  private static final double STRIP_MM = 6;
  private static final double NARROW_STRIP_MM = 3.5;
  private static final double LEAST_FACING_OF_ANGLE = 0.45;
  private static final double RING_MM = 1.1;
  private static final int MOST_ON_A_PAGE = 3;

  private final DrawnPlan plan;
  private final PageLayout layout;

  private StepSheet(DrawnPlan plan, Paper paper) {
    this.plan = plan;
    this.layout = PageLayout.upright(paper);
  }

  /** The pages of the lesson; none when the plan has no foil. */
  public static List<Scene> build(
      DrawnPlan plan,
      Pattern pattern,
      DirectionField fall,
      String subtitle,
      Wording wording,
      Paper paper) {
    List<Lesson.Step> steps =
        Lesson.of(pattern, plan.head().head(), plan.placement(), fall, wording);
    return new StepSheet(plan, paper).pages(pattern.title(), subtitle, steps);
  }

  private List<Scene> pages(String title, String subtitle, List<Lesson.Step> steps) {
    int onPage = stepsOnAPage(steps);
    int count = (steps.size() + onPage - 1) / onPage;
    List<Scene> pages = new ArrayList<>();
    Set<Integer> done = new HashSet<>();
    for (int page = 0; page < count; page++) {
      String words = subtitle + (count > 1 ? ", page " + (page + 1) + " of " + count : "");
      List<Mark> marks = new ArrayList<>(layout.titles(title + ": steps", words));
      int from = page * onPage;
      List<Lesson.Step> here = steps.subList(from, Math.min(steps.size(), from + onPage));
      List<Box> rows = layout.rows(onPage);
      for (int i = 0; i < here.size(); i++) {
        Lesson.Step step = here.get(i);
        if (i > 0) {
          marks.add(layout.rule("rule-" + step.number(), rows.get(i).y()));
        }
        marks.addAll(row(step, rows.get(i), done));
        step.foils().forEach(f -> done.add(f.number()));
      }
      marks.add(layout.scaleBox());
      marks.addAll(
          layout.signs(
              List.of(
                  SheetLayout.Sign.filled(SheetInk.DONE, "done before"),
                  SheetLayout.Sign.filled(SheetInk.BACKGROUND, "background"),
                  SheetLayout.Sign.line(PARTING, "parting"),
                  new SheetLayout.Sign(StepSheet::ringSample, "start"))));
      String description =
          "Steps "
              + here.get(0).number()
              + " to "
              + here.get(here.size() - 1).number()
              + " of "
              + steps.size()
              + ", each with a picture of the head and what to do.";
      pages.add(
          layout.scene(
              "steps" + (page == 0 ? "" : "-" + (page + 1)),
              "Steps: " + title,
              description,
              marks));
    }
    return List.copyOf(pages);
  }

  /** As many as hold their words. */
  private int stepsOnAPage(List<Lesson.Step> steps) {
    int count = MOST_ON_A_PAGE;
    while (count > 1 && !steps.stream().allMatch(fitsIn(layout.rows(count).get(0)))) {
      count--;
    }
    return count;
  }

  private static Predicate<Lesson.Step> fitsIn(Box row) {
    return step -> words(step, row).pages() == 1;
  }

  private static List<Part> ringSample(Box box) {
    return List.of(ring(box.centre()));
  }

  private static Part ring(Point at) {
    return Part.Shape.of(Curve.circle(at, RING_MM), Ink.PAPER, PARTING);
  }

  private static final Pen PARTING = Pen.of(SheetInk.ACCENT, LineWeight.STRONG);
  private static final Pen LEVEL = Pen.of(SheetInk.ACCENT, LineWeight.MEDIUM).dashed(1.2, 0.8);

  private List<Mark> row(Lesson.Step step, Box row, Set<Integer> done) {
    List<Mark> marks = new ArrayList<>();
    List<View> views = views(step);
    double width = PICTURES_MM / views.size();
    for (int i = 0; i < views.size(); i++) {
      Box cell = new Box(row.x() + i * width, row.y() + 1.5, width, row.height() - 3);
      Frame frame =
          Frame.fitted(
                  plan.head().view(views.get(i)),
                  cell,
                  views.size() == 1 ? STRIP_MM : NARROW_STRIP_MM)
              .named("step-" + step.number());
      marks.addAll(draw(frame, step, done));
    }
    words(step, row).placed().forEach(p -> marks.add(p.mark()));
    return marks;
  }

  private static TextFlow words(Lesson.Step step, Box row) {
    double x = row.x() + PICTURES_MM + 3;
    Box column = new Box(x, row.y() + 1, row.right() - x, row.height() - 2);
    TextFlow flow = new TextFlow("step-" + step.number() + "-note", column);
    flow.heading(
        TextFlow.fitted(step.number() + "  " + step.name(), TextSize.HEADING, column.width()));
    List<PlacedFoil> foils = step.foils();
    flow.entry("foils", numbers(foils), LABEL_MM);
    flow.entry("partings", foils.get(0).shape() + ", " + step.angle(), LABEL_MM);
    flow.entry("slice", step.slice(), LABEL_MM);
    flow.entry("picks", step.picks(), LABEL_MM);
    flow.entry("background", step.background(), LABEL_MM);
    flow.entry("start", step.start(), LABEL_MM);
    flow.entry("head", step.posture(), LABEL_MM);
    flow.entry("stand", step.standing(), LABEL_MM);
    flow.entry("hands", step.hands(), LABEL_MM);
    flow.entry("why", step.why(), LABEL_MM);
    return flow;
  }

  /** Numbers in working order, runs told by their ends. */
  static String numbers(List<PlacedFoil> foils) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < foils.size(); i++) {
      int from = foils.get(i).number();
      while (i + 1 < foils.size() && foils.get(i + 1).number() == foils.get(i).number() + 1) {
        i++;
      }
      int to = foils.get(i).number();
      text.append(text.isEmpty() ? "" : ", ").append(from);
      if (to > from) {
        text.append('\u2013').append(to);
      }
    }
    return text + (foils.size() > 2 ? " (" + foils.size() + ")" : "");
  }

  /** The side that shows most of the step, and another where that shows what the first does not. */
  private List<View> views(Lesson.Step step) {
    Map<View, Map<Integer, Double>> seen = new HashMap<>();
    for (View view : View.values()) {
      Map<Integer, Double> areas = new HashMap<>();
      for (PlacedFoil foil : step.foils()) {
        DrawnFoil drawn = plan.foils().get(foil.number() - 1);
        double area = plan.head().view(view).area(drawn.border()).area();
        areas.put(foil.number(), area / foil.area().toSquareMillimetres());
      }
      seen.put(view, areas);
    }
    View first = best(seen, Map.of());
    Map<Integer, Double> already = seen.get(first);
    View second = best(seen, already);
    double gain = gain(seen.get(second), already);
    return gain / step.foils().size() > LEAST_SHARE && second != first
        ? List.of(first, second)
        : List.of(first);
  }

  private static View best(Map<View, Map<Integer, Double>> seen, Map<Integer, Double> already) {
    View best = View.BACK;
    double most = -1;
    for (View view : View.values()) {
      double gain = gain(seen.get(view), already);
      if (gain > most + 1e-9) {
        most = gain;
        best = view;
      }
    }
    return best;
  }

  private static double gain(Map<Integer, Double> areas, Map<Integer, Double> already) {
    return areas.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .mapToDouble(e -> Math.max(0, e.getValue() - already.getOrDefault(e.getKey(), 0.0)))
        .sum();
  }

  private List<Mark> draw(Frame frame, Lesson.Step step, Set<Integer> done) {
    List<Mark> marks = new ArrayList<>(frame.ground(plan.head()));
    Set<String> names = new HashSet<>();
    step.sections().forEach(s -> names.add(s.name()));
    for (DrawnPlan.Ground ground : plan.grounds()) {
      if (names.contains(ground.section().name())) {
        background(frame, ground).ifPresent(marks::add);
      }
    }
    List<DrawnFoil> fresh = new ArrayList<>();
    Map<DrawnFoil, Polygon> areas = new HashMap<>();
    Set<Integer> ours = new HashSet<>();
    step.foils().forEach(f -> ours.add(f.number()));
    for (DrawnFoil foil : plan.foils()) {
      if (!ours.contains(foil.number()) && !done.contains(foil.number())) {
        continue;
      }
      Polygon area = frame.area(foil.border());
      if (area.area() < LEAST_AREA_MM2) {
        continue;
      }
      if (ours.contains(foil.number())) {
        fresh.add(foil);
        areas.put(foil, area);
        marks.add(foil.mark(frame, area));
      } else {
        marks.add(foil.past(frame, area));
      }
    }
    List<Box> taken = new ArrayList<>();
    addAngle(frame, step, marks, taken);
    Polygon scalp = frame.area(plan.head().scalp());
    List<LabelPlacer.Wish> wishes = new ArrayList<>();
    Map<String, DrawnFoil> byLabel = new HashMap<>();
    for (DrawnFoil foil : fresh) {
      byLabel.put(foil.label(), foil);
      wishes.add(foil.wish(frame, areas.get(foil), scalp, true));
    }
    for (LabelPlacer.Placed placed :
        LabelPlacer.place(wishes, frame.strips(), taken, LABEL_GAP_MM).placed()) {
      marks.add(byLabel.get(placed.name()).number(frame, placed));
    }
    return marks;
  }

  private static Optional<Mark> background(Frame frame, DrawnPlan.Ground ground) {
    Polygon whole = frame.area(ground.whole());
    if (whole.area() < LEAST_AREA_MM2) {
      return Optional.empty();
    }
    List<Part> parts = new ArrayList<>();
    parts.add(Part.Shape.filled(whole.curve(), SheetInk.BACKGROUND));
    Polygon untouched = frame.area(ground.untouched());
    if (!untouched.isEmpty()) {
      parts.add(Part.Shape.filled(untouched.curve(), SheetInk.UNTOUCHED));
    }
    return Optional.of(
        new Mark(
            frame.id("background-" + (ground.place() + 1)),
            Role.BACKGROUND,
            Layer.SCALP,
            "Background of " + ground.section().name(),
            Map.of("section", ground.section().name()),
            parts));
  }

  /**
   * The first parting that is seen well, in the accent, a dashed level at its lower end, the angle
   * between them and the word at that end.
   */
  private void addAngle(Frame frame, Lesson.Step step, List<Mark> marks, List<Box> taken) {
    Optional<PlacedFoil> clear =
        step.foils().stream().filter(f -> facing(frame, f) > LEAST_FACING_OF_ANGLE).findFirst();
    addStart(frame, step, marks, taken);
    if (clear.isEmpty()) {
      return;
    }
    PlacedFoil first = clear.get();
    Polyline edge = Lesson.edge(first);
    List<SurfaceLoops.At> line = plan.head().line(edge);
    Curve seen = frame.line(line);
    if (seen.isEmpty()) {
      return;
    }
    List<Part> parts = new ArrayList<>();
    parts.add(Part.Shape.drawn(seen, PARTING));
    AngleMark.of(
            frame.at(plan.head().at(edge.first())), frame.at(plan.head().at(edge.last())), LEVEL)
        .ifPresent(mark -> parts.addAll(mark.parts()));
    double degrees = first.partingAngle().toDegrees();
    String label = degrees < 1 ? "level" : String.format(Locale.ROOT, "%.0f\u00b0", degrees);
    Point from = frame.at(plan.head().at(edge.first()));
    Point to = frame.at(plan.head().at(edge.last()));
    place(frame, label, AngleMark.labelSpots(from, to), taken, parts);
    if (first.lowerEnd().isPresent()) {
      Point low = from.y() > to.y() ? from : to;
      Point high = from.y() > to.y() ? to : from;
      place(frame, "lower", AngleMark.endSpots(low, high), taken, parts);
    }
    marks.add(
        new Mark(
            frame.id("angle"),
            Role.PARTING,
            Layer.NUMBERS,
            "A parting of step " + step.number() + ": " + step.angle(),
            Map.of("section", first.section()),
            parts));
  }

  /** A ring where the first parting is to be found. */
  private void addStart(Frame frame, Lesson.Step step, List<Mark> marks, List<Box> taken) {
    SurfaceLoops.At start = plan.head().at(step.startAt());
    if (frame.picture().facing(start) <= 0.02) {
      return;
    }
    Point at = frame.at(start);
    taken.add(Box.centredOn(at, 2 * RING_MM, 2 * RING_MM));
    marks.add(
        new Mark(
            frame.id("start"),
            Role.LANDMARK,
            Layer.NUMBERS,
            "Start of step " + step.number() + ": " + step.start(),
            Map.of(),
            List.of(ring(at))));
  }

  private double facing(Frame frame, PlacedFoil foil) {
    return frame.picture().facing(plan.head().at(foil.centre()));
  }

  /** A word on a plate at the first spot that is free. */
  private static void place(
      Frame frame, String text, List<Point> spots, List<Box> taken, List<Part> parts) {
    Typeface face = Typeface.shipped();
    double width = face.width(text, TextSize.SMALL) + 0.8;
    double height = face.capHeight(TextSize.SMALL) + 0.8;
    Box room =
        new Box(
            frame.cell().x(),
            frame.cell().y(),
            frame.cell().width(),
            frame.cell().height() - Frame.CAPTION_MM);
    List<Point> inside =
        spots.stream().filter(p -> room.contains(Box.centredOn(p, width, height))).toList();
    LabelPlacer.Wish wish = new LabelPlacer.Wish(text, width, height, inside, false);
    LabelPlacer.place(List.of(wish), List.of(), taken, LABEL_GAP_MM)
        .placed()
        .forEach(
            placed -> {
              taken.add(placed.box());
              parts.add(Part.Shape.filled(Curve.roundedRectangle(placed.box(), 0.7), Ink.PAPER));
              parts.add(
                  Part.Lettering.centred(
                      text, placed.box().centre(), TextSize.SMALL, SheetInk.ACCENT));
            });
  }
}
