package foilwright.app;

import foilwright.look.Advice;
import foilwright.look.FoilSeen;
import foilwright.look.LookFigures;
import foilwright.look.SideFigures;
import foilwright.units.Length;
import foilwright.units.Share;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The figures of a look as a tree of groups, lists, texts and numbers, for other programs. Every
 * key names its unit: Mm, Cm2, Share (a fraction of 1); contrast is a CIEDE2000 difference.
 */
final class LookTree {
  static final String FORMAT = "foilwright look 1";
  static final String COMPARISON_FORMAT = "foilwright comparison 1";

  private LookTree() {}

  /** The tree of one look. */
  static Map<String, Object> of(LookedPlan looked) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("format", FORMAT);
    tree.put("pattern", looked.plan().pattern().title());
    looked.plan().guest().number().ifPresent(n -> tree.put("guest", n));
    tree.put("part", looked.plan().head().part().side().words());
    tree.put("style", looked.request().style().words());
    tree.put("hairs", looked.after().look().strands().count());
    tree.put("after", figures(looked.after().figures()));
    tree.put("before", figures(looked.before().figures()));
    tree.put("flippedPart", looked.flippedPart().words());
    tree.put("flipped", figures(looked.flipped().figures()));
    tree.put("tiedUp", figures(looked.up().figures()));
    looked
        .later()
        .ifPresent(
            later -> {
              tree.put("months", number(looked.request().months(), 2));
              tree.put("growth", Looking.growth(looked.request()));
              tree.put("later", figures(later.figures()));
            });
    List<Object> foils = new ArrayList<>();
    for (Advice.Worth worth : looked.ranked()) {
      Map<String, Object> foil = foil(worth.seen());
      foil.put("shownCm2PerMinute", number(worth.shownCm2PerMinute(), 3));
      foils.add(foil);
    }
    tree.put("foilsByWorth", foils);
    List<Object> advice = new ArrayList<>();
    for (Advice a : looked.advice()) {
      Map<String, Object> group = new LinkedHashMap<>();
      group.put("text", a.text());
      group.put("foils", new ArrayList<Object>(a.foils()));
      advice.add(group);
    }
    tree.put("advice", advice);
    return tree;
  }

  /** The tree of two looks and their differences, the second less the first. */
  static Map<String, Object> of(LookComparison comparison) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("format", COMPARISON_FORMAT);
    tree.put("first", of(comparison.one()));
    tree.put("second", of(comparison.other()));
    Map<String, Object> differences = new LinkedHashMap<>();
    comparison.rows().forEach(row -> differences.put(row.key(), number(row.difference(), 3)));
    tree.put("differences", differences);
    tree.put("sentences", new ArrayList<Object>(comparison.sentences()));
    return tree;
  }

  private static Map<String, Object> figures(LookFigures figures) {
    Map<String, Object> group = new LinkedHashMap<>();
    share(group, "pickedShare", figures.picked());
    share(group, "hairSeenShare", figures.hairSeen());
    share(group, "buriedShare", figures.buried());
    figures.sides().forEach((side, f) -> group.put(side.words(), side(f)));
    group.put("faceFrame", side(figures.faceFrame()));
    return group;
  }

  private static Map<String, Object> side(SideFigures f) {
    Map<String, Object> group = new LinkedHashMap<>();
    share(group, "visibleShare", f.visible());
    group.put("ribbons", number(f.ribbons(), 2));
    mm(group, "ribbonWidthMm", f.ribbonWidth());
    group.put("bands", number(f.bands(), 2));
    mm(group, "bandHeightMm", f.bandHeight());
    group.put("spread", number(f.spread(), 3));
    mm(group, "shelfMm", f.shelf());
    group.put("contrast", number(f.contrast(), 3));
    share(group, "leftShare", f.left());
    share(group, "rightShare", f.right());
    return group;
  }

  private static Map<String, Object> foil(FoilSeen seen) {
    Map<String, Object> group = new LinkedHashMap<>();
    group.put("number", seen.foil().number());
    group.put("section", seen.foil().section());
    share(group, "pickedShare", seen.foil().pickedShare());
    share(group, "seenShare", seen.seen());
    share(group, "buriedShare", seen.buried());
    group.put("shownCm2", number(seen.shown().toSquareCentimetres(), 3));
    return group;
  }

  private static void share(Map<String, Object> group, String key, Share share) {
    group.put(key, number(share.toFraction(), 6));
  }

  private static void mm(Map<String, Object> group, String key, Length length) {
    group.put(key, number(length.toMillimetres(), 3));
  }

  private static BigDecimal number(double value, int decimals) {
    BigDecimal number = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    return number.signum() == 0 ? BigDecimal.ZERO : number.stripTrailingZeros();
  }
}
