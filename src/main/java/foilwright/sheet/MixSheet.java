package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Ink;
import foilwright.drawing.Layer;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Point;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.TextSize;
import foilwright.problem.Problem;
import foilwright.problem.Severity;
import foilwright.service.MixRatio;
import foilwright.service.ProductEntry;
import foilwright.service.TonerEntry;
import foilwright.service.mix.Bowl;
import foilwright.service.mix.FoilMix;
import foilwright.service.mix.FoilSheets;
import foilwright.service.mix.MixingCross;
import foilwright.service.mix.Peroxide;
import foilwright.service.mix.SlotMix;
import foilwright.service.mix.TonerMix;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The sheet for the dispensary: bowls by weight with the foil at which each is mixed, toner, foil
 * to cut, strengths, and boxes for what was really weighed and what was left over.
 */
public final class MixSheet {
  private static final double ROW_MM = 5.8;
  private static final double HEADING_MM = 5.6;
  private static final double BETWEEN_BLOCKS_MM = 3;
  private static final double BOX_COLUMN_MM = 17.5;
  private static final double BEFORE_TABLE_MM = 1;
  private static final double GAP_MM = 3;
  private static final double SHADE_MM = 55;
  private static final double BETWEEN_TABLES_MM = 8;

  private MixSheet() {}

  /** The pages. */
  public static List<Scene> build(MixCard card, MapNotes notes, Paper paper) {
    return new Drawing(card, notes, paper).pages();
  }

  /** One drawing; its scratch space. */
  private static final class Drawing {
    private final MixCard card;
    private final MapNotes notes;
    private final SheetLayout layout;
    private final Clock clock;
    private final List<List<Mark>> pages = new ArrayList<>();
    private double y;

    Drawing(MixCard card, MapNotes notes, Paper paper) {
      this.card = card;
      this.notes = notes;
      this.layout = new SheetLayout(paper);
      this.clock = new Clock(card.beforeFirstParting(), card.start());
    }

    List<Scene> pages() {
      nextPage();
      card.plan().slots().forEach(this::slot);
      card.toner().ifPresent(this::toner);
      card.sheets().ifPresent(this::foilToCut);
      TextFlow flow = words();
      while (pages.size() < flow.pages()) {
        nextPage();
      }
      flow.placed().forEach(p -> pages.get(p.page()).add(p.mark()));
      List<Scene> scenes = new ArrayList<>();
      for (int i = 0; i < pages.size(); i++) {
        List<Mark> marks = pages.get(i);
        marks.addAll(
            layout.titles(notes.title(), SheetLayout.subtitle(notes.subtitle(), i, pages.size())));
        marks.add(note(clock.words() + HOW_TO_READ));
        marks.add(layout.scaleBox());
        scenes.add(
            layout.scene(
                "mix" + (i == 0 ? "" : "-" + (i + 1)),
                "Mix: " + notes.title() + (pages.size() > 1 ? ", page " + (i + 1) : ""),
                card.plan().bowls().size()
                    + " bowls by weight, toner, foil to cut and strengths, with boxes for what was"
                    + " really weighed.",
                marks));
      }
      return List.copyOf(scenes);
    }

    private static final String HOW_TO_READ =
        ". Weights are rounded up to the scale's step. Write in what was weighed and what is left in"
            + " each bowl.";

    private Mark note(String text) {
      List<String> lines = wrapped(text);
      List<Part> parts = new ArrayList<>();
      for (int i = 0; i < lines.size(); i++) {
        double base = layout.whole().bottom() - (lines.size() - 1 - i) * TextFlow.LINE_MM;
        parts.add(
            new Part.Lettering(
                lines.get(i), new Point(area().x(), base), TextSize.SMALL, SheetInk.QUIET));
      }
      return new Mark("note", Role.NOTE, Layer.NOTES, "", Map.of(), parts);
    }

    private Box area() {
      return layout.pictures();
    }

    private void nextPage() {
      pages.add(new ArrayList<>());
      y = area().y();
    }

    private void add(Mark mark) {
      pages.get(pages.size() - 1).add(mark);
    }

