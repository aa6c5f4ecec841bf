package foilwright.sheet;

import foilwright.drawing.Point;
import foilwright.drawing.View;
import foilwright.geometry.Vector3;
import foilwright.head.HeadForm;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The quiet ink drawing of one head in five views: the outline is the silhouette of its form; face,
 * ears and neck are drawn free hand on the template and stretched with the form, so they show where
 * things are and are not measured.
 *
 * <p>Strokes are in millimetres of the head as {@link View#project} gives them.
 */
final class HeadFigure {
  private static final int SILHOUETTE_STEPS = 30;
  private static final int HORIZON_STEPS = 96;

  /** Every fourth point of the contour is enough for a smooth line through them. */
  private static final int DRAWN_STEP = 4;

  private static final double NECK_END_MM = -132;

  /** Where the face of the drawing begins, and where it no longer follows the form: template z. */
  private static final double BROW_MM = 37;

  private static final double NOSE_BRIDGE_MM = 14;

  /** Template (y, z): the face in profile from below the brow to the front of the neck. */
  private static final double[][] PROFILE = {
    {111.3, 30},
    {109.6, 21},
    {110.0, 15},
    {113.4, 7},
    {118.2, 0.5},
    {123.8, -6.5},
    {129.0, -13.2},
    {130.2, -17.6},
    {127.6, -22.4},
    {121.4, -25.6},
    {117.0, -29.0},
    {116.4, -34.0},
    {118.8, -38.6},
    {119.2, -42.2},
    {114.8, -45.6},
    {117.4, -49.2},
    {116.6, -54.0},
    {111.4, -59.4},
    {111.6, -66.0},
    {112.0, -74.0},
    {109.0, -83.0},
    {102.0, -90.6},
    {92.0, -95.6},
    {76.0, -100.0},
    {61.0, -105.5},
    {51.0, -113.5},
    {45.5, -122.5},
    {43.5, NECK_END_MM}
  };

  /** Template (y, z): the back of the neck below the nape. */
  private static final double[][] NECK_BACK = {
    {-66.6, -76}, {-66.4, -90}, {-67.6, -104}, {-70.0, -118}, {-73.0, NECK_END_MM}
  };

  private static final double[][] EAR_SIDE = {
    {1.5, 11}, {1.0, 20}, {-4.5, 28.5}, {-14, 32.5}, {-25, 29.5}, {-32, 20}, {-32.5, 7},
    {-28, -7}, {-21.5, -18}, {-17, -28}, {-10, -34}, {-3, -31.5}, {-0.5, -23}, {-0.5, -15}
  };
  private static final double[][] EAR_RIM = {
    {-5, 12}, {-7, 21}, {-15, 25.5}, {-23, 22}, {-26.5, 13}, {-24.5, 2}, {-19.5, -8}
  };
  private static final double[][] EAR_HOLLOW = {
    {-0.5, -15}, {-5, -11}, {-4, -4}, {-8.5, 3}, {-15, 1.5}, {-17, -6}, {-12.5, -14}, {-6.5, -16.5}
  };
  private static final double[][] JAW_SIDE = {
    {-2.5, -42}, {1, -56}, {7, -71}, {19, -83}, {37, -90.5}, {55, -95}
  };
  private static final double[][] LID_SIDE = {{100.5, 9.5}, {97.5, 6}, {92, 5}, {86, 7.5}};
  private static final double[][] BROW_SIDE = {{106, 27}, {99.5, 31.5}, {91, 31.8}, {82, 27.5}};
  private static final double[][] NOSTRIL_SIDE = {
    {121.4, -22.5}, {118.8, -19.8}, {116, -21}, {114, -17.5}, {115.4, -12.5}
  };
  private static final double[][] MOUTH_SIDE = {{114.8, -45.6}, {109, -45.4}, {103, -47}};

  /** Template (x, z), one half. */
  private static final double[][] CHEEK = {
    {80.4, -4},
    {78.0, -18},
    {74.0, -35},
    {68.0, -53},
    {59.0, -69},
    {46.5, -83},
    {32.0, -94.5},
    {16.0, -101.4},
    {0, -103.2}
  };

  private static final double[][] NECK_FRONT = {
    {49.5, -78}, {47.6, -92}, {48.2, -110}, {52.6, NECK_END_MM}
  };
  private static final double[][] HEAD_BEHIND = {
    {80.4, -4},
    {78.0, -20},
    {72.6, -40},
    {64.6, -60},
    {57.0, -78},
    {53.2, -96},
    {52.8, -114},
    {55.6, NECK_END_MM}
  };
  private static final double[][] EAR_FRONT = {
    {80.5, 17},
    {84, 26},
    {89.5, 29.5},
    {94, 25},
    {94.4, 13},
    {91, -3},
    {87, -17},
    {83.5, -28},
    {79.5, -32},
    {77.0, -28}
  };
  private static final double[][] EAR_FRONT_RIM = {{85, 17}, {88.5, 21}, {89.6, 12}, {87, -2}};
  private static final double[][] LID_FRONT = {
    {19, 9.5}, {24.5, 5.6}, {32.5, 4.2}, {41, 6}, {47, 10}
  };
  private static final double[][] BROW_FRONT = {
    {15.5, 25.5}, {25, 30}, {36, 31.4}, {46, 28.4}, {52, 24}
  };
  private static final double[][] NOSE_FRONT = {
    {-14.5, -15},
    {-16.4, -20.5},
    {-12.4, -24.8},
    {-6.6, -23.8},
    {0, -27},
    {6.6, -23.8},
    {12.4, -24.8},
    {16.4, -20.5},
    {14.5, -15}
  };
  private static final double[][] MOUTH_FRONT = {
    {-24, -46}, {-12, -44.6}, {-4, -44}, {0, -45}, {4, -44}, {12, -44.6}, {24, -46}
  };
  private static final double[][] LIP_FRONT = {{-11, -54.4}, {0, -56.6}, {11, -54.4}};

  /** Template (x, y) from above. */
  private static final double[][] NOSE_TOP = {
    {-13, 109}, {-9.5, 117}, {-6.4, 125.5}, {0, 130}, {6.4, 125.5}, {9.5, 117}, {13, 109}
  };

  private static final double[][] EAR_TOP = {
    {79, 3},
    {84.6, -1.5},
    {90, -10},
    {94.2, -21},
    {92.6, -28.6},
    {87.4, -27},
    {83.4, -20.4},
    {79.6, -16}
  };
  private static final double[][] EAR_TOP_RIM = {{83, -4}, {87, -11}, {90, -21}};

  /** What a stroke belongs to; outlines are drawn heavier than features. */
  enum Kind {
    OUTLINE,
    FEATURE
  }

  /**
   * One stroke of the drawing.
   *
   * @param points through which a smooth line runs
   * @param covers whether its inside hides what was drawn before it
   */
  record Stroke(Kind kind, List<Point> points, boolean closed, boolean covers) {
    Stroke {
      points = List.copyOf(points);
    }
  }

  private final HeadForm form;
  private final Vector3 factors;
  private final double napeMm;

  /**
   * @param napeMm height of the nape hairline at the centre, head frame; below it the neck is drawn
   *     free hand
   */
  HeadFigure(HeadForm form, double napeMm) {
    this.form = form;
    this.factors = form.factors();
    this.napeMm = napeMm;
  }

  List<Stroke> strokes(View view) {
    return switch (view) {
      case FRONT -> front();
      case BACK -> back();
      case LEFT, RIGHT -> side(view);
      case TOP -> top();
    };
  }

  /** The contour of the form as seen from a side, closed, without repeating its first point. */
  List<Point> horizon(View view) {
    List<Point> round = contour(view, 0, 2 * Math.PI, HORIZON_STEPS);
    return round.subList(0, HORIZON_STEPS);
  }

  private List<Stroke> side(View view) {
    List<Stroke> strokes = new ArrayList<>();
    strokes.add(outline(profile().stream().map(view::project).toList()));
    double x = view == View.LEFT ? -1 : 1;
    for (double[][] line :
        List.of(EAR_RIM, EAR_HOLLOW, JAW_SIDE, LID_SIDE, BROW_SIDE, NOSTRIL_SIDE, MOUTH_SIDE)) {
      strokes.add(feature(sideways(view, line, x)));
    }
    strokes.add(outline(sideways(view, EAR_SIDE, x)));
    return strokes;
  }

  private List<Point> sideways(View view, double[][] line, double x) {
    List<Point> points = new ArrayList<>();
    for (double[] p : line) {
      points.add(view.project(new Vector3(x, p[0], p[1]).scaled(factors)));
    }
    return points;
  }

  /** The mid-line from the front of the neck over face, top and nape to the back of the neck. */
  private List<Vector3> profile() {
    List<Vector3> line = new ArrayList<>();
    double browZ = BROW_MM * factors.z();
    Vector3 brow = midLineAt(browZ, 1);
    double[] first = PROFILE[0];
    double off = brow.y() - (first[0] + 0.3) * factors.y();
    for (int i = PROFILE.length - 1; i >= 0; i--) {
      double share = (PROFILE[i][1] - NOSE_BRIDGE_MM) / (BROW_MM - NOSE_BRIDGE_MM);
      double shift = off * Math.max(0, share);
      line.add(new Vector3(0, PROFILE[i][0] * factors.y() + shift, PROFILE[i][1] * factors.z()));
    }
    Vector3 nape = midLineAt(napeMm, -1);
    line.addAll(midLine(brow, nape));
    double napeOff = nape.y() - neckBackAt(napeMm / factors.z()) * factors.y();
    for (double[] p : NECK_BACK) {
      double z = p[1] * factors.z();
      if (z < napeMm - 6) {
        double end = NECK_END_MM * factors.z();
        double share = (z - end) / (napeMm - end);
        line.add(new Vector3(0, p[0] * factors.y() + napeOff * share, z));
      }
    }
    return line;
  }

  private static double neckBackAt(double templateZ) {
    double y = NECK_BACK[0][0];
    for (int i = 0; i + 1 < NECK_BACK.length; i++) {
      double t = (templateZ - NECK_BACK[i][1]) / (NECK_BACK[i + 1][1] - NECK_BACK[i][1]);
      if (t >= 0 && t <= 1) {
        y = NECK_BACK[i][0] + t * (NECK_BACK[i + 1][0] - NECK_BACK[i][0]);
      }
    }
    return y;
  }

  /** The point of the mid-line at a height, on the front (+1) or the back (-1). */
  private Vector3 midLineAt(double z, double sign) {
    Vector3 centre = form.centre();
    double low = -Math.PI / 2 * 0.95;
    double high = Math.PI / 2 * 0.95;
    for (int i = 0; i < 50; i++) {
      double mid = (low + high) / 2;
      if (midLineToward(centre, mid, sign).z() < z) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return midLineToward(centre, (low + high) / 2, sign);
  }

  private Vector3 midLineToward(Vector3 centre, double elevation, double sign) {
    return form.surfacePoint(
        centre.plus(new Vector3(0, sign * Math.cos(elevation), Math.sin(elevation))));
  }

  /** The mid-line over the top between two of its points, both included. */
  private List<Vector3> midLine(Vector3 front, Vector3 back) {
    Vector3 centre = form.centre();
    double from = Math.atan2(front.z() - centre.z(), front.y() - centre.y());
    double to = Math.atan2(back.z() - centre.z(), back.y() - centre.y());
    if (to < from) {
      to += 2 * Math.PI;
    }
    List<Vector3> line = new ArrayList<>();
    for (int i = 0; i <= SILHOUETTE_STEPS; i++) {
      double t = from + (to - from) * i / SILHOUETTE_STEPS;
      line.add(form.surfacePoint(centre.plus(new Vector3(0, Math.cos(t), Math.sin(t)))));
    }
    return line;
  }

  /**
   * The contour of the form as seen from a side, from one angle on the sheet to another about the
   * form's centre; angles clockwise from the right, radians.
   */
  private List<Point> contour(View view, double from, double to, int steps) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i <= steps; i++) {
      double t = from + (to - from) * i / steps;
      Vector3 outward = view.rightward().times(Math.cos(t)).minus(view.up().times(Math.sin(t)));
      points.add(view.project(farthest(view, outward)));
    }
    return points;
  }

  /**
   * The surface point in the half plane of the view direction that lies farthest outward, within
   * 1e-4 mm of its reach.
   */
  private Vector3 farthest(View view, Vector3 outward) {
    double ratio = (Math.sqrt(5) - 1) / 2;
    double low = -1.2;
    double high = 1.2;
    double a = high - ratio * (high - low);
    double b = low + ratio * (high - low);
    double atA = reach(view, outward, a);
    double atB = reach(view, outward, b);
    while (high - low > 2e-3) {
      if (atA > atB) {
        high = b;
        b = a;
        atB = atA;
        a = high - ratio * (high - low);
        atA = reach(view, outward, a);
      } else {
        low = a;
        a = b;
        atA = atB;
        b = low + ratio * (high - low);
        atB = reach(view, outward, b);
      }
    }
    return towards(view, outward, (low + high) / 2);
  }

  private double reach(View view, Vector3 outward, double tilt) {
    return towards(view, outward, tilt).minus(form.centre()).dot(outward);
  }

  private Vector3 towards(View view, Vector3 outward, double tilt) {
    Vector3 direction = outward.times(Math.cos(tilt)).plus(view.toViewer().times(Math.sin(tilt)));
    return form.surfacePoint(form.centre().plus(direction));
  }

  private List<Stroke> front() {
    List<Stroke> strokes = new ArrayList<>();
    bothSides(strokes, Kind.OUTLINE, View.FRONT, NECK_FRONT);
    bothSides(strokes, Kind.OUTLINE, View.FRONT, EAR_FRONT);
    bothSides(strokes, Kind.FEATURE, View.FRONT, EAR_FRONT_RIM);
    List<Point> face = upperArc(View.FRONT);
    face.addAll(lower(CHEEK, 1));
    List<Point> other = lower(CHEEK, -1);
    Collections.reverse(other);
    face.addAll(other.subList(1, other.size()));
    strokes.add(new Stroke(Kind.OUTLINE, face, true, true));
    bothSides(strokes, Kind.FEATURE, View.FRONT, LID_FRONT);
    bothSides(strokes, Kind.FEATURE, View.FRONT, BROW_FRONT);
    for (double[][] line : List.of(NOSE_FRONT, MOUTH_FRONT, LIP_FRONT)) {
      strokes.add(feature(flat(View.FRONT, line, 1)));
    }
    return strokes;
  }

  private List<Stroke> back() {
    List<Stroke> strokes = new ArrayList<>();
    bothSides(strokes, Kind.OUTLINE, View.BACK, EAR_FRONT);
    bothSides(strokes, Kind.FEATURE, View.BACK, EAR_FRONT_RIM);
    List<Point> head = lower(HEAD_BEHIND, -1);
    Collections.reverse(head);
    head.addAll(upperArc(View.BACK));
    head.addAll(lower(HEAD_BEHIND, 1));
    strokes.add(new Stroke(Kind.OUTLINE, head, false, true));
    return strokes;
  }

  /** From the left of the sheet over the top to the right, down to the level of the ears. */
  private List<Point> upperArc(View view) {
    double level = form.centre().z() / (80 * factors.x());
    return new ArrayList<>(contour(view, -Math.PI - level, level, SILHOUETTE_STEPS));
  }

  /** A line below the ears, from the outside inwards, on the right (+1) or left of the sheet. */
  private List<Point> lower(double[][] line, double side) {
    List<Point> points = new ArrayList<>();
    for (double[] p : line) {
      points.add(new Point(side * p[0] * factors.x(), -p[1] * factors.z()));
    }
    return points;
  }

  private List<Stroke> top() {
    List<Stroke> strokes = new ArrayList<>();
    strokes.add(outline(flat(View.TOP, NOSE_TOP, 1)));
    bothSides(strokes, Kind.OUTLINE, View.TOP, EAR_TOP);
    bothSides(strokes, Kind.FEATURE, View.TOP, EAR_TOP_RIM);
    List<Point> round = contour(View.TOP, 0, 2 * Math.PI, HORIZON_STEPS / DRAWN_STEP);
    strokes.add(new Stroke(Kind.OUTLINE, round.subList(1, round.size()), true, true));
    return strokes;
  }

  private void bothSides(List<Stroke> strokes, Kind kind, View view, double[][] line) {
    strokes.add(new Stroke(kind, flat(view, line, 1), false, false));
    strokes.add(new Stroke(kind, flat(view, line, -1), false, false));
  }

  /** A line given by x and by height on the sheet: z in the level views, y from above. */
  private List<Point> flat(View view, double[][] line, double side) {
    double up = view == View.TOP ? factors.y() : factors.z();
    List<Point> points = new ArrayList<>();
    for (double[] p : line) {
      points.add(new Point(side * p[0] * factors.x(), -p[1] * up));
    }
    return points;
  }

  private static Stroke outline(List<Point> points) {
    return new Stroke(Kind.OUTLINE, points, false, false);
  }

  private static Stroke feature(List<Point> points) {
    return new Stroke(Kind.FEATURE, points, false, false);
  }
}
