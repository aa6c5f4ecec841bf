package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Curve;
import foilwright.drawing.Ink;
import foilwright.drawing.Layer;
import foilwright.drawing.LineWeight;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Pen;
import foilwright.drawing.Point;
import foilwright.drawing.Polygon;
import foilwright.drawing.Role;
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import foilwright.service.mix.Bowl;
import foilwright.service.schedule.Action;
import foilwright.service.schedule.FoilTask;
import foilwright.service.schedule.Schedule;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The drawing of a timeline: called-out moments, the axis, a lane for each pair of hands, a lane of
 * bowls, and a bar for each foil, packed into rows. Rows that find no room go on a further page
 * below the same lanes.
 */
final class TimelineChart {
  private static final double GUTTER_MM = 14;
  private static final double LAST_READING_MM = 4.5;
  private static final double AXIS_MM = 5.4;
  private static final double TICK_MM = 1.2;
  private static final double HANDS_CELL_MM = 4.6;
  private static final double HANDS_MM = HANDS_CELL_MM + TextFlow.LINE_MM + 0.6;
  private static final double CHECK_MM = 1.7;
  private static final double BOWL_MM = 4.9;
  private static final double BOWL_BAR_MM = 1.2;
  private static final double BETWEEN_LANES_MM = 1.5;
  private static final double LEAST_ROW_MM = 2.5;
  private static final double MOST_ROW_MM = 4.4;
  private static final double MOST_PILL_MM = 3;
  private static final double PADDING_MM = 0.3;
  private static final double CORNER_MM = 0.7;
  private static final double OUT_MM = 0.6;
  private static final double BETWEEN_BARS_MM = 1.5;

  private static final Pen FINE = Pen.of(Ink.BLACK, LineWeight.FINE);
  private static final Pen MEDIUM = Pen.of(Ink.BLACK, LineWeight.MEDIUM);
  private static final Pen STRONG = Pen.of(Ink.BLACK, LineWeight.STRONG);
  private static final Pen GRID = Pen.of(SheetInk.UNTOUCHED, LineWeight.FINE);
  private static final Pen MOMENT = Pen.of(SheetInk.QUIET, LineWeight.FINE).dashed(1.2, 0.8);
  private static final Pen NOW = Pen.of(SheetInk.ACCENT, LineWeight.MEDIUM);

  private final Timeline timeline;
  private final Schedule schedule;
  private final Clock clock;
  private final Box area;
  private final TimeAxis axis;
  private final List<String> slots;

  TimelineChart(Timeline timeline, Clock clock, Box area) {
    this.timeline = timeline;
    this.schedule = timeline.schedule();
    this.clock = clock;
    this.area = area;
    slots = slots(schedule);
    double first =
        Math.min(
            0, timeline.bowls().stream().mapToDouble(b -> b.mixedAt().toMinutes()).min().orElse(0));
    double last =
        IntStream.range(0, schedule.foils().size())
            .mapToDouble(i -> later(schedule.outBy(i), schedule.out(i)).toMinutes())
            .max()
            .orElseThrow();
    axis = TimeAxis.over(clock, first, last, area.x() + GUTTER_MM, area.right() - LAST_READING_MM);
  }

  private static Minutes later(Minutes a, Minutes b) {
    return a.compareTo(b) >= 0 ? a : b;
  }

  private static List<String> slots(Schedule schedule) {
    return List.copyOf(new TreeSet<>(schedule.foils().stream().map(FoilTask::slot).toList()));
  }

  /** What every mark of a foil knows. */
  static Map<String, String> data(Timeline timeline, int foil) {
    FoilTask task = timeline.schedule().foils().get(foil);
    Map<String, String> data = new LinkedHashMap<>();
    data.put("number", Integer.toString(task.number()));
    data.put("section", timeline.sections().get(foil).name());
    data.put("mix", task.slot());
    return data;
  }

  /** Which pair of hands places a foil. */
  static int hands(Schedule schedule, int foil) {
    return schedule.actions().stream()
        .filter(a -> a.work() == Action.Work.PLACE && a.foil() == foil)
        .mapToInt(Action::hands)
        .findFirst()
        .orElseThrow();
  }

  // Moments.