    /** Begins a block that stays whole: its heading, a line below it, then {@code height} more. */
    private void begin(String id, String heading, List<String> lines, double height) {
      double all = HEADING_MM + lines.size() * TextFlow.LINE_MM + BEFORE_TABLE_MM + height;
      if (y > area().y()) {
        y += BETWEEN_BLOCKS_MM;
        if (y + all > area().bottom()) {
          nextPage();
        }
      }
      List<Part> parts = new ArrayList<>();
      parts.add(
          new Part.Lettering(
              TextFlow.fitted(heading, TextSize.HEADING, area().width()),
              new Point(area().x(), y + HEADING_MM - 1.5),
              TextSize.HEADING,
              Ink.BLACK));
      y += HEADING_MM;
      for (String line : lines) {
        y += TextFlow.LINE_MM;
        parts.add(
            new Part.Lettering(
                line, new Point(area().x(), y - 1.1), TextSize.SMALL, SheetInk.QUIET));
      }
      y += BEFORE_TABLE_MM;
      add(new Mark(id, Role.HEADING, Layer.NOTES, "", Map.of(), parts));
    }

    private List<String> wrapped(String text) {
      return TextFlow.wrapped(text, area().width());
    }

    /** A table from here downwards. */
    private void table(String id, Table table, List<Table.Row> rows) {
      y = table(id, table, rows, y);
    }

    private double table(String id, Table table, List<Table.Row> rows, double top) {
      add(table.head(id + "-columns", top));
      double rowTop = top + table.headMm();
      for (Table.Row row : rows) {
        add(table.row(row, rowTop));
        rowTop += table.rowMm();
      }
      return rowTop;
    }

    private static Table.Row row(
        String id, String title, Map<String, String> data, boolean ruled, Table.Cell... cells) {
      return new Table.Row(id, title, data, List.of(cells), ruled);
    }

    // Bowls.

    private void slot(SlotMix slot) {
      String id = id(slot);
      Optional<MixingCross> cross =
          slot.bowls().stream().flatMap(bowl -> bowl.cross().stream()).findFirst();
      List<Table.Column> columns = new ArrayList<>();
      columns.add(Table.Column.text(9.4, "bowl"));
      columns.add(Table.Column.figure(12.5, "ready", "at"));
      columns.add(Table.Column.figure(12.5, "before", "foil"));
      columns.add(Table.Column.figure(12.5, "good", "until"));
      columns.add(Table.Column.figure(16, "serves"));
      columns.add(Table.Column.figure(11, "foils"));
      columns.add(Table.Column.text(0));
      columns.add(Table.Column.figure(15, "product", "g"));
      if (cross.isPresent()) {
        columns.add(Table.Column.figure(15.4, "blend", stock(cross.get().stronger()) + ", g"));
        columns.add(Table.Column.figure(15.4, "with", stock(cross.get().weaker()) + ", g"));
        columns.add(Table.Column.figure(12.6, "take", "of it, g"));
      } else {
        columns.add(Table.Column.figure(18.5, "developer", "g"));
      }
      columns.add(Table.Column.figure(17, "together", "g"));
      columns.add(Table.Column.text(GAP_MM));
      columns.add(Table.Column.text(BOX_COLUMN_MM, "product", "weighed"));
      columns.add(Table.Column.text(BOX_COLUMN_MM, "developer", "weighed"));
      columns.add(Table.Column.text(BOX_COLUMN_MM, "left over", "g"));
      double used = columns.stream().mapToDouble(Table.Column::width).sum();
      columns.set(6, Table.Column.text(area().width() - used));
      Table table = new Table(columns, area().x(), ROW_MM);

      List<Table.Row> rows = new ArrayList<>();
      for (Bowl bowl : slot.bowls()) {
        rows.add(bowlRow(bowl, cross.isPresent()));
      }
      if (slot.bowls().size() > 1) {
        rows.add(sumRow(slot, cross.isPresent()));
      }
      List<String> lines = new ArrayList<>(wrapped(mixture(slot)));
      lines.addAll(wrapped(developer(slot.developer(), cross, slot.readyToUse())));
      lines.addAll(wrapped(perFoil(slot)));
      begin(
          id,
          "Mix " + slot.slot() + ": " + slot.product().name(),
          lines,
          table.headMm() + rows.size() * ROW_MM);
      table(id, table, rows);
    }

    private String id(SlotMix slot) {
      return "slot-" + (card.plan().slots().indexOf(slot) + 1);
    }

