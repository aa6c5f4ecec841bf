package foilwright.cli;

import foilwright.app.LookedPlan;
import foilwright.look.Advice;
import foilwright.look.LookFigures;
import foilwright.look.LookSide;
import foilwright.look.SideFigures;
import java.io.PrintStream;
import java.util.Locale;

/** The figures of a look in the words of the trade, for a terminal. */
final class LookText {
  private LookText() {}

  static void print(LookedPlan looked, PrintStream out) {
    out.println(looked.plan().pattern().title());
    out.println(
        looked.plan().guest().number().orElse("no guest named")
            + ", part "
            + looked.plan().head().part().side().words()
            + ", worn "
            + looked.request().style().words()
            + looked.plan().guest().hair().cut().map(cut -> ", " + cut.name()).orElse("")
            + ", "
            + looked.after().look().strands().count()
            + " hairs followed");
    out.println();
    LookFigures after = looked.after().figures();
    out.println(
        "Lightened: "
            + percent(after.picked().toFraction())
            + " of all hair; "
            + percent(after.buried().toFraction())
            + " of that is seen from no side. Of the length of all hair "
            + percent(after.hairSeen().toFraction())
            + " is seen.");
    out.println();
    printSides(after, out);
    out.println();
    out.println("Light seen from the front, beside the face and from the back");
    Columns others = new Columns();
    add(others, "after", after);
    add(others, "before", looked.before().figures());
    add(others, "part " + looked.flippedPart().words(), looked.flipped().figures());
    add(others, "tied up", looked.up().figures());
    looked
        .later()
        .ifPresent(
            later ->
                add(
                    others,
                    String.format(Locale.ROOT, "after %.1f months", looked.request().months()),
                    later.figures()));
    others.print("  ", out);
    out.println();
    out.println("What to know");
    looked.advice().forEach(a -> out.println("  " + a.text()));
    out.println();
    out.println("Foils that show most for a minute of placing");
    Columns foils = new Columns();
    foils.add("foil", "section", "seen", "shown", "a minute");
    for (Advice.Worth worth : looked.ranked()) {
      foils.add(
          Integer.toString(worth.seen().foil().number()),
          worth.seen().foil().section(),
          percent(worth.seen().seen().toFraction()),
          String.format(Locale.ROOT, "%.1f cm2", worth.seen().shown().toSquareCentimetres()),
          String.format(Locale.ROOT, "%.1f cm2", worth.shownCm2PerMinute()));
    }
    foils.print("  ", out);
    out.println();
    out.println(
        "Computed from the cut, the part and the foils as planned: no promise of a result.");
  }

  /** Two plans on one guest, line by line. */
  static void compare(LookedPlan one, LookedPlan other, PrintStream out) {
    for (LookedPlan looked : new LookedPlan[] {one, other}) {
      out.println(
          looked.plan().pattern().title()
              + ": "
              + looked.plan().totals().foils()
              + " foils, lightened "
              + percent(looked.after().figures().picked().toFraction())
              + " of all hair, "
              + percent(looked.after().figures().buried().toFraction())
              + " of that seen from no side");
      printSides(looked.after().figures(), out);
      out.println();
    }
  }

  private static void printSides(LookFigures figures, PrintStream out) {
    Columns sides = new Columns();
    sides.add("seen from", "light", "left", "right", "ribbons", "wide", "shelf", "contrast");
    figures.sides().forEach((side, f) -> add(sides, side.words(), f));
    add(sides, "beside the face", figures.faceFrame());
    sides.print("  ", out);
  }

  private static void add(Columns table, String name, SideFigures f) {
    table.add(
        name,
        percent(f.visible().toFraction()),
        percent(f.left().toFraction()),
        percent(f.right().toFraction()),
        String.format(Locale.ROOT, "%.1f", f.ribbons()),
        String.format(Locale.ROOT, "%.0f mm", f.ribbonWidth().toMillimetres()),
        String.format(Locale.ROOT, "%.0f mm", f.shelf().toMillimetres()),
        String.format(Locale.ROOT, "%.1f", f.contrast()));
  }

  private static void add(Columns table, String name, LookFigures figures) {
    table.add(
        name,
        percent(figures.sides().get(LookSide.FRONT).visible().toFraction()),
        percent(figures.faceFrame().visible().toFraction()),
        percent(figures.sides().get(LookSide.BACK).visible().toFraction()));
  }

  private static String percent(double fraction) {
    return String.format(Locale.ROOT, "%.1f %%", 100 * fraction);
  }
}
