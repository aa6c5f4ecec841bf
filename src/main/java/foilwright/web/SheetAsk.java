package foilwright.web;

import foilwright.app.DrawRequest;
import foilwright.app.PaperSize;
import foilwright.app.SheetFormat;
import foilwright.app.SheetKind;
import io.javalin.http.BadRequestResponse;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Which sheet a person wants to see, and how.
 *
 * @param kind none for all of them as a book
 * @param inches lengths in inches too
 * @param leftHanded the order of a left-handed person
 * @param grey without colour
 * @param start hour of the visit
 */
public record SheetAsk(
    Optional<SheetKind> kind,
    PaperSize paper,
    boolean inches,
    boolean leftHanded,
    boolean grey,
    Optional<LocalTime> start) {
  static final String BOOK = "book";

  static SheetAsk of(UnaryOperator<String> parameter) {
    String sheet = or(parameter.apply("sheet"), SheetKind.MAP.words());
    String paper = or(parameter.apply("paper"), PaperSize.A4.words());
    return new SheetAsk(
        sheet.equals(BOOK)
            ? Optional.empty()
            : Optional.of(
                SheetKind.find(sheet)
                    .orElseThrow(
                        () -> new BadRequestResponse("There is no sheet \"" + sheet + "\"."))),
        PaperSize.find(paper)
            .orElseThrow(() -> new BadRequestResponse("There is no paper \"" + paper + "\".")),
        parameter.apply("inches") != null,
        parameter.apply("left-handed") != null,
        parameter.apply("grey") != null,
        hour(or(parameter.apply("at"), "")));
  }

  private static String or(String value, String otherwise) {
    return value == null ? otherwise : value;
  }

  private static Optional<LocalTime> hour(String at) {
    try {
      return at.isEmpty() ? Optional.empty() : Optional.of(LocalTime.parse(at));
    } catch (DateTimeParseException e) {
      throw new BadRequestResponse("\"" + at + "\" is not a time of day; write 09:30.");
    }
  }

  /** The word in an address. */
  public String word() {
    return kind.map(SheetKind::words).orElse(BOOK);
  }

  DrawRequest request(LocalDate today) {
    return new DrawRequest(
        kind.map(List::of).orElse(List.of(SheetKind.values())),
        kind.isEmpty(),
        paper,
        SheetFormat.PDF,
        inches,
        leftHanded,
        grey,
        start,
        Optional.of(today));
  }

  /** What a sheet is for. */
  public static String name(SheetKind kind) {
    return switch (kind) {
      case MAP -> "Map for the chair";
      case STEPS -> "Steps";
      case ANGLES -> "Angles";
      case BLANK -> "Practice, blank";
      case ANSWER -> "Practice, answer";
      case MARKING -> "Marking practice work";
      case TIMELINE -> "Timeline";
      case MIX -> "Mix";
      case LOOK -> "How it will look";
      case WRAP -> "Wrap for a training head";
      case CLIENT -> "For the client";
      case RECORD -> "Record of the visit";
    };
  }

  /** What is drawn, in words. */
  public String title() {
    return kind.map(SheetAsk::name).orElse("All sheets as a book");
  }
}
