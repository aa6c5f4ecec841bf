package foilwright.app;

import foilwright.drawing.Scene;
import foilwright.look.Advice;
import foilwright.look.LookFigures;
import foilwright.look.LookPicture;
import foilwright.look.LookSide;
import foilwright.look.SideFigures;
import foilwright.sheet.LookSheet;
import foilwright.sheet.MapNotes;
import foilwright.sheet.Paper;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Chooses what a look's sheet shows and says. */
final class LookPages {
  private LookPages() {}

  static List<Scene> of(LookedPlan looked) {
    List<LookSheet.Row> rows = new ArrayList<>();
    rows.add(row("after", "After", looked.after()));
    List<LookSheet.Shown> others = new ArrayList<>();
    others.add(shown(looked.before(), LookSide.FRONT, "before"));
    others.add(shown(looked.before(), LookSide.BACK, "before"));
    String part = "part " + looked.flippedPart().words();
    others.add(shown(looked.flipped(), LookSide.FRONT, part));
    others.add(shown(looked.up(), LookSide.BACK, "tied up"));
    others.add(shown(looked.up(), LookSide.LEFT, "tied up"));
    looked
        .later()
        .ifPresent(
            later -> {
              String when = months(looked.request().months());
              others.add(shown(later, LookSide.FRONT, when.substring(3)));
              others.add(shown(later, LookSide.BACK, when.substring(3)));
            });
    rows.add(new LookSheet.Row("others", "Before, other part, tied up, later", others));
    List<LookSheet.Words> words = new ArrayList<>();
    words.add(figures("What is seen", looked.after().figures()));
    List<MapNotes.Total> wearing = new ArrayList<>();
    wearing.add(total("before", looked.before().figures()));
    wearing.add(total(part, looked.flipped().figures()));
    wearing.add(total("tied up", looked.up().figures()));
    looked
        .later()
        .ifPresent(later -> wearing.add(total(months(looked.request().months()), later.figures())));
    words.add(new LookSheet.Words("Light from front and back", wearing, List.of()));
    words.add(
        new LookSheet.Words(
            "What to know", List.of(), looked.advice().stream().map(Advice::text).toList()));
    return LookSheet.pages(
        looked.plan().pattern().title(), subtitle(looked), rows, words, Paper.A4);
  }

  static List<Scene> of(LookedPlan one, LookedPlan other) {
    return LookSheet.pages(
        one.plan().pattern().title() + " beside " + other.plan().pattern().title(),
        subtitle(one),
        List.of(
            row("first", one.plan().pattern().title(), one.after()),
            row("second", other.plan().pattern().title(), other.after())),
        List.of(
            figures(one.plan().pattern().title(), one.after().figures()),
            figures(other.plan().pattern().title(), other.after().figures())),
        Paper.A4);
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

  private static LookSheet.Words figures(String heading, LookFigures figures) {
    List<MapNotes.Total> totals = new ArrayList<>();
    totals.add(
        new MapNotes.Total("lightened, of all hair", percent(figures.picked().toFraction())));
    for (LookSide side : List.of(LookSide.FRONT, LookSide.BACK, LookSide.LEFT, LookSide.RIGHT)) {
      SideFigures f = figures.sides().get(side);
      if (f != null) {
        totals.add(
            new MapNotes.Total("seen from the " + side.words(), percent(f.visible().toFraction())));
      }
    }
    totals.add(
        new MapNotes.Total("beside the face", percent(figures.faceFrame().visible().toFraction())));
    SideFigures back = figures.sides().get(LookSide.BACK);
    if (back != null && back.ribbons() > 0) {
      totals.add(
          new MapNotes.Total(
              "ribbons at the back",
              String.format(
                  Locale.ROOT,
                  "%.0f of %.0f mm",
                  back.ribbons(),
                  back.ribbonWidth().toMillimetres())));
      totals.add(
          new MapNotes.Total(
              "contrast there", String.format(Locale.ROOT, "%.1f", back.contrast())));
    }
    totals.add(
        new MapNotes.Total("lightened hair never seen", percent(figures.buried().toFraction())));
    return new LookSheet.Words(heading, totals, List.of());
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
    return String.format(Locale.ROOT, "%.1f %%", 100 * fraction);
  }
}