  /**
   * A moment worth calling out.
   *
   * @param called what stands at its line
   */
  record Moment(String id, String label, String reading, String called, Minutes at) {}

  /** The moments that are called out, in order. */
  static List<Moment> moments(Timeline timeline, Clock clock) {
    Schedule schedule = timeline.schedule();
    List<Moment> moments = new ArrayList<>();
    int due = first(schedule, i -> schedule.in(i).plus(schedule.foils().get(i).window().least()));
    Minutes dueAt = schedule.in(due).plus(schedule.foils().get(due).window().least());
    moments.add(moment("first-due", "first ready", "foil " + number(schedule, due), dueAt, clock));
    int by = first(schedule, schedule::outBy);
    moments.add(
        moment(
            "first-out-by",
            "first out by",
            "foil " + number(schedule, by),
            schedule.outBy(by),
            clock));
    timeline
        .lastSafe()
        .ifPresent(
            last ->
                IntStream.range(0, schedule.foils().size())
                    .filter(i -> number(schedule, i) == last)
                    .forEach(
                        i ->
                            moments.add(
                                new Moment(
                                    "last-safe",
                                    "last safe",
                                    "foil " + last + ", " + clock.text(schedule.in(i)),
                                    "last safe foil " + last,
                                    schedule.in(i)))));
    moments.add(moment("all-in", "all in", "", schedule.allIn(), clock));
    timeline
        .free()
        .ifPresent(
            gap ->
                moments.add(
                    new Moment(
                        "free-gap",
                        "free gap",
                        clock.text(gap.start())
                            + "\u2013"
                            + clock.text(gap.end())
                            + ", "
                            + whole(gap.length()),
                        "free " + whole(gap.length()),
                        gap.start())));
    moments.add(moment("all-out", "all out", "", schedule.end(), clock));
    return moments.stream().sorted(Comparator.comparing(Moment::at)).toList();
  }

  private static String whole(Minutes minutes) {
    return String.format(Locale.ROOT, "%d min", (long) Math.floor(minutes.toMinutes() + 1e-6));
  }

  private static Moment moment(String id, String label, String which, Minutes at, Clock clock) {
    String reading = (which.isEmpty() ? "" : which + ", ") + clock.text(at);
    return new Moment(id, label, reading, label + " " + clock.text(at), at);
  }

  private static int number(Schedule schedule, int foil) {
    return schedule.foils().get(foil).number();
  }

  private interface At {
    Minutes of(int foil);
  }

  private static int first(Schedule schedule, At at) {
    return IntStream.range(0, schedule.foils().size())
        .boxed()
        .min(Comparator.comparing(at::of))
        .orElseThrow();
  }

  // Pages.

  /** A foil's bar in its row. */
  private record Bar(int foil, int row) {}

  /**
   * The marks of each page.
   *
   * @param below where nothing is drawn on the last page
   */
  record Drawn(List<List<Mark>> pages, Box below) {}

