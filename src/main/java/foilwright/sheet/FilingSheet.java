package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Layer;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Polygon;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.TextSize;
import foilwright.drawing.View;
import java.util.ArrayList;
import java.util.List;

/**
 * Sheets that are kept: the one that a client takes home and the record for the file. Both show the
 * foils small and then blocks of figures and sentences; a figure without a value becomes a line to
 * write on. Paper upright, on as many pages as the blocks take.
 */
public final class FilingSheet {
  private static final double PICTURES_MM = 58;
  private static final double GUTTER_MM = 8;
  private static final double LABEL_MM = 36;
  private static final double BETWEEN_MM = 3;
  private static final double LEAST_AREA_MM2 = 0.3;

  /**
   * One heading and what stands below it.
   *
   * @param rows figures, before the sentences
   * @param sentences each its own paragraph
   */
  public record Block(String heading, List<Row> rows, List<String> sentences) {
    public Block {
      if (heading.isBlank()) {
        throw new IllegalArgumentException("a block needs a heading");
      }
      rows = List.copyOf(rows);
      sentences = List.copyOf(sentences);
    }

    /** A block of sentences. */
    public static Block of(String heading, String... sentences) {
      return new Block(heading, List.of(), List.of(sentences));
    }
  }

  /**
   * A figure with its label.
   *
   * @param value with its unit; an estimate as a range; empty for a line to write on
   */
  public record Row(String label, String value) {}

  private final DrawnPlan plan;
  private final PageLayout layout;
  private final String id;

  private FilingSheet(DrawnPlan plan, String id, Paper paper) {
    this.plan = plan;
    this.id = id;
    this.layout = PageLayout.upright(paper);
  }

  /** What will be done, what it takes and costs, how it grows out and how to care for it. */
  public static List<Scene> client(
      DrawnPlan plan, String title, String subtitle, List<Block> blocks, Paper paper) {
    return new FilingSheet(plan, "client", paper)
        .pages(title, subtitle, "What is planned for your hair", blocks);
  }

  /** What was planned, what was really done, and the next visit. */
  public static List<Scene> record(
      DrawnPlan plan, String title, String subtitle, List<Block> blocks, Paper paper) {
    return new FilingSheet(plan, "record", paper)
        .pages(title + ": record", subtitle, "Record of a visit", blocks);
  }

  private List<Scene> pages(String title, String subtitle, String description, List<Block> blocks) {
    Box body = layout.body();
    double width = (body.width() - GUTTER_MM) / 2;
    double top = body.y() + PICTURES_MM;
    List<List<Mark>> pages = new ArrayList<>();
    pages.add(new ArrayList<>(pictures(new Box(body.x(), body.y(), body.width(), PICTURES_MM))));
    double total = 0;
    for (Block block : blocks) {
      total += flow("probe", block, new Box(0, 0, width, 1e4)).y() + BETWEEN_MM;
    }
    int column = 0;
    int count = 0;
    double y = top;
    for (Block block : blocks) {
      TextFlow probe = flow("probe", block, new Box(0, 0, width, 1e4));
      double height = probe.y();
      double bottom = body.bottom() - 2;
      boolean half = column == 0 && y - top + height / 2 > total / 2;
      if ((half || y + height > bottom) && y > start(column, top, body)) {
        column++;
        y = start(column, top, body);
      }
      count++;
      double x = body.x() + (column % 2) * (width + GUTTER_MM);
      Box room = new Box(x, y, width, Math.max(20, bottom - y));
      TextFlow flow = flow("block-" + count, block, room);
      while (pages.size() <= column / 2 + flow.pages() - 1) {
        pages.add(new ArrayList<>());
      }
      for (TextFlow.Placed placed : flow.placed()) {
        pages.get(column / 2 + placed.page()).add(placed.mark());
      }
      y += height + BETWEEN_MM;
    }
    List<Scene> scenes = new ArrayList<>();
    for (int page = 0; page < pages.size(); page++) {
      String words =
          subtitle + (pages.size() > 1 ? ", page " + (page + 1) + " of " + pages.size() : "");
      List<Mark> marks = new ArrayList<>(layout.titles(title, words));
      marks.addAll(pages.get(page));
      marks.add(layout.scaleBox());
      scenes.add(
          layout.scene(id + (page == 0 ? "" : "-" + (page + 1)), title, description + ".", marks));
    }
    return List.copyOf(scenes);
  }

  private static double start(int column, double top, Box body) {
    return column < 2 ? top : body.y();
  }

  private static TextFlow flow(String name, Block block, Box column) {
    TextFlow flow = new TextFlow(name, column);
    flow.heading(TextFlow.fitted(block.heading(), TextSize.HEADING, column.width()));
    for (Row row : block.rows()) {
      if (row.value().isBlank()) {
        flow.blank(TextFlow.fitted(row.label(), TextSize.SMALL, LABEL_MM - 1), LABEL_MM);
      } else {
        flow.entry(
            TextFlow.fitted(row.label(), TextSize.SMALL, LABEL_MM - 1), row.value(), LABEL_MM);
      }
    }
    block.sentences().forEach(flow::paragraph);
    return flow;
  }

  private List<Mark> pictures(Box row) {
    List<View> views = List.of(View.LEFT, View.BACK, View.RIGHT, View.TOP);
    List<Mark> marks = new ArrayList<>();
    double width = row.width() / views.size();
    double scale = Double.POSITIVE_INFINITY;
    for (int i = 0; i < views.size(); i++) {
      Box cell = new Box(row.x() + i * width, row.y(), width, row.height() - 2);
      scale = Math.min(scale, Frame.fitted(plan.head().view(views.get(i)), cell, 2).scale());
    }
    for (int i = 0; i < views.size(); i++) {
      Box cell = new Box(row.x() + i * width, row.y(), width, row.height() - 2);
      draw(Frame.centred(plan.head().view(views.get(i)), cell, scale), marks);
    }
    return marks;
  }

  private void draw(Frame frame, List<Mark> marks) {
    marks.addAll(frame.ground(plan.head()));
    for (DrawnPlan.Ground ground : plan.grounds()) {
      Polygon whole = frame.area(ground.whole());
      if (whole.area() >= LEAST_AREA_MM2) {
        marks.add(
            Mark.plain(
                frame.id("background-" + (ground.place() + 1)),
                Role.BACKGROUND,
                Layer.SCALP,
                Part.Shape.filled(whole.curve(), SheetInk.UNTOUCHED)));
      }
    }
    for (DrawnFoil foil : plan.foils()) {
      Polygon area = frame.area(foil.border());
      if (area.area() >= LEAST_AREA_MM2) {
        marks.add(foil.mark(frame, area));
      }
    }
  }
}
