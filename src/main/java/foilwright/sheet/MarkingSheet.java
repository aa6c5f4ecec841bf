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
import foilwright.drawing.TextSize;
import foilwright.placement.PlacedFoil;
import foilwright.service.Tolerances;
import foilwright.service.marking.Criterion;
import foilwright.service.marking.MarkedAttempt;
import foilwright.service.marking.Marking;
import foilwright.service.marking.Score;
import foilwright.service.marking.Trend;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Marking of practice work: a table with the planned values and a box for each measured one; the
 * same filled in and scored, with what is off drawn on the head; and what a class has in common.
 */
public final class MarkingSheet {
  private static final double LINE_MM = 6.2;
  private static final double FOILS_MM = 30;
  private static final double PLANNED_MM = 15;
  private static final double OFF_LABEL_MM = 17;
  private static final double LEAST_AREA_MM2 = 0.4;
  private static final double LABEL_GAP_MM = 0.3;
  private static final Pen FINE = Pen.of(SheetInk.QUIET, LineWeight.FINE);
  private static final Pen BOX = Pen.of(Ink.BLACK, LineWeight.FINE);
  private static final Pen OFF = Pen.of(Ink.BLACK, LineWeight.STRONG);
  private static final Ink OFF_GROUND = SheetInk.ACCENT.towards(Ink.PAPER, 0.72);

  private final DrawnPlan plan;
  private final Tolerances tolerances;
  private final Paper paper;

  /** The foils of one slice: they share their partings. */
  private record Slice(String section, int row, List<PlacedFoil> foils) {}

  private MarkingSheet(DrawnPlan plan, Tolerances tolerances, Paper paper) {
    this.plan = plan;
    this.tolerances = tolerances;
    this.paper = paper;
  }

  /** The table with empty boxes, a line for each slice. Paper upright. */
  public static List<Scene> blank(
      DrawnPlan plan, Tolerances tolerances, String title, String subtitle, Paper paper) {
    return new MarkingSheet(plan, tolerances, paper)
        .table("marking", title + ": marking", subtitle, Optional.empty());
  }

  /** The table filled in and scored, and then what is off on the head. */
  public static List<Scene> scored(
      DrawnPlan plan, Tolerances tolerances, MarkedAttempt marked, String title, Paper paper) {
    MarkingSheet sheet = new MarkingSheet(plan, tolerances, paper);
    String who = marked.attempt().learner();
    List<Scene> pages =
        new ArrayList<>(sheet.table("scored", title + ": scored", who, Optional.of(marked)));
    pages.addAll(sheet.head(title, who, marked));
    return List.copyOf(pages);
  }

  /** What the attempts of a class have in common, a chart for each criterion. Paper upright. */
  public static Scene trends(
      List<MarkedAttempt> marked, String title, String subtitle, Paper paper) {
    return new ClassChart(PageLayout.upright(paper)).scene(marked, title, subtitle);
  }

  private List<Slice> slices() {
    Map<String, Slice> slices = new LinkedHashMap<>();
    for (PlacedFoil foil : plan.placement().foils()) {
      slices
          .computeIfAbsent(
              foil.section() + "/" + foil.row(),
              k -> new Slice(foil.section(), foil.row(), new ArrayList<>()))
          .foils()
          .add(foil);
    }
    List<Slice> ordered = new ArrayList<>(slices.values());
    Map<String, Integer> firsts = new HashMap<>();
    ordered.forEach(s -> firsts.merge(s.section(), s.foils().get(0).number(), Math::min));
    ordered.sort(
        Comparator.comparing((Slice s) -> firsts.get(s.section())).thenComparing(Slice::row));
    return ordered;
  }

  private List<Scene> table(
      String id, String title, String subtitle, Optional<MarkedAttempt> marked) {
    PageLayout layout = PageLayout.upright(paper);
    Table table = new Table(layout, marked);
    String section = "";
    for (Slice slice : slices()) {
      if (!slice.section().equals(section)) {
        section = slice.section();
        table.section(section);
      }
      table.line(slice);
    }
    table.sides();
    List<Scene> scenes = new ArrayList<>();
    int count = table.pages.size();
    for (int page = 0; page < count; page++) {
      String words = subtitle + (count > 1 ? ", page " + (page + 1) + " of " + count : "");
      List<Mark> marks = new ArrayList<>(table.pages.get(page));
      marks.addAll(layout.titles(title, words));
      marks.add(layout.scaleBox());
      scenes.add(
          layout.scene(
              id + (page == 0 ? "" : "-" + (page + 1)),
              title,
              "Planned values of each slice with the teacher's tolerances and "
                  + (marked.isPresent() ? "what was measured." : "boxes for what is measured."),
              marks));
    }
    return List.copyOf(scenes);
  }

