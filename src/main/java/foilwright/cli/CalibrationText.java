package foilwright.cli;

import foilwright.app.Calibrated;
import foilwright.service.Learning;
import foilwright.service.PaceProfile;
import foilwright.service.PlacingTime;
import foilwright.service.TakeUp;
import foilwright.service.ThreePoint;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.io.PrintStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a calibration changed, before and after, for a terminal. */
final class CalibrationText {
  private static final String INDENT = "  ";

  private final Calibrated done;
  private final Measures measures;
  private final PrintStream out;

  private CalibrationText(Calibrated done, Measures measures, PrintStream out) {
    this.done = done;
    this.measures = measures;
    this.out = out;
  }

  static void print(Calibrated done, Measures measures, PrintStream out) {
    new CalibrationText(done, measures, out).print();
  }

  private void print() {
    out.println(done.plan().pattern().title());
    out.println(
        done.plan().guest().number().orElse("no guest named")
            + ", "
            + done.plan().house().name()
            + ", "
            + foils(done.plan().totals().foils()));
    done.products().forEach(this::print);
    done.pace().ifPresent(this::print);
    out.println();
    out.println(
        "The house is kept in "
            + done.file()
            + "; "
            + done.kept()
                .map(kept -> "as it was before, in " + kept)
                .orElse("as it was before, it ships with the program"));
    if (!done.weighed().isEmpty() || done.timed().isPresent()) {
      out.println("To take this away again: " + String.join(", ", undo()));
    }
    Problems.print(done.problems(), out);
  }

  private List<String> undo() {
    List<String> options = new ArrayList<>();
    done.weighed().forEach(weighed -> options.add("--undo \"weigh-back " + weighed.slot() + "\""));
    done.timed().ifPresent(timed -> options.add("--undo timing"));
    return options;
  }

  private void print(Calibrated.ChangedProduct product) {
    out.println();
    out.println(product.name() + slots(product.slots()));
    done.weighed().stream()
        .filter(weighed -> weighed.product().equals(product.name()))
        .forEach(this::print);
    TakeUp before = product.before();
    TakeUp after = product.after();
    if (after.weighBacks().size() < before.weighBacks().size()) {
      TakeUp.WeighBack gone = before.weighBacks().get(before.weighBacks().size() - 1);
      out.println(
          INDENT
              + "taken away again: "
              + gone.used()
              + " used where "
              + gone.planned()
              + " were planned by the constants as written"
              + day(gone.date()));
    }
    Columns table = new Columns();
    table.add("", "before", "now");
    table.add("weighed back", times(before.weighBacks().size()), times(after.weighBacks().size()));
    table.add("factor", number(before.factor()), number(after.factor()));
    table.add("film on a foil", grams(before.effectiveFilm()), grams(after.effectiveFilm()));
    table.add(
        "for a gram of hair",
        number(before.effectivePerGramOfHair()) + " g",
        number(after.effectivePerGramOfHair()) + " g");
    if (!product.slots().isEmpty()) {
      table.add(
          "this pattern's foils take",
          measures.grams(product.onFoilsBefore()),
          measures.grams(product.onFoilsAfter()));
      double mixed = 1 + done.waste().toFraction();
      table.add(
          "with " + done.waste() + " of waste, about",
          measures.grams(product.onFoilsBefore().times(mixed)),
          measures.grams(product.onFoilsAfter().times(mixed)));
    }
    table.print(INDENT, out);
  }

  private void print(Calibrated.Weighed weighed) {
    out.println(
        INDENT
            + weighed.slot()
            + ": "
            + weighed.mixed()
            + " mixed, "
            + weighed.left()
            + " left; "
            + weighed.used()
            + " used where "
            + measures.grams(weighed.planned())
            + " were planned, without waste");
  }

  private void print(Calibrated.ChangedPace changed) {
    PaceProfile before = changed.before().pace();
    PaceProfile after = changed.after().pace();
    out.println();
    out.println("pace " + after.name());
    done.timed()
        .ifPresent(
            timed ->
                out.println(
                    INDENT
                        + foils(timed.foils())
                        + (timed.alone() ? ", without setting sections," : "")
                        + " took "
                        + timed.took()
                        + " where "
                        + timed.planned()
                        + " were planned"));
    if (after.timings().size() < before.timings().size()) {
      PaceProfile.Timing gone = before.timings().get(before.timings().size() - 1);
      out.println(
          INDENT
              + "taken away again: "
              + gone.took()
              + " for "
              + foils(gone.foils())
              + " where "
              + gone.planned()
              + " were planned by the times as written"
              + day(gone.date()));
    }
    Columns table = new Columns();
    table.add("", "before", "now");
    table.add("timed", times(before.timings().size()), times(after.timings().size()));
    table.add("factor", number(before.timedFactor()), number(after.timedFactor()));
    if (!after.learning().equals(Learning.NONE)) {
      table.add(
          "foils done by now",
          Integer.toString(before.learning().foilsDone()),
          Integer.toString(after.learning().foilsDone()));
    }
    table.add("a foil here, on average", each(changed.before()), each(changed.after()));
    table.add(
        "placing this pattern",
        measures.range(changed.before().total()),
        measures.range(changed.after().total()));
    table.print(INDENT, out);
  }

  /** Expected time of one foil without the setting of its section. */
  private static String each(PlacingTime placing) {
    List<ThreePoint> foils = placing.foils();
    Minutes sum = foils.stream().map(ThreePoint::mean).reduce(Minutes.ZERO, Minutes::plus);
    return number(sum.toMinutes() / Math.max(1, foils.size())) + " min";
  }

  private static String slots(List<String> slots) {
    return slots.isEmpty()
        ? " (not in this pattern)"
        : (slots.size() == 1 ? " (slot " : " (slots ") + String.join(", ", slots) + ")";
  }

  private static String foils(int count) {
    return count + (count == 1 ? " foil" : " foils");
  }

  private static String times(int count) {
    return count == 1 ? "once" : count + " times";
  }

  private static String day(Optional<LocalDate> date) {
    return date.map(day -> ", " + day).orElse("");
  }

  private static String grams(Mass mass) {
    return number(mass.toGrams()) + " g";
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }
}
