package foilwright.web;

import foilwright.app.Handle;
import foilwright.app.HandleKind;
import foilwright.drawing.View;
import foilwright.units.Length;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * A handle in the words of the page. Its numbers are in the unit of the page, or degrees.
 *
 * @param key of the field that it changes, or {@code part}
 * @param name what it is, with the name of its section
 * @param words its value with its unit
 * @param gap no value lies nearer to zero but zero itself; empty where any may
 * @param ways for each drawing its name, how squarely the handle faces the viewer, and stops of
 *     value and place, as {@code view-back 0.91 18,40.1,33.2 24,40.3,36.0}; semicolons between
 */
public record HandleMark(
    String key,
    String name,
    String words,
    String value,
    String least,
    String most,
    String step,
    String unit,
    String gap,
    String ways) {

  static HandleMark of(Handle handle, String section, LengthUnit unit) {
    HandleKind kind = handle.kind();
    double factor = kind.isAngle() ? 1 : 1 / Length.parse("1 " + unit.word()).toMillimetres();
    String shown =
        kind.isAngle() ? plain(handle.value()) : unit.number(Length.ofMillimetres(handle.value()));
    return new HandleMark(
        key(kind),
        kind == HandleKind.PART_LINE ? name(kind) : section + ": " + name(kind),
        kind == HandleKind.PART_LINE
            ? aside(handle.value(), unit)
            : kind.isAngle() ? shown + "\u00b0" : shown + " " + unit.word(),
        shown,
        plain(handle.least() * factor),
        plain(handle.most() * factor),
        kind.isAngle() ? "1" : unit.step(),
        kind.isAngle() ? "\u00b0" : unit.word(),
        kind == HandleKind.PART_LINE ? plain(LEAST_ASIDE_MM * factor) : "",
        handle.tracks().stream().map(t -> way(t, factor)).collect(Collectors.joining(";")));
  }

  private static final double LEAST_ASIDE_MM =
      foilwright.head.PartSetting.LEAST_FROM_CENTRE.toMillimetres();

  private static String way(Handle.Track track, double factor) {
    return id(track.view())
        + " "
        + plain(track.facing())
        + track.stops().stream()
            .map(
                s ->
                    " "
                        + plain(s.value() * factor)
                        + ","
                        + plain(s.at().x())
                        + ","
                        + plain(s.at().y()))
            .collect(Collectors.joining());
  }

  private static String id(View view) {
    return "view-" + view.words();
  }

  private static String plain(double value) {
    String text = String.format(Locale.ROOT, "%.3f", value).replaceAll("\\.?0+$", "");
    return text.equals("-0") ? "0" : text;
  }

  private static String aside(double mm, LengthUnit unit) {
    return mm == 0
        ? "on the centre line"
        : unit.text(Length.ofMillimetres(Math.abs(mm)))
            + " to the client\u2019s "
            + (mm < 0 ? "left" : "right");
  }

  private static String key(HandleKind kind) {
    return switch (kind) {
      case START -> SectionFields.OFFSET;
      case SLICE -> SectionFields.SLICE;
      case BACKGROUND -> SectionFields.BACKGROUND;
      case ANGLE -> SectionFields.ANGLE;
      case TURNED -> SectionFields.TURNED;
      case INSET -> SectionFields.INSET;
      case COVER_AT_HAIRLINE -> SectionFields.COVER_AT_HAIRLINE;
      case COVER_AT_PART -> SectionFields.COVER_AT_PART;
      case PART_LINE -> "part";
    };
  }

  private static String name(HandleKind kind) {
    return switch (kind) {
      case START -> "before the first slice";
      case SLICE -> "slice";
      case BACKGROUND -> "background";
      case ANGLE -> "angle from level";
      case TURNED -> "turned";
      case INSET -> "inset from hairline";
      case COVER_AT_HAIRLINE -> "kept at hairline";
      case COVER_AT_PART -> "kept at part";
      case PART_LINE -> "Part line, from the centre line";
    };
  }
}