  private static String number(double value) {
    return Wording.plain(value);
  }

  private static String signed(double error) {
    return String.format(Locale.ROOT, "%+.1f", error == 0 ? 0.0 : error).replace('-', '\u2212');
  }

  /** A measured value to a tenth, without a needless zero. */
  private static String tenth(double value) {
    double tenth = Math.rint(value * 10) / 10;
    return tenth == Math.rint(tenth)
        ? String.format(Locale.ROOT, "%.0f", tenth)
        : String.format(Locale.ROOT, "%.1f", tenth);
  }

  /** Sets lines one below another, on as many pages as it takes; scratch space of one table. */
  private final class Table {
    private final Box body;
    private final Map<Integer, Map<Criterion, Score>> scores = new HashMap<>();
    private final Optional<MarkedAttempt> marked;
    private final List<List<Mark>> pages = new ArrayList<>();
    private double y;
    private int count;

    Table(PageLayout layout, Optional<MarkedAttempt> marked) {
      this.body = layout.body();
      this.marked = marked;
      marked.ifPresent(
          m ->
              m.scores()
                  .forEach(
                      s ->
                          s.foil()
                              .ifPresent(
                                  foil ->
                                      scores
                                          .computeIfAbsent(foil, k -> new HashMap<>())
                                          .put(s.criterion(), s))));
      newPage();
      opening();
    }

    private void newPage() {
      pages.add(new ArrayList<>());
      y = body.y();
      if (pages.size() > 1) {
        heads();
      }
    }

    private void add(Role role, String title, List<Part> parts) {
      count++;
      pages
          .get(pages.size() - 1)
          .add(new Mark("line-" + count, role, Layer.NOTES, title, Map.of(), parts));
    }

    private Part text(String words, double x, Ink ink) {
      return new Part.Lettering(words, new Point(x, y + LINE_MM - 1.9), TextSize.SMALL, ink);
    }

    private void opening() {
      TextFlow flow = new TextFlow("opening", new Box(body.x(), y, body.width(), 60));
      List<String> passes = new ArrayList<>();
      for (Criterion criterion : Marking.criteriaAtAFoil()) {
        passes.add(
            criterion.words()
                + (criterion == Criterion.STRAIGHT ? " within " : " \u00b1")
                + number(criterion.allowed(tolerances))
                + " "
                + criterion.unit());
      }
      passes.add(
          "foils left and right as planned \u00b1"
              + number(Criterion.FOILS_BETWEEN_SIDES.allowed(tolerances)));
      flow.paragraph("Passes: " + String.join(", ", passes) + ".");
      marked.ifPresentOrElse(
          m -> flow.paragraph(summary(m)),
          () ->
              flow.paragraph(
                  "Measure one foil of each slice in its middle and write the value in its box;"
                      + " the foil's number stands at the left."));
      flow.placed().forEach(p -> pages.get(0).add(p.mark()));
      y = flow.y() + 1;
      heads();
    }

    private static String summary(MarkedAttempt m) {
      String unknown =
          m.unknown().isEmpty()
              ? ""
              : " The plan has no foil "
                  + String.join(", ", m.unknown().stream().map(n -> Integer.toString(n)).toList())
                  + ".";
      return m.within()
          + " of "
          + m.scores().size()
          + " values pass; strong boxes are off, with the error after the value."
          + unknown;
    }

    private double column() {
      return (body.width() - FOILS_MM) / Marking.criteriaAtAFoil().size();
    }

    private void heads() {
      List<Part> parts = new ArrayList<>();
      parts.add(text("foils", body.x(), SheetInk.QUIET));
      double x = body.x() + FOILS_MM;
      for (Criterion criterion : Marking.criteriaAtAFoil()) {
        parts.add(text(criterion.words() + ", " + criterion.unit(), x, SheetInk.QUIET));
        x += column();
      }
      y += LINE_MM;
      parts.add(
          Part.Shape.drawn(Curve.line(new Point(body.x(), y), new Point(body.right(), y)), FINE));
      add(Role.HEADING, "", parts);
    }

    void section(String name) {
      if (y + 3 * LINE_MM > body.bottom()) {
        newPage();
      }
      y += 1;
      add(
          Role.HEADING,
          "",
          List.of(
              new Part.Lettering(
                  TextFlow.fitted(name, TextSize.HEADING, body.width()),
                  new Point(body.x(), y + LINE_MM - 1.7),
                  TextSize.HEADING,
                  Ink.BLACK)));
      y += LINE_MM;
    }