    private Table.Row bowlRow(Bowl bowl, boolean crossed) {
      int last = bowl.foils().get(bowl.foils().size() - 1);
      List<Table.Cell> cells = new ArrayList<>();
      cells.add(Table.Cell.of(bowl.name()));
      cells.add(Table.Cell.of(clock.text(bowl.mixedAt())));
      cells.add(Table.Cell.of(Integer.toString(bowl.firstFoil())));
      cells.add(Table.Cell.of(clock.text(bowl.goodUntil())));
      cells.add(
          Table.Cell.of(
              last == bowl.firstFoil()
                  ? Integer.toString(last)
                  : bowl.firstFoil() + "\u2013" + last));
      cells.add(Table.Cell.of(Integer.toString(bowl.foils().size())));
      cells.add(Table.Cell.EMPTY);
      cells.add(Table.Cell.of(grams(bowl.product())));
      if (crossed) {
        MixingCross cross = bowl.cross().orElseThrow();
        cells.add(Table.Cell.of(grams(cross.strongerWeight())));
        cells.add(Table.Cell.of(grams(cross.weakerWeight())));
        cells.add(Table.Cell.of(grams(bowl.developer())));
      } else {
        cells.add(Table.Cell.of(grams(bowl.developer())));
      }
      cells.add(Table.Cell.of(grams(bowl.mixed())));
      cells.add(Table.Cell.EMPTY);
      cells.addAll(Collections.nCopies(3, Table.Cell.TO_FILL_IN));
      String title =
          "Bowl "
              + bowl.name()
              + ": ready at "
              + clock.text(bowl.mixedAt())
              + ", before foil "
              + bowl.firstFoil()
              + ", good until "
              + clock.text(bowl.goodUntil())
              + ", "
              + bowl.product()
              + " of product and "
              + bowl.developer()
              + " of developer";
      // In this order: a map of the platform's own gives another one in each run.
      Map<String, String> data = new LinkedHashMap<>();
      data.put("bowl", bowl.name());
      data.put("mix", bowl.slot());
      return new Table.Row(
          "bowl-" + bowl.name().toLowerCase(Locale.ROOT), title, data, cells, false);
    }

    private Table.Row sumRow(SlotMix slot, boolean crossed) {
      List<Table.Cell> cells = new ArrayList<>();
      cells.add(Table.Cell.of("all"));
      cells.addAll(Collections.nCopies(4, Table.Cell.EMPTY));
      cells.add(Table.Cell.of(Integer.toString(slot.foils())));
      cells.add(Table.Cell.EMPTY);
      cells.add(Table.Cell.of(grams(slot.productWeight())));
      if (crossed) {
        cells.add(
            Table.Cell.of(grams(sum(slot.bowls().stream().map(b -> cross(b).strongerWeight())))));
        cells.add(
            Table.Cell.of(grams(sum(slot.bowls().stream().map(b -> cross(b).weakerWeight())))));
        cells.add(Table.Cell.of(grams(slot.developerWeight())));
      } else {
        cells.add(Table.Cell.of(grams(slot.developerWeight())));
      }
      cells.add(Table.Cell.of(grams(slot.mixed())));
      cells.addAll(Collections.nCopies(4, Table.Cell.EMPTY));
      return new Table.Row(
          id(slot) + "-all", "Mix " + slot.slot() + ": " + slot.mixed(), Map.of(), cells, true);
    }

    private static MixingCross cross(Bowl bowl) {
      return bowl.cross().orElseThrow();
    }

    private static Mass sum(Stream<Mass> masses) {
      return masses.reduce(Mass.ZERO, Mass::plus);
    }

    private static String mixture(SlotMix slot) {
      ProductEntry product = slot.product();
      return product.kind().words()
          + ", "
          + ratio(product.ratio())
          + " by weight; stays "
          + product.window().least()
          + " to "
          + product.window().most()
          + (product.makersSheetOnFile() ? "" : "; maker's sheet not on file");
    }

    private static String developer(
        Peroxide peroxide, Optional<MixingCross> cross, Share readyToUse) {
      return "developer "
          + peroxide.words()
          + cross
              .map(c -> ", mixed from " + stock(c.stronger()) + " and " + stock(c.weaker()))
              .orElse("")
          + String.format(
              Locale.ROOT,
              "; ready to use %.2f %% by weight, where the limit is %s",
              readyToUse.toPercent(),
              ProductEntry.MOST_STRENGTH);
    }

