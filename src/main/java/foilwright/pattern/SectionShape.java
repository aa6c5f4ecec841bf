package foilwright.pattern;

import foilwright.units.Angle;
import java.util.Objects;
import java.util.Optional;

/**
 * A family of partings. Straight partings are planes that contain the viewing direction; their
 * angle is counted from the level (or, seen from above, from the line ear to ear) and never has a
 * sign: which end is lower is said in words.
 */
public sealed interface SectionShape {
  /** Level partings. */
  record Horizontal() implements SectionShape {}

  /**
   * Straight partings at an angle.
   *
   * @param angle 0 to 90 deg, 0 level
   * @param lowerEnd which end lies lower; seen from above, which end lies nearer the back
   */
  record Diagonal(Angle angle, LowerEnd lowerEnd) implements SectionShape {
    public Diagonal {
      Require.within(angle, 0, 90, "a diagonal's angle");
      Objects.requireNonNull(lowerEnd);
    }
  }

  /** Upright partings; seen from above, from front to back. */
  record Vertical() implements SectionShape {}

  /**
   * Two mirrored diagonals that meet on a line; each arm owns its side.
   *
   * @param angle of each arm with the level, 0 to 90 deg
   * @param apex whether the meeting point is the highest or the lowest of each parting
   */
  record V(Angle angle, Apex apex, MeetingLine meetingLine) implements SectionShape {
    public V {
      Require.within(angle, 0, 90, "a V's angle");
      Objects.requireNonNull(apex);
      Objects.requireNonNull(meetingLine);
    }
  }

  /**
   * Lines of equal surface distance from a boundary.
   *
   * @param from distance at which the first parting lies; a fill's offset is added to it
   * @param to distance at which the family ends; as far as the region goes when absent
   */
  record Halo(HaloBoundary measuredFrom, Extent from, Optional<Extent> to) implements SectionShape {
    public Halo {
      Objects.requireNonNull(measuredFrom);
      Require.notNegative(from, "a halo's start");
      to.ifPresent(e -> Require.positive(e, "a halo's end"));
    }

    public static Halo from(HaloBoundary boundary) {
      return new Halo(boundary, Extent.zero(), Optional.empty());
    }
  }

  /**
   * Planes through an axis at a point.
   *
   * @param fromAngle where the first parting lies, seen from outside along the axis: 0 points to
   *     the face, 90 deg to the client's right, 180 deg to the back, 270 deg (or -90 deg) to the
   *     client's left; -360 to 360 deg
   * @param toAngle where the family ends; more than {@code fromAngle} turns toward the client's
   *     right, less turns the other way; at most a full turn from it
   * @param radius perpendicular distance from the axis at which slice and background are measured
   */
  record Pivot(PivotPoint point, Axis axis, Angle fromAngle, Angle toAngle, Extent radius)
      implements SectionShape {
    public Pivot {
      Objects.requireNonNull(point);
      Objects.requireNonNull(axis);
      Require.within(fromAngle, -360, 360, "a pivot's first angle");
      Require.within(toAngle, -360, 360, "a pivot's last angle");
      Require.positive(radius, "a pivot's radius");
    }
  }

  /** Lines that cross the way the hair falls. */
  record AcrossFall() implements SectionShape {}

  /** Lines that follow the way the hair falls. */
  record AlongFall() implements SectionShape {}

  /** Where the arms of a V meet: at their highest or lowest point. */
  enum Apex {
    UP("up"),
    DOWN("down");

    private final String words;

    Apex(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** The line on which the arms of a V meet. */
  enum MeetingLine {
    CENTRE_LINE("centre line"),
    EAR_LINE("ear line"),
    /** The section's own guide line, through its centre. */
    GUIDE_LINE("guide line");

    private final String words;

    MeetingLine(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** The direction of a pivot's axis. */
  enum Axis {
    SURFACE_NORMAL("surface normal"),
    VERTICAL("vertical");

    private final String words;

    Axis(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** One answer per shape, so that a new shape does not compile until every use has one. */
  interface Cases<R> {
    R horizontal(Horizontal shape);

    R diagonal(Diagonal shape);

    R vertical(Vertical shape);

    R v(V shape);

    R halo(Halo shape);

    R pivot(Pivot shape);

    R acrossFall(AcrossFall shape);

    R alongFall(AlongFall shape);
  }

  /** The angle of its partings with the level, where it says one. */
  default Optional<Angle> findAngle() {
    return this instanceof Diagonal d
        ? Optional.of(d.angle())
        : this instanceof V v ? Optional.of(v.angle()) : Optional.empty();
  }

  /** The same shape at another angle; a shape that says none stays as it is. */
  default SectionShape withAngle(Angle angle) {
    return this instanceof Diagonal d
        ? new Diagonal(angle, d.lowerEnd())
        : this instanceof V v ? new V(angle, v.apex(), v.meetingLine()) : this;
  }

  default <R> R match(Cases<R> cases) {
    if (this instanceof Horizontal s) {
      return cases.horizontal(s);
    } else if (this instanceof Diagonal s) {
      return cases.diagonal(s);
    } else if (this instanceof Vertical s) {
      return cases.vertical(s);
    } else if (this instanceof V s) {
      return cases.v(s);
    } else if (this instanceof Halo s) {
      return cases.halo(s);
    } else if (this instanceof Pivot s) {
      return cases.pivot(s);
    } else if (this instanceof AcrossFall s) {
      return cases.acrossFall(s);
    }
    return cases.alongFall((AlongFall) this);
  }

  /** The shape on the other side of the head. */
  default SectionShape mirrored() {
    if (this instanceof Diagonal d) {
      return new Diagonal(d.angle(), d.lowerEnd().mirrored());
    } else if (this instanceof Pivot p) {
      return new Pivot(
          p.point().mirrored(),
          p.axis(),
          p.fromAngle().times(-1),
          p.toAngle().times(-1),
          p.radius());
    }
    return this;
  }
}