    void line(Slice slice) {
      if (y + LINE_MM > body.bottom()) {
        newPage();
      }
      List<Part> parts = new ArrayList<>();
      parts.add(
          text(
              TextFlow.fitted(StepSheet.numbers(slice.foils()), TextSize.SMALL, FOILS_MM - 1),
              body.x(),
              Ink.BLACK));
      double x = body.x() + FOILS_MM;
      for (Criterion criterion : Marking.criteriaAtAFoil()) {
        Optional<Score> score =
            slice.foils().stream()
                .map(f -> scores.getOrDefault(f.number(), Map.of()).get(criterion))
                .filter(Objects::nonNull)
                .findFirst();
        PlacedFoil foil =
            score
                .flatMap(
                    s ->
                        slice.foils().stream()
                            .filter(f -> f.number() == s.foil().orElse(0))
                            .findFirst())
                .orElse(slice.foils().get(slice.foils().size() / 2));
        Optional<Double> planned = Marking.planned(foil, criterion);
        if (planned.isPresent()) {
          parts.addAll(cell(x, criterion, planned.get(), score));
        }
        x += column();
      }
      add(Role.NOTE, "", parts);
      y += LINE_MM;
    }

    private List<Part> cell(double x, Criterion criterion, double planned, Optional<Score> score) {
      List<Part> parts = new ArrayList<>();
      if (criterion != Criterion.STRAIGHT) {
        parts.add(text(number(planned), x, Ink.BLACK));
      }
      Box box = new Box(x + PLANNED_MM, y + 0.6, column() - PLANNED_MM - 2, LINE_MM - 1.2);
      boolean off = score.isPresent() && !score.get().isWithin();
      parts.add(
          off
              ? Part.Shape.of(Curve.rectangle(box), OFF_GROUND, OFF)
              : Part.Shape.drawn(Curve.rectangle(box), BOX));
      score.ifPresent(
          s ->
              parts.add(
                  Part.Lettering.centred(
                      tenth(s.measured()) + (off ? "  " + signed(s.error()) : ""),
                      box.centre(),
                      TextSize.SMALL,
                      Ink.BLACK)));
      return parts;
    }

    /** Foils counted on each side, where the plan has both sides. */
    void sides() {
      if (y + 2 * LINE_MM > body.bottom()) {
        newPage();
      }
      y += 2;
      List<Part> parts = new ArrayList<>();
      double x = body.x();
      for (String side : List.of("left", "right")) {
        long planned =
            plan.placement().foils().stream().filter(f -> f.side().words().equals(side)).count();
        parts.add(text("foils " + side + ": planned " + planned, x, Ink.BLACK));
        Box box = new Box(x + 48, y + 0.6, 18, LINE_MM - 1.2);
        parts.add(Part.Shape.drawn(Curve.rectangle(box), BOX));
        marked
            .map(m -> side.equals("left") ? m.attempt().foilsLeft() : m.attempt().foilsRight())
            .ifPresent(
                value ->
                    value.ifPresent(
                        n ->
                            parts.add(
                                Part.Lettering.centred(
                                    Integer.toString(n),
                                    box.centre(),
                                    TextSize.SMALL,
                                    Ink.BLACK))));
        x += 76;
      }
      add(Role.NOTE, "", parts);
      y += LINE_MM;
    }
  }

  /** Foils that were measured on the head: those that pass plain, those that are off stand out. */
  private List<Scene> head(String title, String who, MarkedAttempt marked) {
    SheetLayout layout = new SheetLayout(paper);
    Map<Integer, List<Score>> byFoil = new TreeMap<>();
    marked
        .scores()
        .forEach(
            s -> s.foil().ifPresent(n -> byFoil.computeIfAbsent(n, k -> new ArrayList<>()).add(s)));
    TextFlow flow = layout.words();
    flow.heading(marked.within() + " of " + marked.scores().size() + " pass");
    List<Score> off =
        byFoil.values().stream().flatMap(List::stream).filter(s -> !s.isWithin()).toList();
    for (Score s : off) {
      String error = signed(s.error()) + " " + s.criterion().unit();
      flow.entry(
          "foil " + s.foil().orElseThrow(), s.criterion().words() + " " + error, OFF_LABEL_MM);
    }
    if (off.isEmpty()) {
      flow.paragraph("Nothing measured at a foil is off.");
    }
    List<Scene> pages = new ArrayList<>();
    for (int page = 0; page < flow.pages(); page++) {
      int here = page;
      List<Mark> marks =
          new ArrayList<>(
              layout.titles(
                  title + ": where it is off", who + (page > 0 ? ", page " + (page + 1) : "")));
      List<Frame> frames =
          page == 0 ? layout.frames(plan.head()) : List.of(layout.large(plan.head().flat()));
      List<Box> taken = new ArrayList<>();
      frames.forEach(frame -> draw(frame, byFoil, taken, marks));
      flow.placed().stream().filter(p -> p.page() == here).forEach(p -> marks.add(p.mark()));
      marks.add(layout.scaleBox());
      marks.addAll(
          layout.signs(
              List.of(
                  new SheetLayout.Sign(MarkingSheet::offSample, "off"),
                  SheetLayout.Sign.filled(SheetInk.BACKGROUND, "passes"),
                  SheetLayout.Sign.filled(SheetInk.UNTOUCHED, "not measured")),
              SheetLayout.unrolledNote(plan.head())));
      pages.add(
          layout.scene(
              "where-off" + (page == 0 ? "" : "-" + (page + 1)),
              "Where it is off: " + title,
              "The measured foils on the head: "
                  + marked.within()
                  + " of "
                  + marked.scores().size()
                  + " values pass.",
              marks));
    }
    return List.copyOf(pages);
  }