    private String perFoil(SlotMix slot) {
      List<Mass> each =
          card.plan().foils().stream()
              .filter(foil -> foil.slot().equals(slot.slot()))
              .map(FoilMix::mixed)
              .sorted()
              .toList();
      String range =
          slot.foils() == 1
              ? slot.onFoils().toString()
              : String.format(
                  Locale.ROOT,
                  "%.1f to %.1f g a foil, %.1f g on average",
                  each.get(0).toGrams(),
                  each.get(each.size() - 1).toGrams(),
                  slot.onFoils().toGrams() / slot.foils());
      return slot.foils()
          + (slot.foils() == 1 ? " foil" : " foils")
          + " with "
          + slot.hair()
          + " of hair: "
          + range
          + "; "
          + card.settings().waste()
          + " added for waste";
    }

    private static String ratio(MixRatio ratio) {
      return part(ratio.product()) + " : " + part(ratio.developer());
    }

    private static String part(double part) {
      return BigDecimal.valueOf(part).stripTrailingZeros().toPlainString();
    }

    private static String stock(Share strength) {
      return strength.toFraction() == 0 ? "water" : strength.toString();
    }

    /** To the last place that the scale shows. */
    private String grams(Mass mass) {
      double step = card.settings().scaleStep().toGrams();
      int decimals = step >= 1 - 1e-9 && step == Math.rint(step) ? 0 : step >= 0.1 - 1e-9 ? 1 : 2;
      return String.format(Locale.ROOT, "%." + decimals + "f", mass.toGrams());
    }

    // Toner.

    private void toner(TonerMix mix) {
      TonerEntry toner = mix.toner();
      Table shades =
          new Table(
              List.of(
                  Table.Column.text(SHADE_MM, "shade or developer"),
                  Table.Column.figure(14, "parts"),
                  Table.Column.figure(14, "g"),
                  Table.Column.text(GAP_MM),
                  Table.Column.text(BOX_COLUMN_MM, "weighed"),
                  Table.Column.text(BOX_COLUMN_MM, "left over")),
              area().x(),
              ROW_MM);
      List<Table.Row> rows = new ArrayList<>();
      for (int i = 0; i < mix.shades().size(); i++) {
        TonerMix.ShadeWeight shade = mix.shades().get(i);
        rows.add(tonerRow(i, shade.shade(), part(toner.shades().get(i).parts()), shade.weight()));
      }
      if (mix.cross().isPresent()) {
        MixingCross cross = mix.cross().get();
        rows.add(tonerRow(rows.size(), developer(cross.stronger()), "", cross.strongerWeight()));
        rows.add(tonerRow(rows.size(), developer(cross.weaker()), "", cross.weakerWeight()));
      } else {
        rows.add(tonerRow(rows.size(), developer(toner.developerStrength()), "", mix.developer()));
      }
      rows.add(
          row(
              "toner-all",
              "Toner: " + mix.mixed(),
              Map.of(),
              true,
              Table.Cell.of("all"),
              Table.Cell.EMPTY,
              Table.Cell.of(grams(mix.mixed())),
              Table.Cell.EMPTY,
              Table.Cell.EMPTY,
              Table.Cell.TO_FILL_IN));
      double saturationLeft = shades.right() + BETWEEN_TABLES_MM;
      Table saturation =
          new Table(
              List.of(
                  Table.Column.figure(18, "after, min"),
                  Table.Column.text(GAP_MM),
                  Table.Column.text(
                      area().right() - saturationLeft - 18 - GAP_MM - BOX_COLUMN_MM, "how far"),
                  Table.Column.text(BOX_COLUMN_MM, "seen at")),
              saturationLeft,
              ROW_MM);
      List<Table.Row> steps = new ArrayList<>();
      for (TonerEntry.Saturation step : toner.saturation()) {
        steps.add(
            row(
                "saturation-" + (steps.size() + 1),
                "After " + step.at() + ": " + step.words(),
                Map.of(),
                false,
                Table.Cell.of(part(step.at().toMinutes())),
                Table.Cell.EMPTY,
                Table.Cell.of(step.words()),
                Table.Cell.TO_FILL_IN));
      }
      List<String> lines =
          new ArrayList<>(
              wrapped(
                  ratio(toner.ratio())
                      + " by weight for "
                      + mix.lightenedHair()
                      + " of lightened hair; stays "
                      + toner.window().least()
                      + " to "
                      + toner.window().most()
                      + ", looked at all the time"));
      lines.addAll(
          wrapped(
              developer(
                  Peroxide.ofLabel(toner.developerStrength()), mix.cross(), mix.readyToUse())));
      double height = shades.headMm() + Math.max(rows.size(), steps.size()) * ROW_MM;
      begin("toner", "Toner: " + toner.name(), lines, height);
      double top = y;
      double end = table("toner", shades, rows, top);
      double other = table("saturation", saturation, steps, top);
      y = Math.max(end, other);
    }

