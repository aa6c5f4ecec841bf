package foilwright.web;

import foilwright.app.PaperSize;
import foilwright.app.Plan;
import foilwright.app.SheetFile;
import foilwright.app.SheetFormat;
import foilwright.app.SheetKind;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The pages on which sheets are looked at, taken and printed. */
public final class SheetPages {
  private static final Pattern FILE = Pattern.compile("(\\d{1,3})\\.(svg|png|pdf)");

  private final Desk desk;
  private final Supplier<LocalDate> today;
  private final PageWriting writing;
  private final SheetDesk sheets = new SheetDesk();

  /** Writes a template into an answer. */
  interface PageWriting {
    void show(Context context, String template, Object page);
  }

  SheetPages(Desk desk, Supplier<LocalDate> today, PageWriting writing) {
    this.desk = desk;
    this.today = today;
    this.writing = writing;
  }

  /**
   * What the page of sheets shows beside the sheet.
   *
   * @param title of the pattern
   * @param hasVisit whether there is a visit with hours
   */
  public record Choosing(Ask ask, SheetAsk wanted, String title, boolean hasVisit) {
    public List<SheetKind> kinds() {
      return Arrays.stream(SheetKind.values()).toList();
    }

    public List<PaperSize> papers() {
      return Arrays.stream(PaperSize.values()).toList();
    }
  }

  void register(JavalinConfig config) {
    config.routes.get("/sheets", this::choose);
    config.routes.get("/sheets/drawn", this::draw);
    config.routes.get("/drawn/{ticket}/{file}", this::file);
  }

  private Plan plan(Context context) {
    return desk.plan(PageServer.ask(context))
        .orElseThrow(
            () ->
                new NoSuchElementException(
                    "There is no plan to draw. Go back and see what to look at."));
  }

  private void choose(Context context) {
    Plan plan = plan(context);
    writing.show(
        context,
        "sheets.jte",
        new Choosing(
            PageServer.ask(context),
            SheetAsk.of(context::queryParam),
            plan.pattern().title(),
            plan.times().map(t -> !t.visits().isEmpty()).orElse(false)));
  }

  private void draw(Context context) {
    SheetAsk wanted = SheetAsk.of(context::queryParam);
    writing.show(context, "drawn.jte", sheets.draw(plan(context), wanted, today.get()));
  }

  private void file(Context context) {
    Matcher file = FILE.matcher(context.pathParam("file"));
    if (!file.matches()) {
      throw new NoSuchElementException("There is no such file.");
    }
    SheetFormat format = SheetFormat.find(file.group(2)).orElseThrow();
    SheetFile made =
        sheets.file(context.pathParam("ticket"), Integer.parseInt(file.group(1)), format);
    boolean taken = Optional.ofNullable(context.queryParam("take")).isPresent();
    context
        .contentType(
            switch (format) {
              case SVG -> "image/svg+xml; charset=utf-8";
              case PNG -> "image/png";
              case PDF -> "application/pdf";
            })
        .header(
            "Content-Disposition",
            (taken ? "attachment" : "inline") + "; filename=\"" + made.name() + "\"")
        .result(made.bytes());
  }
}