  private void draw(
      Frame frame, Map<Integer, List<Score>> byFoil, List<Box> taken, List<Mark> marks) {
    marks.addAll(frame.ground(plan.head()));
    Map<String, DrawnFoil> byLabel = new HashMap<>();
    List<LabelPlacer.Wish> wishes = new ArrayList<>();
    Polygon scalp = frame.area(plan.head().scalp());
    for (DrawnFoil foil : plan.foils()) {
      Polygon area = frame.area(foil.border());
      if (area.area() < LEAST_AREA_MM2) {
        continue;
      }
      List<Score> scores = byFoil.getOrDefault(foil.number(), List.of());
      boolean off = scores.stream().anyMatch(s -> !s.isWithin());
      marks.add(strip(frame, foil, area, scores, off));
      if (off) {
        byLabel.put(foil.label(), foil);
        wishes.add(foil.wish(frame, area, scalp, frame.picture() instanceof FlatMap));
      }
    }
    for (LabelPlacer.Placed placed :
        LabelPlacer.place(wishes, frame.strips(), taken, LABEL_GAP_MM).placed()) {
      taken.add(placed.box());
      marks.add(byLabel.get(placed.name()).plainNumber(frame, placed));
    }
  }

  private static List<Part> offSample(Box box) {
    return List.of(Part.Shape.of(Curve.rectangle(box), OFF_GROUND, OFF));
  }

  private static Mark strip(
      Frame frame, DrawnFoil foil, Polygon area, List<Score> scores, boolean off) {
    StringBuilder words = new StringBuilder("Foil " + foil.number());
    for (Score score : scores) {
      words
          .append(", ")
          .append(score.criterion().words())
          .append(' ')
          .append(signed(score.error()))
          .append(' ')
          .append(score.criterion().unit())
          .append(score.isWithin() ? "" : ", off");
    }
    Ink ground = off ? OFF_GROUND : scores.isEmpty() ? SheetInk.UNTOUCHED : SheetInk.BACKGROUND;
    return new Mark(
        frame.id("foil-" + foil.number()),
        Role.FOIL,
        off ? Layer.LINES : Layer.FOILS,
        scores.isEmpty() ? "" : words.toString(),
        Map.of("number", Integer.toString(foil.number())),
        List.of(Part.Shape.of(area.curve(), ground, off ? OFF : BOX)));
  }

  /** Errors by place in the working order, one chart below another. */
  private static final class ClassChart {
    private static final double LEFT_MM = 22;
    private static final double WORDS_MM = 9;
    private final PageLayout layout;

    ClassChart(PageLayout layout) {
      this.layout = layout;
    }

    Scene scene(List<MarkedAttempt> marked, String title, String subtitle) {
      List<Mark> marks =
          new ArrayList<>(
              layout.titles(
                  title + ": class",
                  subtitle + (subtitle.isBlank() ? "" : ", ") + attempts(marked)));
      List<Trend> trends = Marking.trends(marked);
      List<Box> rows = layout.rows(Marking.criteriaAtAFoil().size());
      for (int i = 0; i < trends.size(); i++) {
        chart(rows.get(i), trends.get(i), marked, marks);
      }
      marks.add(layout.scaleBox());
      marks.addAll(
          layout.signs(
              List.of(
                  SheetLayout.Sign.filled(SheetInk.UNTOUCHED, "passes"),
                  SheetLayout.Sign.line(Pen.of(SheetInk.ACCENT, LineWeight.STRONG), "drift"))));
      return layout.scene(
          "class",
          "Class: " + title,
          "Errors of "
              + attempts(marked)
              + " by the foil's place in the working order. "
              + String.join(". ", trends.stream().map(Trend::words).toList()),
          marks);
    }

