package foilwright.web;

import foilwright.pattern.Background;
import foilwright.pattern.Extent;
import foilwright.pattern.Fill;
import foilwright.pattern.HeadDimensions;
import foilwright.pattern.KeptCover;
import foilwright.pattern.LowerEnd;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Remainder;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.units.Angle;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The fields of a section and what typing into them does. A length that the pattern keeps as a
 * share of the head stays one: it is shown as it is on this head, and what is typed is turned back
 * into a share of the same measure.
 */
final class SectionFields {
  static final String SLICE = "slice";
  private static final String LAST_SLICE = "last-slice";
  private static final String SLICES = "slices";
  static final String BACKGROUND = "background";
  private static final String LAST_BACKGROUND = "last-background";
  static final String ANGLE = "angle";
  static final String TURNED = "turned";
  private static final String LOWER_END = "lower-end";
  static final String INSET = "inset";
  static final String OFFSET = "offset";
  static final String COVER_AT_HAIRLINE = "cover-at-hairline";
  static final String COVER_AT_PART = "cover-at-part";
  private static final String COVER_OVER_FRINGE = "cover-over-fringe";
  private static final int MOST_SLICES = 200;

  private final HeadDimensions head;
  private final LengthUnit unit;

  SectionFields(HeadDimensions head, LengthUnit unit) {
    this.head = head;
    this.unit = unit;
  }

  /** A text that cannot stand in its field. */
  static final class WrongField extends Exception {
    private static final long serialVersionUID = 1;
    private final String key;

    WrongField(String key, String message) {
      super(message);
      this.key = key;
    }

    String key() {
      return key;
    }
  }

  private static String noHandle(Remainder remainder) {
    return remainder == Remainder.STRETCH
        ? "stretched to the end of the section, so it has no handle on the head"
        : "what is left over is shared between both ends, so it has no handle on the head";
  }

  List<SectionField> of(Section section) {
    List<SectionField> fields = new ArrayList<>();
    Fill fill = section.fill();
    addRun(fields, fill.slice(), SLICE, "Slice", LAST_SLICE, "Last slice");
    fields.add(
        SectionField.typed(
            SLICES,
            "Number of slices",
            fill.slices().isPresent() ? Integer.toString(fill.slices().getAsInt()) : "",
            "",
            "1",
            "empty: as many as fit"));
    fill.background()
        .findWidth()
        .ifPresent(
            run -> {
              addRun(fields, run, BACKGROUND, "Background", LAST_BACKGROUND, "Last background");
              if (fill.remainder() != Remainder.LEAVE) {
                int last = fields.size() - 1;
                fields.set(last, fields.get(last).withHint(noHandle(fill.remainder())));
              }
            });
    section
        .shape()
        .findAngle()
        .ifPresent(
            angle ->
                fields.add(
                    SectionField.typed(
                        ANGLE, "Angle from level", number(angle), "\u00b0", "1", "0 to 90")));
    if (section.shape() instanceof SectionShape.Horizontal
        || section.shape() instanceof SectionShape.Vertical) {
      fields.add(
          SectionField.typed(
              TURNED,
              "Turned",
              number(section.turned()),
              "\u00b0",
              "1",
              "-90 to 90, counter-clockwise as it is seen"));
    }
    if (section.shape() instanceof SectionShape.Diagonal diagonal) {
      fields.add(
          SectionField.chosen(
              LOWER_END,
              "Lower end",
              diagonal.lowerEnd().words(),
              Arrays.stream(LowerEnd.values()).map(LowerEnd::words).toList()));
    }
    Optional<Extent> inset = section.region().insetFromHairline();
    fields.add(length(INSET, "Inset from hairline", inset.orElse(Extent.zero())));
    fields.add(length(OFFSET, "Before the first slice", fill.offset()));
    KeptCover cover = section.keptCover();
    cover.atHairline().ifPresent(e -> fields.add(length(COVER_AT_HAIRLINE, "Kept at hairline", e)));
    cover.atPart().ifPresent(e -> fields.add(length(COVER_AT_PART, "Kept at part", e)));
    cover.overFringe().ifPresent(e -> fields.add(length(COVER_OVER_FRINGE, "Kept over fringe", e)));
    return fields;
  }

  private void addRun(
      List<SectionField> fields,
      Run run,
      String key,
      String label,
      String lastKey,
      String lastLabel) {
    fields.add(length(key, run.isEven() ? label : "First " + lower(label), run.first()));
    if (!run.isEven()) {
      fields.add(length(lastKey, lastLabel, run.last()));
    }
  }

  private static String lower(String label) {
    return label.substring(0, 1).toLowerCase(java.util.Locale.ROOT) + label.substring(1);
  }

  private SectionField length(String key, String label, Extent extent) {
    return SectionField.typed(
        key,
        label,
        unit.number(extent.resolve(head)),
        unit.word(),
        unit.step(),
        extent.match(a -> "", p -> "on this head; kept as a share of " + p.of().words()));
  }

