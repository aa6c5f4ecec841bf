package foilwright.sheet;

import foilwright.anatomy.Landmark;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.head.Head;
import foilwright.head.HeadForm;
import foilwright.head.Tape;
import java.util.ArrayList;
import java.util.List;

/** Where the tape lies on the head for each measurement; head frame, millimetres. */
final class TapeLines {
  private static final int STEPS = 90;

  private TapeLines() {}

  static Polyline of(Head head, Tape tape) {
    HeadForm form = head.form();
    Vector3 brow = head.landmark(Landmark.BROW);
    Vector3 back = head.landmark(Landmark.BACK_POINT);
    return switch (tape) {
      case AROUND -> {
        Vector3 front = brow.minus(back).unit();
        yield turn(form, brow.lerp(back, 0.5), front, Vector3.RIGHT, 0, 2 * Math.PI);
      }
      case FRONT_TO_BACK -> head.centreLine();
      case EAR_TO_EAR -> {
        Vector3 up = head.landmark(Landmark.APEX).unit();
        yield turn(form, Vector3.ZERO, Vector3.RIGHT, up, 0, Math.PI);
      }
      case FRONT_HAIRLINE_HEIGHT -> straight(form, brow, head.landmark(Landmark.FRONT_HAIRLINE));
      case NAPE_DEPTH -> straight(form, back, head.landmark(Landmark.NAPE_HAIRLINE));
    };
  }

  /** The plane cut of a form about a point inside, from one angle to another. */
  private static Polyline turn(
      HeadForm form, Vector3 inside, Vector3 first, Vector3 second, double from, double to) {
    List<Vector3> points = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double t = from + (to - from) * i / STEPS;
      points.add(form.exit(inside, first.times(Math.cos(t)).plus(second.times(Math.sin(t)))));
    }
    return Polyline.of(points);
  }

  /** The plane cut through the centre from one surface point to another, the short way. */
  private static Polyline straight(HeadForm form, Vector3 from, Vector3 to) {
    List<Vector3> points = new ArrayList<>();
    int steps = STEPS / 4;
    for (int i = 0; i <= steps; i++) {
      points.add(form.surfacePoint(from.lerp(to, (double) i / steps)));
    }
    return Polyline.of(points);
  }
}
