package foilwright.app;

import foilwright.pattern.FoilRule;
import foilwright.pattern.Pattern;
import foilwright.pattern.Pick;
import foilwright.pattern.PickDepth;
import foilwright.pattern.Section;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * A cure that the program can carry out by itself. What needs a person's judgement is none and
 * stays words.
 */
public sealed interface Remedy {
  /** Plain English that says exactly what it will do, without a full stop. */
  String words();

  /** Foils come out another way; the pattern stays as it is. */
  record TakeOut(WayOut way) implements Remedy {
    @Override
    public String words() {
      return switch (way) {
        case BEST -> "Take foils out the best way found";
        case TOGETHER -> "Take all foils out at one moment";
        case IN_ORDER -> "Take foils out in order after the last is in";
        case WHILE_PLACING -> "Take foils out as they fall due";
        case WAVES -> "Take foils out in waves";
        case TWO_MIXES -> "Give the first foils the weaker mix";
        case TWO_VISITS -> "Share the foils between two visits";
      };
    }
  }

  /** A section of the pattern is changed. */
  sealed interface OfSection extends Remedy {
    /** Index in the pattern, from 0. */
    int section();

    /** The section as it is then. */
    Section applied(Section before);

    /** The pattern as it is then. */
    default Pattern applied(Pattern before) {
      return before.withSection(section(), this::applied);
    }
  }

  /** As many slices as fit, instead of a number of them. */
  record FillToTheEnd(int section, String name) implements OfSection {
    @Override
    public String words() {
      return "Let \u201c" + name + "\u201d have as many slices as fit";
    }

    @Override
    public Section applied(Section before) {
      return before.withFill(before.fill().withSlices(OptionalInt.empty()));
    }
  }

  /** As few foils of equal width as the house's foil allows, instead of a fixed number. */
  record DivideEvenly(int section, String name) implements OfSection {
    @Override
    public String words() {
      return "Divide the slices of \u201c" + name + "\u201d evenly into foils";
    }

    @Override
    public Section applied(Section before) {
      return before.withFill(
          before.fill().withFoils(new FoilRule.Evenly(), before.fill().shortEnds()));
    }
  }

  /** Rows one above the other. */
  record DoNotShiftRows(int section, String name) implements OfSection {
    @Override
    public String words() {
      return "Do not shift the rows of \u201c" + name + "\u201d";
    }

    @Override
    public Section applied(Section before) {
      return before.withBrickLay(false);
    }
  }

  /**
   * A pick of another depth.
   *
   * @param pick index in the section, from 0
   */
  record SetPickDepth(int section, String name, int pick, Length depth) implements OfSection {
    @Override
    public String words() {
      return "Set the pick of \u201c" + name + "\u201d to " + depth + " deep";
    }

    @Override
    public Section applied(Section before) {
      List<Pick> picks = new ArrayList<>(before.fill().picks());
      picks.set(pick, picks.get(pick).withDepth(new PickDepth.OfLength(depth)));
      return before.withFill(before.fill().withPicks(picks.toArray(Pick[]::new)));
    }
  }
}