  /** Keys of the fields whose text is not as shown. */
  List<String> changed(Section section, Map<String, String> typed) {
    return of(section).stream()
        .filter(
            field -> !typed.getOrDefault(field.key(), field.value()).strip().equals(field.value()))
        .map(SectionField::key)
        .toList();
  }

  /**
   * The section with what was typed.
   *
   * @param typed by key; keys that are missing or whose text is as shown change nothing
   */
  Section change(Section section, Map<String, String> typed) throws WrongField {
    Section changed = section;
    for (SectionField field : of(section)) {
      String text = typed.getOrDefault(field.key(), field.value()).strip();
      if (!text.equals(field.value())) {
        try {
          changed = change(changed, field.key(), text);
        } catch (IllegalArgumentException e) {
          throw new WrongField(field.key(), e.getMessage());
        }
      }
    }
    return changed;
  }

  private Section change(Section s, String key, String text) {
    Fill fill = s.fill();
    RegionSpec region = s.region();
    KeptCover cover = s.keptCover();
    return switch (key) {
      case SLICE -> s.withFill(fill.withSlice(first(fill.slice(), text)));
      case LAST_SLICE -> s.withFill(fill.withSlice(last(fill.slice(), text)));
      case SLICES -> s.withFill(fill.withSlices(slices(text)));
      case BACKGROUND -> withBackground(s, first(run(fill.background()), text));
      case LAST_BACKGROUND -> withBackground(s, last(run(fill.background()), text));
      case ANGLE -> s.withShape(s.shape().withAngle(angle(text)));
      case TURNED -> s.withTurned(angle(text));
      case LOWER_END -> s.withShape(lowered(s.shape(), text));
      case INSET ->
          s.withRegion(
              region.withInsetFromHairline(
                  extent(region.insetFromHairline().orElse(Extent.zero()), text)));
      case OFFSET -> s.withFill(fill.withOffset(extent(fill.offset(), text)));
      case COVER_AT_HAIRLINE ->
          s.withKeptCover(
              new KeptCover(covered(cover.atHairline(), text), cover.atPart(), cover.overFringe()));
      case COVER_AT_PART ->
          s.withKeptCover(
              new KeptCover(cover.atHairline(), covered(cover.atPart(), text), cover.overFringe()));
      case COVER_OVER_FRINGE ->
          s.withKeptCover(
              new KeptCover(cover.atHairline(), cover.atPart(), covered(cover.overFringe(), text)));
      default -> throw new IllegalArgumentException("there is no field " + key);
    };
  }

  private static OptionalInt slices(String text) {
    if (text.isEmpty()) {
      return OptionalInt.empty();
    } else if (text.matches("\\d{1,4}")
        && Integer.parseInt(text) >= 1
        && Integer.parseInt(text) <= MOST_SLICES) {
      return OptionalInt.of(Integer.parseInt(text));
    }
    throw new IllegalArgumentException(
        "\"" + text + "\" is not a number of slices; write 1 to " + MOST_SLICES);
  }

  private static Section withBackground(Section section, Run width) {
    Fill fill = section.fill();
    return section.withFill(fill.withBackground(fill.background().withWidth(width)));
  }

  private static Run run(Background background) {
    return background
        .findWidth()
        .orElseThrow(() -> new IllegalArgumentException("there is no background here"));
  }

  private Optional<Extent> covered(Optional<Extent> before, String text) {
    return Optional.of(extent(before.orElse(Extent.zero()), text));
  }

  private Run first(Run run, String text) {
    Extent first = extent(run.first(), text);
    return run.isEven() ? Run.of(first) : new Run(first, run.last());
  }

  private Run last(Run run, String text) {
    return new Run(run.first(), extent(run.last(), text));
  }

  /** What was typed, in the kind of the value that it replaces. */
  private Extent extent(Extent before, String text) {
    if (text.contains(" of ")) {
      return Extent.parse(text);
    }
    Length length = Length.parse(unit.withUnit(text));
    return before.match(
        absolute -> Extent.of(length),
        proportion ->
            new Extent.Proportion(
                rounded(length.toMillimetres() / head.of(proportion.of()).toMillimetres()),
                proportion.of()));
  }

  /** A share to a hundred-thousandth: finer than a hundredth of a millimetre on any head. */
  private static double rounded(double share) {
    return Math.rint(share * 1e5) / 1e5;
  }

  private static String withUnit(String text, String unit) {
    String point = text.matches("[+-]?\\d+,\\d+.*") ? text.replace(',', '.') : text;
    return point.matches("[+-]?(\\d+\\.?\\d*|\\.\\d+)") ? point + " " + unit : point;
  }

  private static Angle angle(String text) {
    return Angle.parse(withUnit(text.replace("\u00b0", "").strip(), "deg"));
  }

  private static String number(Angle angle) {
    String text = angle.toString();
    return text.substring(0, text.indexOf(' '));
  }

  private static SectionShape lowered(SectionShape shape, String words) {
    LowerEnd end =
        Arrays.stream(LowerEnd.values())
            .filter(e -> e.words().equals(words))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("\"" + words + "\" is not an end"));
    return new SectionShape.Diagonal(((SectionShape.Diagonal) shape).angle(), end);
  }
}
