package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Layer;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Point;
import foilwright.drawing.Polygon;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.TextSize;
import foilwright.service.schedule.FoilTask;
import foilwright.service.schedule.Schedule;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The timeline for pacing: what the hands do and what the chemistry does over one axis of minutes,
 * then a table of every foil's times with room to write down the real ones.
 */
public final class TimelineSheet {
  private static final double BETWEEN_TABLES_MM = 4;
  private static final double LEAST_ROW_MM = 4.1;
  private static final double MOST_ROW_MM = 5.6;

  /** The least that takes handwriting without care. */
  private static final double LEAST_HANDY_ROW_MM = 4.6;

  private static final double NOTE_MM = 5.5;
  private static final double MOST_SECTION_MM = 45;
  private static final double LEAST_REMARK_MM = 20;
  private static final double CHART_MARGIN_MM = 1.5;

  /** More than any chart is high. */
  private static final double ENOUGH_MM = 5000;

  private static final String REMARK = "remark";

  private final Timeline timeline;
  private final MapNotes notes;
  private final SheetLayout layout;
  private final Clock clock;

  private TimelineSheet(Timeline timeline, MapNotes notes, Paper paper) {
    this.timeline = timeline;
    this.notes = notes;
    this.layout = new SheetLayout(paper);
    this.clock = new Clock(timeline.beforeFirstParting(), timeline.start());
  }

  /** The pages: the drawing on one or more, then the table. */
  public static List<Scene> build(Timeline timeline, MapNotes notes, Paper paper) {
    return new TimelineSheet(timeline, notes, paper).pages();
  }

  /**
   * The drawing alone, as high as it needs to be, for a screen that shows words and signs in its
   * own way.
   */
  public static Scene chart(Timeline timeline, double widthMm) {
    Clock clock = new Clock(timeline.beforeFirstParting(), timeline.start());
    Box area = new Box(CHART_MARGIN_MM, CHART_MARGIN_MM, widthMm - 2 * CHART_MARGIN_MM, ENOUGH_MM);
    TimelineChart.Drawn chart = new TimelineChart(timeline, clock, area).draw();
    Schedule schedule = timeline.schedule();
    return new Scene(
        "clock",
        "Clock",
        schedule.foils().size()
            + " foils, all in at "
            + clock.text(schedule.allIn())
            + " and all out at "
            + clock.text(schedule.end())
            + ".",
        widthMm,
        chart.below().y() + CHART_MARGIN_MM,
        chart.pages().get(0));
  }

  private List<Scene> pages() {
    TimelineChart.Drawn chart = new TimelineChart(timeline, clock, layout.pictures()).draw();
    List<List<Mark>> drawn = chart.pages();
    boolean below = tableFits(chart.below());
    if (below) {
      drawn.get(drawn.size() - 1).addAll(tableBelow(chart.below()));
    }
    TextFlow flow = words();
    while (drawn.size() < flow.pages()) {
      drawn.add(new ArrayList<>());
    }
    flow.placed().forEach(p -> drawn.get(p.page()).add(p.mark()));
    List<List<Mark>> tables = below ? List.of() : tables();
    int count = drawn.size() + tables.size();
    List<Scene> scenes = new ArrayList<>();
    for (List<Mark> page : drawn) {
      page.addAll(
          layout.titles(
              notes.title(), SheetLayout.subtitle(notes.subtitle(), scenes.size(), count)));
      page.addAll(layout.signs(TimelineChart.signs(), clock.words() + USUAL_DAY));
      page.add(layout.scaleBox());
      scenes.add(scene(scenes.size(), count, page));
    }
    for (List<Mark> page : tables) {
      page.addAll(
          layout.titles(
              notes.title(),
              SheetLayout.subtitle(notes.subtitle(), scenes.size(), count),
              layout.whole()));
      scenes.add(scene(scenes.size(), count, page));
    }
    return List.copyOf(scenes);
  }

