package foilwright.app;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What to draw of a plan, and how.
 *
 * @param sheets at least one, in the order wanted
 * @param book one PDF with page numbers instead of a file for each sheet
 * @param inches lengths in inches too
 * @param leftHanded the order and side of a left-handed person
 * @param grey without colour
 * @param start hour of the visit, for clock times
 * @param today the day of drawing, before which nothing can be due
 */
public record DrawRequest(
    List<SheetKind> sheets,
    boolean book,
    PaperSize paper,
    SheetFormat format,
    boolean inches,
    boolean leftHanded,
    boolean grey,
    Optional<LocalTime> start,
    Optional<LocalDate> today) {
  public DrawRequest {
    sheets = List.copyOf(sheets);
    Objects.requireNonNull(paper);
    Objects.requireNonNull(format);
    Objects.requireNonNull(start);
    Objects.requireNonNull(today);
    if (sheets.isEmpty()) {
      throw new IllegalArgumentException("name at least one sheet");
    }
    if (book && format != SheetFormat.PDF) {
      throw new IllegalArgumentException("a book is a PDF, not " + format.words());
    }
  }

  /** One kind of sheet as SVG on A4. */
  public static DrawRequest of(SheetKind sheet) {
    return new DrawRequest(
        List.of(sheet),
        false,
        PaperSize.A4,
        SheetFormat.SVG,
        false,
        false,
        false,
        Optional.empty(),
        Optional.empty());
  }

  /** Every sheet as one PDF. */
  public static DrawRequest wholeBook(PaperSize paper) {
    return new DrawRequest(
        List.of(SheetKind.values()),
        true,
        paper,
        SheetFormat.PDF,
        false,
        false,
        false,
        Optional.empty(),
        Optional.empty());
  }
}