  Drawn draw() {
    List<Moment> moments = moments(timeline, clock);
    List<Callouts.Placed> callouts =
        Callouts.place(
            moments.stream()
                .map(m -> new Callouts.Wish(m.id(), m.called(), axis.at(m.at().toMinutes())))
                .toList(),
            area.x(),
            area.right());
    double calloutBottom = area.y() + Callouts.rows(callouts) * TextFlow.LINE_MM + 1.2;
    double handsTop = calloutBottom + AXIS_MM + CHECK_MM;
    double bowlsTop = handsTop + schedule.hands() * HANDS_MM;
    Rows bowlRows = new Rows();
    List<Mark> bowls = bowls(bowlsTop, bowlRows);
    double foilsTop = bowlsTop + bowlRows.count() * BOWL_MM + BETWEEN_LANES_MM;
    double room = area.bottom() - AXIS_MM - foilsTop;

    Rows rows = new Rows();
    List<Bar> bars = bars(rows);
    int most = (int) Math.floor(room / LEAST_ROW_MM);
    int pages = (rows.count() + most - 1) / most;
    int perPage = (rows.count() + pages - 1) / pages;
    double rowMm = Math.min(MOST_ROW_MM, room / perPage);
    double foilsBottom = foilsTop + perPage * rowMm;

    List<List<Mark>> all = new ArrayList<>();
    for (int page = 0; page < pages; page++) {
      List<Mark> marks = new ArrayList<>();
      marks.add(grid(calloutBottom + AXIS_MM, foilsBottom));
      marks.add(axisMark("axis", calloutBottom + AXIS_MM, -1));
      marks.add(axisMark("axis-foot", foilsBottom, 1));
      marks.addAll(called(callouts, moments, calloutBottom, foilsBottom));
      marks.add(nowLine(calloutBottom + AXIS_MM, foilsBottom));
      for (int hands = 0; hands < schedule.hands(); hands++) {
        marks.addAll(hands(hands, handsTop + hands * HANDS_MM));
      }
      marks.addAll(bowls);
      if (!bowls.isEmpty()) {
        marks.add(lane("bowls-lane", "bowls", bowlsTop + BOWL_MM / 2));
      }
      marks.add(lane("foils-lane", "foils", foilsTop + rowMm / 2));
      for (Bar bar : bars) {
        if (bar.row() / perPage == page) {
          marks.addAll(foil(bar.foil(), foilsTop + (bar.row() % perPage) * rowMm, rowMm));
        }
      }
      all.add(marks);
    }
    double end = foilsBottom + AXIS_MM + BETWEEN_LANES_MM;
    return new Drawn(all, new Box(area.x(), end, area.width(), Math.max(0, area.bottom() - end)));
  }

  private List<Bar> bars(Rows rows) {
    List<Integer> byStart =
        IntStream.range(0, schedule.foils().size())
            .boxed()
            .sorted(Comparator.comparing(schedule::in))
            .toList();
    List<Bar> bars = new ArrayList<>();
    for (int foil : byStart) {
      double left = axis.at(schedule.in(foil).toMinutes());
      double right =
          Math.max(
              left + labelMm(foil),
              axis.at(later(schedule.outBy(foil), schedule.out(foil)).toMinutes()));
      bars.add(new Bar(foil, rows.next(left, right + BETWEEN_BARS_MM)));
    }
    return bars;
  }

  private Mark grid(double top, double bottom) {
    Curve.Builder lines = Curve.builder();
    for (double minutes : axis.labelled()) {
      lines.move(new Point(axis.at(minutes), top)).line(new Point(axis.at(minutes), bottom));
    }
    return Mark.plain("grid", Role.FRAME, Layer.PAPER, Part.Shape.drawn(lines.build(), GRID));
  }

  /**
   * The axis.
   *
   * @param away -1 when the readings stand above it, 1 when below
   */
  private Mark axisMark(String id, double y, int away) {
    List<Part> parts = new ArrayList<>();
    parts.add(
        Part.Shape.drawn(
            Curve.line(new Point(axis.left(), y), new Point(axis.right(), y)), MEDIUM));
    Curve.Builder ticks = Curve.builder();
    for (double minutes : axis.ticks()) {
      double x = axis.at(minutes);
      ticks.move(new Point(x, y)).line(new Point(x, y + away * TICK_MM / 2));
    }
    for (double minutes : axis.labelled()) {
      double x = axis.at(minutes);
      ticks.move(new Point(x, y)).line(new Point(x, y + away * TICK_MM));
      String text = clock.text(minutes);
      parts.add(
          Part.Lettering.centred(
              text, new Point(x, y + away * (TICK_MM + 1.9)), TextSize.SMALL, Ink.BLACK));
    }
    parts.add(Part.Shape.drawn(ticks.build(), FINE));
    return new Mark(
        id,
        Role.TIME_AXIS,
        Layer.FIGURE,
        clock.words() + ", from " + clock.text(axis.from()) + " to " + clock.text(axis.to()),
        Map.of(),
        parts);
  }