  private static final String USUAL_DAY =
      ", as a clock shows them, on a usual day at this pace. The maker's sheet comes first.";

  private Scene scene(int page, int of, List<Mark> marks) {
    Schedule schedule = timeline.schedule();
    return layout.scene(
        "timeline" + (page == 0 ? "" : "-" + (page + 1)),
        "Timeline: " + notes.title() + (of > 1 ? ", page " + (page + 1) : ""),
        schedule.foils().size()
            + " foils, all in at "
            + clock.text(schedule.allIn())
            + " and all out at "
            + clock.text(schedule.end())
            + ": what hands and chemistry do, and the times of every foil.",
        marks);
  }

  private TextFlow words() {
    TextFlow flow = layout.words();
    flow.heading("Totals");
    notes.totals().forEach(total -> flow.figure(total.label(), total.value()));
    flow.heading("Moments");
    TimelineChart.moments(timeline, clock)
        .forEach(moment -> flow.figure(moment.label(), moment.reading()));
    flow.heading("Sections");
    sections()
        .forEach(
            (index, name) ->
                flow.legend(box -> SectionStyle.of(index).parts(Polygon.of(box)), name));
    flow.heading("Before you start");
    notes.cautions().forEach(flow::paragraph);
    return flow;
  }

  /** Names by index, in working order. */
  private Map<Integer, String> sections() {
    Map<Integer, String> names = new LinkedHashMap<>();
    timeline
        .sections()
        .forEach(
            s ->
                names.merge(
                    s.index(),
                    s.name(),
                    (all, name) ->
                        List.of(all.split(", ", -1)).contains(name) ? all : all + ", " + name));
    return names;
  }

  // The table.

  private boolean tableFits(Box area) {
    double head = table(area.x(), area.width(), LEAST_HANDY_ROW_MM).headMm();
    return area.height() >= head + timeline.schedule().foils().size() * LEAST_HANDY_ROW_MM;
  }

  /** The whole table in one column. */
  private List<Mark> tableBelow(Box area) {
    int foils = timeline.schedule().foils().size();
    double head = table(area.x(), area.width(), MOST_ROW_MM).headMm();
    double rowMm = Math.min(MOST_ROW_MM, (area.height() - head) / foils);
    double top = area.bottom() - head - foils * rowMm;
    return tablePart(new Box(area.x(), top, area.width(), area.bottom() - top), 1, 0, foils, rowMm);
  }

  private List<Mark> tablePart(Box area, int part, int first, int last, double rowMm) {
    Table table = table(area.x(), area.width(), rowMm);
    List<Mark> marks = new ArrayList<>();
    marks.add(table.head("table-head-" + part, area.y()));
    for (int foil = first; foil < last; foil++) {
      double top = area.y() + table.headMm() + (foil - first) * rowMm;
      marks.add(table.row(row(foil, foil > first, table.columns().size()), top));
    }
    return marks;
  }

  private List<List<Mark>> tables() {
    Box area = layout.whole();
    double width = (area.width() - BETWEEN_TABLES_MM) / 2;
    double head = table(area.x(), width, MOST_ROW_MM).headMm();
    double room = area.height() - head - NOTE_MM;
    int foils = timeline.schedule().foils().size();
    int most = 2 * (int) Math.floor(room / LEAST_ROW_MM);
    int pages = (foils + most - 1) / most;
    int perTable = (int) Math.ceil(foils / (2.0 * pages));
    double rowMm = Math.min(MOST_ROW_MM, room / perTable);
    List<List<Mark>> all = new ArrayList<>();
    for (int page = 0; page < pages; page++) {
      List<Mark> marks = new ArrayList<>();
      for (int side = 0; side < 2; side++) {
        int first = (2 * page + side) * perTable;
        int last = Math.min(foils, first + perTable);
        if (first < last) {
          double x = area.x() + side * (width + BETWEEN_TABLES_MM);
          Box half = new Box(x, area.y(), width, area.height());
          marks.addAll(tablePart(half, side + 1, first, last, rowMm));
        }
      }
      marks.add(
          Mark.plain(
              "table-note",
              Role.NOTE,
              Layer.NOTES,
              new Part.Lettering(
                  TextFlow.fitted(TABLE_NOTE, TextSize.SMALL, area.width()),
                  new Point(area.x(), area.bottom()),
                  TextSize.SMALL,
                  SheetInk.QUIET)));
      all.add(marks);
    }
    return all;
  }