    private static String attempts(List<MarkedAttempt> marked) {
      return marked.size() == 1 ? "1 attempt" : marked.size() + " attempts";
    }

    private static void chart(Box row, Trend trend, List<MarkedAttempt> marked, List<Mark> marks) {
      String id = "chart-" + trend.criterion().key();
      List<Score> scores =
          marked.stream()
              .flatMap(m -> m.scores().stream())
              .filter(s -> s.criterion() == trend.criterion())
              .toList();
      double most =
          1.15
              * Math.max(
                  1.4 * trend.allowed(),
                  scores.stream().mapToDouble(s -> Math.abs(s.error())).max().orElse(1));
      int last = scores.stream().mapToInt(s -> s.foil().orElse(1)).max().orElse(1);
      int first = scores.stream().mapToInt(s -> s.foil().orElse(1)).min().orElse(1);
      Box plot =
          new Box(
              row.x() + LEFT_MM,
              row.y() + WORDS_MM,
              row.width() - LEFT_MM - 2,
              row.height() - WORDS_MM - 8);
      marks.add(
          Mark.plain(
              id + "-words",
              Role.HEADING,
              Layer.NOTES,
              new Part.Lettering(
                  TextFlow.fitted(
                      trend.words().replace(" -", " \u2212"), TextSize.SMALL, row.width()),
                  new Point(row.x(), row.y() + 5),
                  TextSize.SMALL,
                  Ink.BLACK)));
      double zero = plot.centre().y();
      double scale = plot.height() / 2 / most;
      double reach = scale * trend.allowed();
      List<Part> ground = new ArrayList<>();
      ground.add(
          Part.Shape.filled(
              Curve.rectangle(new Box(plot.x(), zero - reach, plot.width(), 2 * reach)),
              SheetInk.UNTOUCHED));
      ground.add(
          Part.Shape.drawn(
              Curve.line(new Point(plot.x(), zero), new Point(plot.right(), zero)), FINE));
      ground.add(Part.Shape.drawn(Curve.rectangle(plot), FINE));
      String unit = " " + trend.criterion().unit();
      label(ground, "0", plot.x() - 1.5, zero);
      label(ground, "+" + number(trend.allowed()) + unit, plot.x() - 1.5, zero - reach);
      label(ground, "\u2212" + number(trend.allowed()) + unit, plot.x() - 1.5, zero + reach);
      double base = plot.bottom() + 4;
      ground.add(
          new Part.Lettering(
              "foil " + first, new Point(plot.x(), base), TextSize.SMALL, SheetInk.QUIET));
      if (last > first) {
        ground.add(
            Part.Lettering.endingAt(
                "foil " + last, new Point(plot.right(), base), TextSize.SMALL, SheetInk.QUIET));
      }
      marks.add(Mark.plain(id + "-ground", Role.FRAME, Layer.PAPER, ground.toArray(Part[]::new)));
      double span = Math.max(1, last - first);
      List<Part> dots = new ArrayList<>();
      for (Score score : scores) {
        double x = plot.x() + 3 + (plot.width() - 6) * (score.foil().orElse(first) - first) / span;
        Curve dot = Curve.circle(new Point(x, zero - scale * score.error()), 0.9);
        dots.add(
            score.isWithin()
                ? Part.Shape.of(dot, Ink.PAPER, Pen.of(Ink.BLACK, LineWeight.MEDIUM))
                : Part.Shape.filled(dot, Ink.BLACK));
      }
      marks.add(
          new Mark(
              id + "-errors",
              Role.NOTE,
              Layer.FOILS,
              trend.words(),
              Map.of("criterion", trend.criterion().key()),
              dots));
      if (last > first) {
        marks.add(
            Mark.plain(
                id + "-drift",
                Role.LANDMARK,
                Layer.LINES,
                Part.Shape.drawn(
                    Curve.line(
                        new Point(plot.x() + 3, zero - scale * trend.atFirst()),
                        new Point(plot.right() - 3, zero - scale * trend.atLast())),
                    Pen.of(SheetInk.ACCENT, LineWeight.STRONG))));
      }
    }

    private static void label(List<Part> parts, String text, double x, double y) {
      parts.add(
          Part.Lettering.endingAt(text, new Point(x, y + 1.1), TextSize.SMALL, SheetInk.QUIET));
    }
  }
}
