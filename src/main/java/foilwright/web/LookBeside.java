package foilwright.web;

import foilwright.app.LiveLook;
import foilwright.app.Plan;
import foilwright.look.LookFigures;
import foilwright.look.LookSide;
import foilwright.units.Share;
import foilwright.web.LookShown.Picture;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * Two patterns on one guest, looked at in the same way.
 *
 * @param way how the hair is worn and when
 */
public record LookBeside(Half first, Half second, String way, List<Row> rows) {

  /** One of the two. */
  public record Half(String title, Plan plan, LookFigures figures, List<Picture> pictures) {
    static Half of(Plan plan, LiveLook.Seen seen, List<Picture> pictures) {
      return new Half(plan.pattern().title(), plan, seen.figures().orElseThrow(), pictures);
    }

    private Optional<double[]> chairMinutes() {
      return plan.times()
          .flatMap(times -> times.chair())
          .map(c -> new double[] {c.p50().toMinutes(), Math.ceil(c.p90().toMinutes() - 1e-6)});
    }

    private double grams() {
      return plan.times().stream()
          .flatMap(times -> times.visits().stream())
          .flatMap(visit -> visit.mix().slots().stream())
          .mapToDouble(slot -> slot.mixed().toGrams())
          .sum();
    }
  }

  /** One figure of both, and by how much the second is more. */
  public record Row(String label, String first, String second, String difference) {}

  static LookBeside of(Half first, Half second, LiveLook.Wanted wanted) {
    List<Row> rows = new ArrayList<>();
    rows.add(row("Foils", first, second, h -> h.plan().totals().foils(), "", 0));
    rows.add(
        new Row(
            "Placing, half of days to nine in ten",
            Measure.range(first.plan.placingTime().p50(), first.plan.placingTime().p90()),
            Measure.range(second.plan.placingTime().p50(), second.plan.placingTime().p90()),
            signed(
                second.plan.placingTime().p50().toMinutes()
                    - first.plan.placingTime().p50().toMinutes(),
                " min",
                0)));
    if (first.chairMinutes().isPresent() && second.chairMinutes().isPresent()) {
      double[] one = first.chairMinutes().get();
      double[] other = second.chairMinutes().get();
      rows.add(
          new Row(
              "Chair, half of days to nine in ten",
              minutes(one),
              minutes(other),
              signed(other[0] - one[0], " min", 0)));
      rows.add(row("Mix", first, second, Half::grams, " g", 0));
    }
    rows.add(share("Lightened, of all hair", first, second, LookFigures::picked));
    rows.add(share("Lightened, of what is seen", first, second, LookFigures::visible));
    for (LookSide side : LookSide.values()) {
      rows.add(
          share(
              "Seen lightened, " + side.words(),
              first,
              second,
              f -> f.sides().get(side).visible()));
    }
    rows.add(share("Beside the face", first, second, f -> f.faceFrame().visible()));
    for (LookSide side : List.of(LookSide.FRONT, LookSide.BACK)) {
      rows.add(
          row(
              "Contrast, " + side.words(),
              first,
              second,
              h -> h.figures().sides().get(side).contrast(),
              " ΔE",
              1));
    }
    rows.add(share("Lightened hair never seen", first, second, LookFigures::buried));
    return new LookBeside(first, second, LookShown.way(wanted), rows);
  }

  private static String minutes(double[] range) {
    return String.format(Locale.ROOT, "%.0f to %.0f min", range[0], range[1]);
  }

  private static Row share(
      String label, Half first, Half second, java.util.function.Function<LookFigures, Share> of) {
    double one = of.apply(first.figures).toPercent();
    double other = of.apply(second.figures).toPercent();
    return new Row(
        label,
        LookShown.percent(of.apply(first.figures)),
        LookShown.percent(of.apply(second.figures)),
        signed(other - one, " points", 1));
  }

  private static Row row(
      String label, Half first, Half second, ToDoubleFunction<Half> of, String unit, int decimals) {
    double one = of.applyAsDouble(first);
    double other = of.applyAsDouble(second);
    String form = "%." + decimals + "f%s";
    return new Row(
        label,
        String.format(Locale.ROOT, form, one, unit),
        String.format(Locale.ROOT, form, other, unit),
        signed(other - one, unit, decimals));
  }

  private static String signed(double difference, String unit, int decimals) {
    String size = String.format(Locale.ROOT, "%." + decimals + "f", Math.abs(difference));
    if (Double.parseDouble(size) == 0) {
      return "the same";
    }
    return size + unit + (difference < 0 ? " less" : " more");
  }
}
