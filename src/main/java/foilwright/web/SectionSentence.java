package foilwright.web;

import foilwright.pattern.Background;
import foilwright.pattern.Extent;
import foilwright.pattern.Fill;
import foilwright.pattern.HeadDimensions;
import foilwright.pattern.Pick;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.units.Angle;
import java.util.Locale;
import java.util.stream.Collectors;

/** One sentence of the trade on what a section does. */
final class SectionSentence {
  private final HeadDimensions head;
  private final LengthUnit unit;

  private SectionSentence(HeadDimensions head, LengthUnit unit) {
    this.head = head;
    this.unit = unit;
  }

  static String of(Section section, HeadDimensions head, LengthUnit unit) {
    SectionSentence words = new SectionSentence(head, unit);
    return words.shape(section.shape())
        + (section.mirror() ? ", on both sides" : "")
        + "; "
        + words.slices(section.fill())
        + ", "
        + words.background(section.fill().background())
        + "; "
        + section.fill().picks().stream().map(words::pick).collect(Collectors.joining(", then "))
        + ".";
  }

  private String shape(SectionShape shape) {
    return shape.match(
        new SectionShape.Cases<>() {
          @Override
          public String horizontal(SectionShape.Horizontal s) {
            return "Horizontal";
          }

          @Override
          public String diagonal(SectionShape.Diagonal s) {
            String toward =
                switch (s.lowerEnd()) {
                  case FACE -> " toward the face";
                  case BACK -> " toward the back";
                  default -> "";
                };
            return "Diagonal"
                + toward
                + ", "
                + degrees(s.angle())
                + ", "
                + s.lowerEnd().words()
                + " end lower";
          }

          @Override
          public String vertical(SectionShape.Vertical s) {
            return "Vertical";
          }

          @Override
          public String v(SectionShape.V s) {
            return "V, point "
                + s.apex().words()
                + " on the "
                + s.meetingLine().words()
                + ", arms at "
                + degrees(s.angle());
          }

          @Override
          public String halo(SectionShape.Halo s) {
            return "Halo";
          }

          @Override
          public String pivot(SectionShape.Pivot s) {
            return "Pivot from " + degrees(s.fromAngle()) + " to " + degrees(s.toAngle());
          }

          @Override
          public String acrossFall(SectionShape.AcrossFall s) {
            return "Across the fall";
          }

          @Override
          public String alongFall(SectionShape.AlongFall s) {
            return "Along the fall";
          }
        });
  }

  private String slices(Fill fill) {
    String thickness = run(fill.slice());
    if (fill.slices().isEmpty()) {
      return "as many slices of " + thickness + " as fit";
    }
    int count = fill.slices().getAsInt();
    return count + (count == 1 ? " slice of " : " slices of ") + thickness;
  }

  private String background(Background background) {
    return background.match(
        even -> "background " + run(even.width()),
        wedge ->
            "background "
                + run(wedge.width())
                + " at the "
                + wedge.wideEnd().words()
                + " end, closing to a point",
        none -> "back-to-back");
  }

  private String pick(Pick pick) {
    return pick.match(
        solid -> "solid",
        weave -> "weave " + unit.number(weave.pick()) + " by " + unit.text(weave.gap()),
        zigzag -> "zigzag " + unit.number(zigzag.tooth()) + " by " + unit.text(zigzag.gap()));
  }

  private String run(Run run) {
    return run.isEven()
        ? text(run.first())
        : unit.number(run.first().resolve(head)) + " to " + text(run.last());
  }

  private String text(Extent extent) {
    return unit.text(extent.resolve(head));
  }

  private static String degrees(Angle angle) {
    return String.format(Locale.ROOT, "%.0f\u00b0", angle.toDegrees());
  }
}
