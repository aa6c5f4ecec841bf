package foilwright.cli;

import foilwright.app.LookComparison;
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
            + " of that is seen from no side.");
    out.println();
    out.println("Of the hair that is seen, so much is lightened");
    printSides(after, out);
    out.println();
    out.println("The same worn otherwise");
    Columns others = new Columns();
    others.add("", "from the front", "beside the face", "at the back");
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

  /** Two plans on one guest, figure by figure. */
  static void print(LookComparison comparison, PrintStream out) {
    out.println(
        comparison.one().plan().pattern().title()
            + " beside "
            + comparison.other().plan().pattern().title()
            + ", "
            + comparison.one().plan().guest().number().orElse("no guest named"));
    out.println();
    Columns rows = new Columns();
    rows.add(
        "",
        comparison.one().plan().pattern().title(),
        comparison.other().plan().pattern().title(),
        "difference");
    comparison
        .rows()
        .forEach(r -> rows.add(r.label(), r.oneWords(), r.otherWords(), r.differenceWords()));
    rows.print("  ", out);
    out.println();
    comparison.sentences().forEach(out::println);
    out.println();
  }

  private static void printSides(LookFigures figures, PrintStream out) {
    Columns sides = new Columns();
    sides.add("from", "lightened", "against all", "left half", "right half", "dark above", "reads");
    double picked = figures.picked().toFraction();
    figures.sides().forEach((side, f) -> add(sides, side.words(), f, picked));
    add(sides, "beside the face", figures.faceFrame(), picked);
    sides.print("  ", out);
    out.println(
        "  against all: how many times the lightened share of all hair; dark above: depth of darker"
            + " hair");
    out.println(
        "  before the light begins; contrast: colour difference to the hair round about (CIEDE2000,"
            + " 1 is just seen side by side, 2 or more at a glance).");
  }

  private static void add(Columns table, String name, SideFigures f, double picked) {
    boolean level = !name.equals(LookSide.TOP.words()) && f.visible().toFraction() > 0;
    table.add(
        name,
        percent(f.visible().toFraction()),
        picked > 0 ? String.format(Locale.ROOT, "%.1f x", f.visible().toFraction() / picked) : "-",
        percent(f.left().toFraction()),
        percent(f.right().toFraction()),
        level ? String.format(Locale.ROOT, "%.0f mm", f.shelf().toMillimetres()) : "-",
        level ? f.reading() : f.visible().toFraction() > 0 ? f.contrastWords() : "dark");
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
