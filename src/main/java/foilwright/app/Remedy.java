package foilwright.app;

import foilwright.pattern.Extent;
import foilwright.pattern.FoilRule;
import foilwright.pattern.KeptCover;
import foilwright.pattern.Pattern;
import foilwright.pattern.Pick;
import foilwright.pattern.PickDepth;
import foilwright.pattern.Run;
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

  /**
   * More pairs of hands; the pattern stays as it is.
   *
   * @param hands pairs of them, 2 to 4
   */
  record WorkTogether(int hands) implements Remedy {
    @Override
    public String words() {
      return "Work with "
          + (hands == 2 ? "two" : hands == 3 ? "three" : "four")
          + " pairs of hands";
    }
  }

  /** Another pace of the same house; the pattern stays as it is. */
  record PlanAtPace(String pace) implements Remedy {
    @Override
    public String words() {
      return "Let the pace \u201c" + pace + "\u201d place the foils";
    }
  }

  /** Foils that show least are left out of the pattern until there is a visit. */
  record LeaveOutUntilItFits() implements Remedy {
    @Override
    public String words() {
      return "Leave out the foils that show least until the visit fits";
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

  /** Slices of another thickness, all alike. */
  record SetSlice(int section, String name, Length slice) implements OfSection {
    @Override
    public String words() {
      return "Set the slices of \u201c" + name + "\u201d to " + slice;
    }

    @Override
    public Section applied(Section before) {
      return before.withFill(before.fill().withSlice(Run.of(Extent.of(slice))));
    }
  }

  /** The first slice at the edge of the region. */
  record BeginAtTheEdge(int section, String name) implements OfSection {
    @Override
    public String words() {
      return "Begin \u201c" + name + "\u201d at the edge of its region";
    }

    @Override
    public Section applied(Section before) {
      return before.withFill(before.fill().withOffset(Extent.zero()));
    }
  }

  /**
   * Less of the hair kept as cover.
   *
   * @param share what stays of the cover's width; with 0 no cover is kept
   */
  record KeepLessCover(int section, String name, double share) implements OfSection {
    @Override
    public String words() {
      return share == 0
          ? "Keep no cover in \u201c" + name + "\u201d"
          : "Keep "
              + Math.round(100 * share)
              + " % of the cover\u2019s width in \u201c"
              + name
              + "\u201d";
    }

    @Override
    public Section applied(Section before) {
      KeptCover cover = before.keptCover();
      return before.withKeptCover(
          share == 0
              ? KeptCover.NONE
              : new KeptCover(
                  cover.atHairline().map(e -> e.times(share)),
                  cover.atPart().map(e -> e.times(share)),
                  cover.overFringe().map(e -> e.times(share))));
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