    private Table.Row tonerRow(int place, String what, String parts, Mass weight) {
      return row(
          "toner-" + (place + 1),
          what + ": " + weight,
          Map.of(),
          false,
          Table.Cell.of(what),
          parts.isEmpty() ? Table.Cell.EMPTY : Table.Cell.of(parts),
          Table.Cell.of(grams(weight)),
          Table.Cell.EMPTY,
          Table.Cell.TO_FILL_IN,
          Table.Cell.EMPTY);
    }

    private static String developer(Share strength) {
      return strength.toFraction() == 0 ? "water" : "developer of " + strength;
    }

    // Foil.

    private void foilToCut(FoilSheets sheets) {
      Table table =
          new Table(
              List.of(
                  Table.Column.text(32, "foil"),
                  Table.Column.text(38, "width by length"),
                  Table.Column.text(
                      area().width() - 32 - 38 - 18 - 18 - GAP_MM - BOX_COLUMN_MM,
                      "how it is laid"),
                  Table.Column.figure(18, "foils"),
                  Table.Column.figure(18, "sheets"),
                  Table.Column.text(GAP_MM),
                  Table.Column.text(BOX_COLUMN_MM, "cut")),
              area().x(),
              ROW_MM);
      List<Table.Row> rows = new ArrayList<>();
      for (FoilSheets.Count count : sheets.counts()) {
        rows.add(
            row(
                "sheets-" + (rows.size() + 1),
                count.sheets()
                    + " sheets of "
                    + count.stock().name()
                    + ", "
                    + count.laying().words(),
                Map.of(),
                false,
                Table.Cell.of(count.stock().name()),
                Table.Cell.of(count.stock().width() + " by " + count.stock().length()),
                Table.Cell.of(count.laying().words()),
                Table.Cell.of(Integer.toString(count.foils())),
                Table.Cell.of(Integer.toString(count.sheets())),
                Table.Cell.EMPTY,
                Table.Cell.TO_FILL_IN));
      }
      begin("foil-to-cut", "Foil to cut", List.of(), table.headMm() + rows.size() * ROW_MM);
      table("foil-to-cut", table, rows);
    }

    // Words.

    private TextFlow words() {
      TextFlow flow = layout.words();
      List<String> missing = missing();
      if (!missing.isEmpty()) {
        flow.warning("Look first", missing);
      }
      if (!notes.totals().isEmpty()) {
        flow.heading("Totals");
        notes.totals().forEach(total -> flow.figure(total.label(), total.value()));
      }
      flow.heading("Before you start");
      notes.cautions().forEach(flow::paragraph);
      List<String> problems = problems();
      if (!problems.isEmpty()) {
        flow.heading("Look at these first");
        problems.forEach(flow::paragraph);
      }
      return flow;
    }

    private List<String> missing() {
      List<String> missing = new ArrayList<>(card.missing());
      for (SlotMix slot : card.plan().slots()) {
        if (!slot.product().makersSheetOnFile()) {
          missing.add("missing: maker's sheet of " + slot.product().name());
        }
      }
      return missing;
    }

    private List<String> problems() {
      return Stream.of(
              card.plan().problems().stream(),
              card.toner().stream().flatMap(toner -> toner.problems().stream()),
              card.sheets().stream().flatMap(sheets -> sheets.problems().stream()))
          .flatMap(problems -> problems)
          .filter(problem -> problem.severity() != Severity.NOTE)
          .map(Problem::message)
          .distinct()
          .toList();
    }
  }
}