  private static final String TABLE_NOTE =
      "Due from and out by count from the end of placing. Write in when a foil was closed and when"
          + " it was out; a foil placed later is due later by as much.";

  private Table table(double x, double width, double rowMm) {
    List<Table.Column> columns = new ArrayList<>();
    columns.add(Table.Column.figure(7.6, "No"));
    columns.add(Table.Column.text(0, "section"));
    columns.add(Table.Column.text(7.3, "mix"));
    if (timeline.schedule().hands() > 1) {
      columns.add(Table.Column.text(5.6, "by"));
    }
    columns.add(Table.Column.text(20.9, "placed"));
    columns.add(Table.Column.figure(10.5, "due", "from"));
    columns.add(Table.Column.figure(10.5, "out", "by"));
    columns.add(Table.Column.figure(14, "planned", "out"));
    columns.add(Table.Column.figure(10, "stays", "min"));
    columns.add(Table.Column.text(11, "in at"));
    columns.add(Table.Column.text(11, "out at"));
    double used = columns.stream().mapToDouble(Table.Column::width).sum();
    double section = Math.min(width - used, MOST_SECTION_MM);
    columns.set(1, Table.Column.text(section, "section"));
    if (width - used - section > LEAST_REMARK_MM) {
      columns.add(Table.Column.text(width - used - section, REMARK));
    }
    return new Table(columns, x, rowMm);
  }

  private Table.Row row(int i, boolean afterAnother, int columns) {
    Schedule schedule = timeline.schedule();
    FoilTask foil = schedule.foils().get(i);
    Timeline.FoilSection section = timeline.sections().get(i);
    String due = clock.text(schedule.in(i).plus(foil.window().least()));
    String outBy = clock.text(schedule.outBy(i));
    String out = clock.text(schedule.out(i));
    String stays = oneDecimal(schedule.exposure(i));
    List<Table.Cell> cells = new ArrayList<>();
    cells.add(Table.Cell.of(Integer.toString(foil.number())));
    cells.add(Table.Cell.of(SectionStyle.of(section.index()), section.name()));
    cells.add(Table.Cell.of(foil.slot()));
    if (schedule.hands() > 1) {
      cells.add(Table.Cell.of(Integer.toString(TimelineChart.hands(schedule, i) + 1)));
    }
    cells.add(Table.Cell.of(clock.text(schedule.begun(i)) + "\u2013" + clock.text(schedule.in(i))));
    cells.add(Table.Cell.of(due));
    cells.add(Table.Cell.of(outBy));
    cells.add(Table.Cell.of(out));
    cells.add(Table.Cell.of(stays));
    while (cells.size() < columns) {
      cells.add(Table.Cell.TO_FILL_IN);
    }
    String title =
        "Foil "
            + foil.number()
            + ", "
            + section.name()
            + ", mix "
            + foil.slot()
            + ": in at "
            + clock.text(schedule.in(i))
            + ", due from "
            + due
            + ", out by "
            + outBy
            + ", planned out at "
            + out
            + " after "
            + stays
            + " min";
    boolean changes = afterAnother && timeline.sections().get(i - 1).index() != section.index();
    return new Table.Row(
        "row-" + foil.number(), title, TimelineChart.data(timeline, i), cells, changes);
  }

  private static String oneDecimal(Minutes minutes) {
    return String.format(Locale.ROOT, "%.1f", minutes.toMinutes());
  }
}
