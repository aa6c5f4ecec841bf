package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Curve;
import foilwright.drawing.Layer;
import foilwright.drawing.LineWeight;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Pen;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.View;
import foilwright.head.Tape;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** How to lay the tape for each measurement: the head from the side that shows it best. */
public final class TapeGuide {
  private static final Pen TAPE = Pen.of(SheetInk.ACCENT, LineWeight.STRONG);
  private static final double SCALE = 0.2;
  private static final double MARGIN_MM = 2;

  private TapeGuide() {}

  /** One small drawing, named {@code tape-} and the tape's name. Millimetres. */
  public static Scene of(DrawnHead drawn, Tape tape) {
    SideView side = drawn.view(view(tape));
    Box extent = side.extent();
    Box cell =
        new Box(
            MARGIN_MM,
            MARGIN_MM,
            SCALE * extent.width() + 2 * Frame.STRIP_MM,
            SCALE * extent.height() + MARGIN_MM + Frame.CAPTION_MM);
    Frame frame = Frame.centred(side, cell, SCALE).named(name(tape));
    List<Mark> marks = new ArrayList<>(frame.ground(drawn));
    Curve seen = frame.line(drawn.line(TapeLines.of(drawn.head(), tape)));
    if (!seen.isEmpty()) {
      marks.add(
          new Mark(
              frame.id("line"),
              Role.TAPE_LINE,
              Layer.LINES,
              tape.words(),
              Map.of("tape", tape.key()),
              List.of(Part.Shape.drawn(seen, TAPE))));
    }
    return new Scene(
        name(tape),
        tape.words(),
        how(tape),
        cell.right() + MARGIN_MM,
        cell.bottom() + MARGIN_MM,
        marks);
  }

  private static String name(Tape tape) {
    return "tape-" + tape.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static View view(Tape tape) {
    return switch (tape) {
      case AROUND, FRONT_TO_BACK -> View.LEFT;
      case EAR_TO_EAR, FRONT_HAIRLINE_HEIGHT -> View.FRONT;
      case NAPE_DEPTH -> View.BACK;
    };
  }

  /** What the hand does with the tape. */
  public static String how(Tape tape) {
    return switch (tape) {
      case AROUND ->
          "Once round over the middle of the brow and the most prominent point at the back, over"
              + " the ears, snug but not tight.";
      case FRONT_TO_BACK ->
          "Along the centre line from the front hairline over the top to the nape hairline.";
      case EAR_TO_EAR ->
          "From the dip in front of one ear over the highest point to the dip in front of the"
              + " other.";
      case FRONT_HAIRLINE_HEIGHT ->
          "From the middle of the brow straight up to the front hairline.";
      case NAPE_DEPTH ->
          "From the most prominent point at the back down the middle to the nape hairline.";
    };
  }
}
