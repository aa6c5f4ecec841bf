package foilwright.app;

import foilwright.drawing.Scene;
import foilwright.look.Advice;
import foilwright.look.LookFigures;
import foilwright.look.LookPicture;
import foilwright.look.LookSide;
import foilwright.sheet.LookSheet;
import foilwright.sheet.MapNotes;
import foilwright.sheet.Paper;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Chooses what a look's sheet shows and says. */
final class LookPages {
  private LookPages() {}

  static List<Scene> of(LookedPlan looked, Paper paper) {
    List<LookSheet.Row> rows = new ArrayList<>();
    rows.add(row("after", "After", looked.after()));
    List<LookSheet.Shown> others = new ArrayList<>();
    others.add(shown(looked.before(), LookSide.FRONT, "before"));
    others.add(shown(looked.before(), LookSide.BACK, "before"));
    String part = "part " + looked.flippedPart().words();
    others.add(shown(looked.flipped(), LookSide.FRONT, part));
    others.add(shown(looked.up(), LookSide.BACK, "tied up"));
    others.add(shown(looked.up(), LookSide.LEFT, "tied up"));
    String when = months(looked.request().months());
    looked
        .later()
        .ifPresent(
            later -> {
              others.add(shown(later, LookSide.FRONT, when.substring(3)));
              others.add(shown(later, LookSide.BACK, when.substring(3)));
            });
    rows.add(new LookSheet.Row("others", "Before, other part, tied up, later", others));
    List<LookSheet.Words> words = new ArrayList<>();
    words.add(seen(looked.after().figures()));
    List<MapNotes.Total> wearing = new ArrayList<>();
    wearing.add(total("before", looked.before().figures()));
    wearing.add(total(part, looked.flipped().figures()));
    wearing.add(total("tied up", looked.up().figures()));
    looked.later().ifPresent(later -> wearing.add(total(when, later.figures())));
    words.add(new LookSheet.Words("Light, front and back", wearing, List.of()));
    words.add(
        new LookSheet.Words(
            "What to know",
            List.of(),
            looked.advice().stream().map(Advice::text).map(LookPages::held).toList()));
    return LookSheet.pages(looked.plan().pattern().title(), subtitle(looked), rows, words, paper);
  }

  static List<Scene> of(LookComparison comparison, Paper paper) {
    LookedPlan one = comparison.one();
    LookedPlan other = comparison.other();
    List<MapNotes.Total> figures = new ArrayList<>();
    for (LookComparison.Row row : comparison.rows()) {
      figures.add(
          new MapNotes.Total(
              row.label(),
              held(
                  new LookComparison.Row("", "", row.one(), row.other(), row.decimals(), "")
                          .oneWords()
                      + "   "
                      + row.otherWords()
                      + "   "
                      + row.differenceWords().replace(row.unit(), ""))));
    }
    return LookSheet.pages(
        one.plan().pattern().title() + " beside " + other.plan().pattern().title(),
        subtitle(one),
        List.of(
            row("first", one.plan().pattern().title(), one.after()),
            row("second", other.plan().pattern().title(), other.after())),
        List.of(
            new LookSheet.Words("First, second, difference", figures, List.of()),
            new LookSheet.Words(
                "What differs",
                List.of(),
                comparison.sentences().stream().map(LookPages::held).toList())),
        paper);
  }

  /** A text in which no line ends between a number and its unit, and areas have their square. */
  static String held(String text) {
    return text.replaceAll("(\\d) (?=(%|mm|cm|min)(?![a-z]))", "$1\u00a0")
        .replace("cm2", "cm\u00b2");
  }

  private static String subtitle(LookedPlan looked) {
    return looked.plan().guest().number().orElse("no guest named")
        + ", part "
        + looked.plan().head().part().side().words()
        + ", worn "
        + looked.request().style().words()
        + looked.plan().guest().hair().cut().map(cut -> ", " + cut.name()).orElse("");
  }

  private static LookSheet.Row row(String id, String heading, LookedPlan.Seen seen) {
    return new LookSheet.Row(
        id,
        heading,
        seen.look().pictures().stream()
            .map(p -> new LookSheet.Shown(p, caption(p.side())))
            .toList());
  }

  private static String caption(LookSide side) {
    return switch (side) {
      case FRONT -> "R  front  L";
      case BACK -> "L  back  R";
      case LEFT -> "left side";
      case RIGHT -> "right side";
      case TOP -> "L  top, face up  R";
    };
  }

  private static LookSheet.Shown shown(LookedPlan.Seen seen, LookSide side, String what) {
    LookPicture picture = seen.look().picture(side);
    return new LookSheet.Shown(picture, what + ", " + side.words());
  }

  private static LookSheet.Words seen(LookFigures figures) {
    List<MapNotes.Total> totals = new ArrayList<>();
    totals.add(new MapNotes.Total("of all hair", percent(figures.picked().toFraction())));
    figures
        .sides()
        .forEach(
            (side, f) ->
                totals.add(
                    new MapNotes.Total(
                        "seen: " + side.words(), percent(f.visible().toFraction()))));
    totals.add(
        new MapNotes.Total(
            "seen: beside the face", percent(figures.faceFrame().visible().toFraction())));
    totals.add(new MapNotes.Total("lightened, never seen", percent(figures.buried().toFraction())));
    return new LookSheet.Words("How much is light", totals, List.of());
  }

  private static MapNotes.Total total(String label, LookFigures figures) {
    return new MapNotes.Total(
        label,
        percent(figures.sides().get(LookSide.FRONT).visible().toFraction())
            + ", "
            + percent(figures.sides().get(LookSide.BACK).visible().toFraction()));
  }

  static String months(double months) {
    return String.format(
            Locale.ROOT, months == Math.rint(months) ? "in %.0f months" : "in %.1f months", months)
        .replace("in 1 months", "in 1 month");
  }

  private static String percent(double fraction) {
    return String.format(Locale.ROOT, "%.1f\u00a0%%", 100 * fraction);
  }
}