  private List<Mark> called(
      List<Callouts.Placed> callouts, List<Moment> moments, double wordsBottom, double bottom) {
    Map<String, Moment> byId =
        moments.stream().collect(Collectors.toMap(Moment::id, moment -> moment));
    List<Mark> marks = new ArrayList<>();
    for (Callouts.Placed placed : callouts) {
      Moment moment = byId.get(placed.wish().id());
      double x = placed.wish().x();
      Box box = Callouts.box(placed, wordsBottom);
      marks.add(
          new Mark(
              "moment-" + moment.id(),
              Role.DUE,
              Layer.BACKGROUND,
              moment.label() + ": " + moment.reading(),
              Map.of("minutes", minutes(moment.at())),
              List.of(
                  Part.Shape.drawn(
                      Curve.line(new Point(x, box.y()), new Point(x, wordsBottom)), MOMENT),
                  Part.Shape.drawn(
                      Curve.line(new Point(x, wordsBottom + AXIS_MM), new Point(x, bottom)),
                      MOMENT),
                  new Part.Lettering(
                      moment.called(),
                      Callouts.base(placed, wordsBottom),
                      TextSize.SMALL,
                      Ink.BLACK))));
    }
    return marks;
  }

  /** Minutes since the first parting, for pages that look them up. */
  private static String minutes(Minutes at) {
    return String.format(Locale.ROOT, "%.2f", at.toMinutes());
  }

  /** On paper it marks the first parting; a screen moves it to what its clock shows. */
  private Mark nowLine(double top, double bottom) {
    double x = axis.at(0);
    Map<String, String> data = new LinkedHashMap<>();
    data.put("minutes", "0");
    data.put("mm-per-minute", String.format(Locale.ROOT, "%.5f", axis.perMinute()));
    data.put("from", String.format(Locale.ROOT, "%.3f", axis.from()));
    data.put("to", String.format(Locale.ROOT, "%.3f", axis.to()));
    double half = TICK_MM;
    return new Mark(
        "now-line",
        Role.NOW_LINE,
        Layer.LINES,
        "First parting, at " + clock.text(0),
        data,
        List.of(
            Part.Shape.drawn(Curve.line(new Point(x, top), new Point(x, bottom)), NOW),
            Part.Shape.filled(
                Curve.polygon(
                    List.of(
                        new Point(x - half, top),
                        new Point(x + half, top),
                        new Point(x, top + 1.6 * half))),
                SheetInk.ACCENT)));
  }

  private Mark lane(String id, String words, double middle) {
    double base = middle + Typeface.shipped().capHeight(TextSize.SMALL) / 2;
    return Mark.plain(
        id,
        Role.HEADING,
        Layer.NOTES,
        new Part.Lettering(words, new Point(area.x(), base), TextSize.SMALL, SheetInk.QUIET));
  }

  // Hands.

  /** Neighbouring actions of one kind, in one section. */
  private record Run(Action.Work work, int section, List<Action> actions) {
    double start() {
      return actions.get(0).start().toMinutes();
    }

    double end() {
      return actions.get(actions.size() - 1).end().toMinutes();
    }
  }

  private List<Run> runs(int hands) {
    List<Run> runs = new ArrayList<>();
    for (Action action : schedule.actions()) {
      if (action.hands() != hands || action.start().equals(action.end())) {
        continue;
      }
      int section =
          action.work() == Action.Work.PLACE ? timeline.sections().get(action.foil()).index() : -1;
      Run last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
      boolean joins =
          last != null
              && last.work() == action.work()
              && last.section() == section
              && action.start().toMinutes() - last.end() < 0.01;
      if (joins) {
        last.actions().add(action);
      } else {
        runs.add(new Run(action.work(), section, new ArrayList<>(List.of(action))));
      }
    }
    return runs;
  }

  private List<Mark> hands(int hands, double top) {
    List<Mark> marks = new ArrayList<>();
    String prefix = "hands-" + (hands + 1);
    String words = schedule.hands() > 1 ? "hands " + (hands + 1) : "hands";
    marks.add(lane(prefix + "-lane", words, top + HANDS_CELL_MM / 2));
    double middle = top + HANDS_CELL_MM / 2;
    marks.add(
        Mark.plain(
            prefix + "-time",
            Role.HANDS,
            Layer.SCALP,
            Part.Shape.drawn(
                Curve.line(
                    new Point(axis.at(0), middle),
                    new Point(axis.at(schedule.end().toMinutes()), middle)),
                FINE)));
    List<Run> runs = runs(hands);
    for (int i = 0; i < runs.size(); i++) {
      marks.add(run(prefix + "-run-" + (i + 1), runs.get(i), top));
    }
    marks.addAll(runWords(prefix, runs, top + HANDS_CELL_MM));
    if (hands == 0) {
      marks.addAll(checks(top));
      timeline.free().ifPresent(gap -> marks.add(freeGap(gap, middle)));
    }
    return marks;
  }

