package foilwright.hair;

import foilwright.units.Angle;
import foilwright.units.Length;
import java.util.function.Function;

/** How hair is held when it is cut, which decides how long it is at each root. */
public sealed interface CutShape {
  /** The longest that a cut may leave anywhere it names a length. */
  Length MOST = Length.ofMillimetres(1500);

  /** Lengths typed by zone. */
  record Table() implements CutShape {}

  /**
   * Combed down in its fall and cut on one level line: each hair is as long as its way down to that
   * line.
   *
   * @param atNape length left at the nape hairline on the centre line, which sets the level
   */
  record OneLength(Length atNape) implements CutShape {
    public OneLength {
      require("a length at the nape", atNape);
    }
  }

  /**
   * Held away from its fall by an angle: 0 is one length; the more, the less is left higher up; 90
   * leaves the same everywhere, and beyond it the top is the shortest.
   *
   * @param atNape length left at the nape hairline on the centre line
   * @param held angle between the hair and its fall, 0 to 120 degrees
   */
  record Graduated(Length atNape, Angle held) implements CutShape {
    public Graduated {
      require("a length at the nape", atNape);
      if (!(held.toDegrees() >= 0 && held.toDegrees() <= 120)) {
        throw new IllegalArgumentException("hair held at " + held + " is outside 0 deg to 120 deg");
      }
    }
  }

  /** Held straight out everywhere: the same length everywhere. */
  record UniformLayers(Length length) implements CutShape {
    public UniformLayers {
      require("a length", length);
    }
  }

  /**
   * All held up to one point above the apex: each hair is as long as its way there, tight over the
   * head where the head is in between.
   *
   * @param onTop length left at the apex: how high the point is
   */
  record LongLayers(Length onTop) implements CutShape {
    public LongLayers {
      require("a length on top", onTop);
    }
  }

  default <R> R match(
      Function<Table, R> table,
      Function<OneLength, R> oneLength,
      Function<Graduated, R> graduated,
      Function<UniformLayers, R> uniform,
      Function<LongLayers, R> longLayers) {
    if (this instanceof Table s) {
      return table.apply(s);
    } else if (this instanceof OneLength s) {
      return oneLength.apply(s);
    } else if (this instanceof Graduated s) {
      return graduated.apply(s);
    } else if (this instanceof UniformLayers s) {
      return uniform.apply(s);
    }
    return longLayers.apply((LongLayers) this);
  }

  /** Whether the ends meet in one line, held together; layers are cut point by point instead. */
  default boolean isBlunt() {
    return this instanceof OneLength || this instanceof Graduated;
  }

  /** What the cut is called. */
  default String words() {
    return match(
        s -> "lengths by zone",
        s -> "one length",
        s -> "graduated, held at " + s.held(),
        s -> "uniform layers",
        s -> "long layers");
  }

  private static void require(String name, Length length) {
    if (!(length.toMillimetres() >= 1) || length.compareTo(MOST) > 0) {
      throw new IllegalArgumentException(name + " of " + length + " is outside 1 mm to " + MOST);
    }
  }
}
