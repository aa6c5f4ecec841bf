package foilwright.app;

import foilwright.look.LookFigures;
import foilwright.look.LookSide;
import foilwright.look.SideFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Two plans looked at on one guest.
 *
 * @param rows figures of both side by side
 * @param sentences what differs most, by number
 */
public record LookComparison(
    LookedPlan one, LookedPlan other, List<Row> rows, List<String> sentences) {
  private static final double TOLD_SHARE = 0.005;
  private static final double TOLD_CONTRAST = 0.3;

  /**
   * One figure.
   *
   * @param key for other programs
   * @param decimals that are told
   * @param unit after the number, with a space before it, or nothing
   */
  public record Row(String key, String label, double one, double other, int decimals, String unit) {
    public double difference() {
      return other - one;
    }

    public String oneWords() {
      return words("%.", one);
    }

    public String otherWords() {
      return words("%.", other);
    }

    /** With its sign. */
    public String differenceWords() {
      return words("%+.", difference());
    }

    private String words(String sign, double value) {
      double told = Math.abs(value) < 0.5 * Math.pow(10, -decimals) ? 0 : value;
      return String.format(Locale.ROOT, sign + decimals + "f", told) + unit;
    }
  }

  public LookComparison {
    rows = List.copyOf(rows);
    sentences = List.copyOf(sentences);
  }

  public static LookComparison of(LookedPlan one, LookedPlan other) {
    List<Row> rows = new ArrayList<>();
    rows.add(
        new Row(
            "foils", "foils", one.plan().totals().foils(), other.plan().totals().foils(), 0, ""));
    rows.add(new Row("placingMinutes", "placing, usual", minutes(one), minutes(other), 0, " min"));
    LookFigures a = one.after().figures();
    LookFigures b = other.after().figures();
    rows.add(
        percent("pickedPercent", "of all hair", a.picked().toPercent(), b.picked().toPercent()));
    for (LookSide side : LookSide.values()) {
      SideFigures x = a.sides().get(side);
      SideFigures y = b.sides().get(side);
      rows.add(
          percent(
              side.words() + "VisiblePercent",
              "seen: " + side.words(),
              x.visible().toPercent(),
              y.visible().toPercent()));
    }
    rows.add(
        percent(
            "faceVisiblePercent",
            "seen: face",
            a.faceFrame().visible().toPercent(),
            b.faceFrame().visible().toPercent()));
    rows.add(
        percent("neverSeenPercent", "never seen", a.buried().toPercent(), b.buried().toPercent()));
    for (LookSide side : List.of(LookSide.FRONT, LookSide.BACK)) {
      SideFigures x = a.sides().get(side);
      SideFigures y = b.sides().get(side);
      rows.add(
          new Row(
              side.words() + "Ribbons",
              "ribbons: " + side.words(),
              x.ribbons(),
              y.ribbons(),
              1,
              ""));
      rows.add(
          new Row(
              side.words() + "Contrast",
              "contrast: " + side.words(),
              x.contrast(),
              y.contrast(),
              1,
              ""));
    }
    return new LookComparison(one, other, rows, sentences(one, other, rows));
  }

  private static Row percent(String key, String label, double one, double other) {
    return new Row(key, label, one, other, 1, " %");
  }

  private static double minutes(LookedPlan looked) {
    return looked.plan().placingTime().p50().toMinutes();
  }

  private static Row row(List<Row> rows, String key) {
    return rows.stream().filter(r -> r.key().equals(key)).findFirst().orElseThrow();
  }

  private static List<String> sentences(LookedPlan one, LookedPlan other, List<Row> rows) {
    String a = "\"" + one.plan().pattern().title() + "\"";
    String b = "\"" + other.plan().pattern().title() + "\"";
    List<String> all = new ArrayList<>();
    Row foils = row(rows, "foils");
    Row time = row(rows, "placingMinutes");
    Row picked = row(rows, "pickedPercent");
    all.add(
        b
            + " takes "
            + foils.otherWords()
            + " foils and about "
            + time.otherWords()
            + " of placing where "
            + a
            + " takes "
            + foils.oneWords()
            + " and "
            + time.oneWords()
            + "; it lightens "
            + picked.otherWords()
            + " of all hair, not "
            + picked.oneWords()
            + ".");
    Row widest = null;
    for (Row row : rows) {
      boolean share = row.key().endsWith("VisiblePercent");
      if (share && (widest == null || Math.abs(row.difference()) > Math.abs(widest.difference()))) {
        widest = row;
      }
    }
    if (widest != null && Math.abs(widest.difference()) > 100 * TOLD_SHARE) {
      all.add(
          "They differ most "
              + place(widest.label().substring("seen: ".length()))
              + ": "
              + b
              + " shows "
              + widest.otherWords()
              + " light, "
              + a
              + " "
              + widest.oneWords()
              + ".");
    }
    Row back = row(rows, "backContrast");
    boolean told = back.one() > 0 && back.other() > 0;
    if (told && Math.abs(back.difference()) > TOLD_CONTRAST) {
      boolean more = back.difference() > 0;
      all.add(
          "At the back "
              + (more ? b : a)
              + " stands off more, contrast "
              + (more ? back.otherWords() : back.oneWords())
              + " against "
              + (more ? back.oneWords() : back.otherWords())
              + ".");
    }
    Row never = row(rows, "neverSeenPercent");
    if (Math.abs(never.difference()) > 5) {
      boolean more = never.difference() > 0;
      all.add(
          (more ? b : a)
              + " buries more of its work: "
              + (more ? never.otherWords() : never.oneWords())
              + " of its lightened hair is never seen, against "
              + (more ? never.oneWords() : never.otherWords())
              + ".");
    }
    return all;
  }

  private static String place(String side) {
    return switch (side) {
      case "front" -> "from the front";
      case "back" -> "at the back";
      case "left" -> "on the left side";
      case "right" -> "on the right side";
      case "top" -> "on the top";
      default -> side;
    };
  }
}