  private Box box(double from, double to, double top, double height) {
    return new Box(axis.at(from), top, axis.at(to) - axis.at(from), height);
  }

  private Mark run(String id, Run run, double top) {
    Box whole = box(run.start(), run.end(), top, HANDS_CELL_MM);
    List<Part> parts = new ArrayList<>();
    switch (run.work()) {
      case BEFORE -> parts.add(Part.Shape.of(Curve.rectangle(whole), SheetInk.BACKGROUND, FINE));
      case PLACE -> {
        parts.addAll(SectionStyle.of(run.section()).parts(Polygon.of(whole)));
        separators(run, whole, FINE).ifPresent(parts::add);
      }
      default -> {
        Box lower = new Box(whole.x(), whole.centre().y(), whole.width(), whole.height() / 2);
        parts.add(Part.Shape.of(Curve.rectangle(lower), Ink.BLACK, FINE));
        separators(run, lower, Pen.of(Ink.PAPER, LineWeight.FINE)).ifPresent(parts::add);
      }
    }
    return new Mark(id, Role.HANDS, Layer.FOILS, said(run), Map.of(), parts);
  }

  private Optional<Part> separators(Run run, Box box, Pen pen) {
    Curve.Builder lines = Curve.builder();
    for (Action action : run.actions().subList(1, run.actions().size())) {
      double x = axis.at(action.start().toMinutes());
      lines.move(new Point(x, box.y())).line(new Point(x, box.bottom()));
    }
    return Optional.of(lines.build())
        .filter(curve -> !curve.isEmpty())
        .map(curve -> Part.Shape.drawn(curve, pen));
  }

  private String numbers(Run run) {
    List<Integer> numbers = run.actions().stream().map(a -> number(schedule, a.foil())).toList();
    int first = numbers.get(0);
    int last = numbers.get(numbers.size() - 1);
    boolean whole = IntStream.range(0, numbers.size()).allMatch(i -> numbers.get(i) == first + i);
    if (numbers.size() == 1) {
      return Integer.toString(first);
    }
    return whole ? first + "\u2013" + last : first + " \u2026 " + last;
  }

  private String said(Run run) {
    String what =
        switch (run.work()) {
          case BEFORE -> "Setting or mixing before foil ";
          case PLACE -> "Placing ";
          default -> "Taking out ";
        };
    return what
        + numbers(run)
        + ", "
        + clock.text(run.actions().get(0).start())
        + " to "
        + clock.text(run.actions().get(run.actions().size() - 1).end());
  }

  /** Numbers below the runs that are as wide as they. */
  private List<Mark> runWords(String prefix, List<Run> runs, double top) {
    List<Mark> marks = new ArrayList<>();
    for (Run run : runs) {
      if (run.work() == Action.Work.BEFORE) {
        continue;
      }
      String text = (run.work() == Action.Work.REMOVE ? "out " : "") + numbers(run);
      double width = Typeface.shipped().width(text, TextSize.SMALL);
      double x = (axis.at(run.start()) + axis.at(run.end())) / 2;
      if (width > axis.at(run.end()) - axis.at(run.start())) {
        continue;
      }
      Part.Lettering words =
          Part.Lettering.centred(
              text, new Point(x, top + TextFlow.LINE_MM / 2), TextSize.SMALL, Ink.BLACK);
      marks.add(
          Mark.plain(prefix + "-words-" + (marks.size() + 1), Role.NUMBER, Layer.NUMBERS, words));
    }
    return marks;
  }

