package foilwright.web;

import foilwright.app.LiveLook;
import foilwright.look.LookFigures;
import foilwright.look.LookPicture;
import foilwright.look.LookSide;
import foilwright.look.SideFigures;
import foilwright.units.Share;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One look in words and pictures.
 *
 * @param fine whether all hairs were followed
 * @param part where the hair is combed apart, in words
 * @param way how it is worn and when, in words
 * @param seen lightened share of what is seen, all level sides taken evenly
 * @param seenNote the same of front and back
 */
public record LookShown(
    boolean fine,
    String part,
    String way,
    String seen,
    String seenNote,
    List<Picture> pictures,
    List<Line> lines,
    List<String> advice) {

  /** Hairs lie together: as many count as one when chance is reckoned (see LookFigures). */
  private static final double TOGETHER = 50;

  /**
   * The hair from one side.
   *
   * @param side in one word
   * @param name of the picture
   * @param before the same as the guest comes in, if it was looked at
   * @param told the picture in words with its figures
   * @param row its figures in the order of the table's columns
   */
  public record Picture(
      String side,
      String name,
      Optional<Untouched> before,
      int width,
      int height,
      String told,
      List<String> row) {
    static Picture of(
        LookPicture picture,
        String name,
        Optional<Untouched> before,
        SideFigures figures,
        int hairs) {
      String side = picture.side().words();
      String seen = range(figures.visible(), hairs);
      boolean halves = picture.side() == LookSide.FRONT || picture.side() == LookSide.BACK;
      String balance =
          halves ? percent(figures.left()) + " L, " + percent(figures.right()) + " R" : "–";
      return new Picture(
          side,
          name,
          before,
          picture.width(),
          picture.height(),
          "Hair from the "
              + side
              + ": "
              + seen
              + " of what is seen is lightened, contrast "
              + contrast(figures)
              + (halves
                  ? ", client’s left half "
                      + percent(figures.left())
                      + ", right half "
                      + percent(figures.right())
                  : ""),
          List.of(seen, contrast(figures), balance));
    }
  }

  /**
   * The hair from one side as the guest comes in.
   *
   * @param name of the picture
   * @param told the picture in words with its figures
   */
  public record Untouched(String name, String told) {
    static Untouched of(LookSide side, String name, SideFigures figures) {
      return new Untouched(
          name,
          "The same before the visit, hair from the "
              + side.words()
              + ": "
              + percent(figures.visible())
              + " of what is seen is lightened, contrast "
              + contrast(figures));
    }
  }

  /** A figure with its unit; {@code note} may be empty. */
  public record Line(String label, String value, String note) {}

  static LookShown of(
      LiveLook.Wanted wanted,
      boolean fine,
      LookFigures figures,
      List<Picture> pictures,
      List<String> advice) {
    int hairs = wanted.hairs();
    return new LookShown(
        fine,
        wanted.part().words(),
        way(wanted),
        range(figures.visible(), hairs),
        "front "
            + percent(figures.sides().get(LookSide.FRONT).visible())
            + ", back "
            + percent(figures.sides().get(LookSide.BACK).visible()),
        pictures,
        lines(figures, hairs),
        advice);
  }

  private static List<Line> lines(LookFigures figures, int hairs) {
    return List.of(
        new Line("Lightened, of all hair", percent(figures.picked()), "whether it is seen or not"),
        new Line(
            "Lightened, of what is seen",
            range(figures.visible(), hairs),
            against(figures.visible(), figures.picked())),
        new Line(
            "Beside the face",
            range(figures.faceFrame().visible(), hairs),
            against(figures.faceFrame().visible(), figures.picked())),
        new Line("Lightened hair never seen", range(figures.buried(), hairs), "buried"));
  }

  static String way(LiveLook.Wanted wanted) {
    return wanted.style().words()
        + ", part "
        + wanted.part().words()
        + ", "
        + (wanted.months() == 0
            ? "after the visit"
            : String.format(
                Locale.ROOT,
                wanted.months() == 1 ? "%s month on" : "%s months on",
                number(wanted.months())));
  }

  private static String number(double months) {
    return months == Math.rint(months)
        ? Long.toString(Math.round(months))
        : String.format(Locale.ROOT, "%.1f", months);
  }

  private static String against(Share seen, Share all) {
    String points =
        String.format(Locale.ROOT, "%.1f", Math.abs(seen.toPercent() - all.toPercent()));
    if (points.equals("0.0")) {
      return "as of all hair";
    }
    return points + " points " + (seen.compareTo(all) < 0 ? "less" : "more") + " than of all hair";
  }

  /** One standard error of so many hairs either way. */
  static String range(Share share, int hairs) {
    double s = share.toFraction();
    double error = Math.sqrt(s * (1 - s) * TOGETHER / hairs);
    String form = s < 0.1 ? "%.1f" : "%.0f";
    String from = String.format(Locale.ROOT, form, 100 * Math.max(0, s - error));
    String to = String.format(Locale.ROOT, form, 100 * Math.min(1, s + error));
    return from.equals(to) ? to + " %" : from + " to " + to + " %";
  }

  static String percent(Share share) {
    return String.format(Locale.ROOT, "%.1f %%", share.toPercent());
  }

  static String contrast(SideFigures figures) {
    return figures.contrast() > 0
        ? String.format(Locale.ROOT, "%.1f ΔE", figures.contrast())
        : figures.contrastWords();
  }
}