  private List<Mark> checks(double top) {
    List<Mark> marks = new ArrayList<>();
    for (Timeline.Check check : timeline.checks()) {
      double from = axis.at(check.start().toMinutes());
      List<Part> parts = new ArrayList<>(checkSign(new Point(from, top - 0.2)));
      if (check.end().compareTo(check.start()) > 0) {
        Box box =
            box(
                check.start().toMinutes(),
                check.end().toMinutes(),
                top + HANDS_CELL_MM / 4,
                HANDS_CELL_MM / 2);
        parts.add(Part.Shape.of(Curve.rectangle(box), Ink.PAPER, MEDIUM));
      }
      marks.add(
          new Mark(
              "check-" + (marks.size() + 1),
              Role.HANDS,
              Layer.NUMBERS,
              "Check at " + clock.text(check.start()),
              Map.of("minutes", minutes(check.start())),
              parts));
    }
    return marks;
  }

  private static List<Part> checkSign(Point tip) {
    double half = CHECK_MM / 2;
    return List.of(
        Part.Shape.of(
            Curve.polygon(
                List.of(tip, tip.plus(-half, -CHECK_MM + 0.3), tip.plus(half, -CHECK_MM + 0.3))),
            Ink.PAPER,
            MEDIUM));
  }

  private Mark freeGap(Schedule.Wait gap, double y) {
    double left = axis.at(gap.start().toMinutes());
    double right = axis.at(gap.end().toMinutes());
    double half = HANDS_CELL_MM / 2;
    Curve.Builder ends = Curve.builder();
    ends.move(new Point(left, y - half)).line(new Point(left, y + half));
    ends.move(new Point(right, y - half)).line(new Point(right, y + half));
    ends.move(new Point(left, y)).line(new Point(right, y));
    return new Mark(
        "free-gap",
        Role.HANDS,
        Layer.NUMBERS,
        "Free from " + clock.text(gap.start()) + " to " + clock.text(gap.end()),
        Map.of(),
        List.of(Part.Shape.drawn(ends.build(), Pen.of(SheetInk.ACCENT, LineWeight.STRONG))));
  }

  // Bowls.

  private List<Mark> bowls(double top, Rows rows) {
    List<Bowl> byTime =
        timeline.bowls().stream()
            .sorted(Comparator.comparing(Bowl::mixedAt).thenComparing(Bowl::name))
            .toList();
    List<Mark> marks = new ArrayList<>();
    for (Bowl bowl : byTime) {
      String text = bowl.name() + ", before foil " + bowl.firstFoil();
      double width = Typeface.shipped().width(text, TextSize.SMALL);
      double left = axis.at(bowl.mixedAt().toMinutes());
      double good = Math.min(axis.right(), axis.at(bowl.goodUntil().toMinutes()));
      double used = Math.min(good, axis.at(bowl.neededUntil().toMinutes()));
      double textLeft = Math.min(left, axis.right() - width);
      int row = rows.next(textLeft, Math.max(good, textLeft + width) + BETWEEN_BARS_MM);
      double y = top + row * BOWL_MM;
      double bar = y + BOWL_MM - BOWL_BAR_MM - 0.5;
      double middle = bar + BOWL_BAR_MM / 2;
      Curve.Builder whisker = Curve.builder();
      whisker.move(new Point(used, middle)).line(new Point(good, middle));
      whisker.move(new Point(good, bar)).line(new Point(good, bar + BOWL_BAR_MM));
      List<Part> parts = new ArrayList<>();
      parts.add(
          Part.Shape.of(
              Curve.rectangle(new Box(left, bar, Math.max(0.3, used - left), BOWL_BAR_MM)),
              SheetInk.BACKGROUND,
              FINE));
      parts.add(Part.Shape.drawn(whisker.build(), MEDIUM));
      Part.Lettering words =
          new Part.Lettering(text, new Point(textLeft, bar - 0.6), TextSize.SMALL, Ink.BLACK);
      parts.add(Part.Shape.filled(Curve.rectangle(words.bounds().grown(0.4)), Ink.PAPER));
      parts.add(words);
      Map<String, String> data = new LinkedHashMap<>();
      data.put("bowl", bowl.name());
      data.put("mix", bowl.slot());
      data.put("number", Integer.toString(bowl.firstFoil()));
      marks.add(
          new Mark(
              "bowl-" + (marks.size() + 1),
              Role.BOWL,
              Layer.NUMBERS,
              "Bowl "
                  + bowl.name()
                  + ": mix at "
                  + clock.text(bowl.mixedAt())
                  + ", before foil "
                  + bowl.firstFoil()
                  + "; good until "
                  + clock.text(bowl.goodUntil()),
              data,
              parts));
    }
    return marks;
  }

  // Foils.

  private String label(int foil) {
    FoilTask task = schedule.foils().get(foil);
    return task.number() + (slots.indexOf(task.slot()) > 0 ? task.slot() : "");
  }

  private double labelMm(int foil) {
    return Typeface.shipped().width(label(foil), TextSize.SMALL) + 2 * PADDING_MM;
  }

  private List<Mark> foil(int i, double top, double rowMm) {
    FoilTask task = schedule.foils().get(i);
    SectionStyle style = SectionStyle.of(timeline.sections().get(i).index());
    double in = schedule.in(i).toMinutes();
    double due = in + task.window().least().toMinutes();
    double outBy = schedule.outBy(i).toMinutes();
    double out = schedule.out(i).toMinutes();
    double clear = 0.15;
    double pill = Math.min(MOST_PILL_MM, rowMm - 0.1);
    double middle = top + rowMm / 2;
    Box window = box(due, outBy, top + clear, rowMm - 2 * clear);
    Curve by =
        Curve.line(
            new Point(window.right(), window.y()), new Point(window.right(), window.bottom()));
    List<Part> parts = new ArrayList<>();
    if (window.width() > 0) {
      parts.add(Part.Shape.filled(Curve.rectangle(window), SheetInk.UNTOUCHED));
    }
    parts.add(Part.Shape.drawn(by, MEDIUM));
    double barMm = rowMm * 0.46;
    parts.addAll(style.parts(Polygon.of(box(in, out, middle - barMm / 2, barMm)), LineWeight.FINE));
    double end = axis.at(out);
    Box cap = new Box(end - OUT_MM, middle - 0.38 * rowMm, OUT_MM, 0.76 * rowMm);
    parts.add(Part.Shape.filled(Curve.rectangle(cap), Ink.BLACK));
    boolean late = out > outBy + 1e-6;
    if (late) {
      parts.add(
          Part.Shape.drawn(Curve.rectangle(box(outBy, out, middle - barMm / 2, barMm)), STRONG));
    }
    String words =
        "Foil "
            + task.number()
            + ", "
            + timeline.sections().get(i).name()
            + ", mix "
            + task.slot()
            + ": in at "
            + clock.text(in)
            + ", due from "
            + clock.text(due)
            + ", out by "
            + clock.text(outBy)
            + ", planned out at "
            + clock.text(out)
            + (late ? ", over its time" : "");
    Box plate = new Box(axis.at(in), middle - pill / 2, labelMm(i), pill);
    return List.of(
        new Mark("foil-" + task.number(), Role.FOIL, Layer.FOILS, words, data(timeline, i), parts),
        new Mark(
            "number-" + task.number(),
            Role.NUMBER,
            Layer.NUMBERS,
            "",
            data(timeline, i),
            List.of(
                Part.Shape.filled(Curve.roundedRectangle(plate, CORNER_MM), style.tint()),
                Part.Lettering.centred(label(i), plate.centre(), TextSize.SMALL, Ink.BLACK))));
  }

  /** What the signs of the drawing mean. */
  static List<SheetLayout.Sign> signs() {
    return List.of(
        SheetLayout.Sign.filled(SheetInk.BACKGROUND, "setting, mixing"),
        new SheetLayout.Sign(
            box ->
                List.of(
                    Part.Shape.filled(
                        Curve.rectangle(new Box(box.x(), box.centre().y() - 0.8, box.width(), 1.6)),
                        Ink.BLACK)),
            "taking out"),
        new SheetLayout.Sign(
            box -> checkSign(new Point(box.centre().x(), box.bottom() - 0.3)), "check"),
        new SheetLayout.Sign(
            box ->
                List.of(
                    Part.Shape.filled(Curve.rectangle(box), SheetInk.UNTOUCHED),
                    Part.Shape.drawn(
                        Curve.line(
                            new Point(box.right(), box.y()), new Point(box.right(), box.bottom())),
                        MEDIUM)),
            "window, ends at out by"),
        SheetLayout.Sign.line(NOW, "first parting"));
  }
}
