package foilwright.cli;

import foilwright.app.Plan;
import foilwright.app.PlannedTimes;
import foilwright.service.ProductEntry;
import foilwright.service.TonerEntry;
import foilwright.service.mix.Bowl;
import foilwright.service.mix.FoilSheets;
import foilwright.service.mix.SlotMix;
import foilwright.service.mix.TonerMix;
import foilwright.service.visit.Price;
import foilwright.service.visit.Visit;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;

/** What is weighed and cut for a plan, in words. */
final class MixText {
  private final Measures measures;
  private final PrintStream out;

  private MixText(Measures measures, PrintStream out) {
    this.measures = measures;
    this.out = out;
  }

  static void print(Plan plan, Measures measures, PrintStream out) {
    PlanHeading.print(plan, out);
    if (plan.times().isEmpty() || plan.times().get().visits().isEmpty()) {
      out.println("There is nothing to weigh; see below.");
      return;
    }
    new MixText(measures, out).print(plan.times().get());
  }

  private void print(PlannedTimes times) {
    out.println();
    out.println("Weights are of a usual day; the maker's sheet decides.");
    for (int i = 0; i < times.visits().size(); i++) {
      if (times.visits().size() > 1) {
        heading("Visit " + (i + 1));
      }
      Visit visit = times.visits().get(i);
      visit.mix().slots().forEach(slot -> slot(visit, slot));
      if (i < times.toner().size()) {
        toner(times.toner().get(i));
      }
      price(times.prices().get(i));
    }
    heading("Foil to cut");
    Columns columns = new Columns();
    for (FoilSheets.Count count : times.sheets().counts()) {
      columns.add(
          count.stock().name(),
          measures.whole(count.stock().width()) + " by " + measures.whole(count.stock().length()),
          count.foils() + (count.foils() == 1 ? " foil" : " foils"),
          count.laying().words(),
          count.sheets() + (count.sheets() == 1 ? " sheet" : " sheets"));
    }
    columns.print("  ", out);
  }

  private void slot(Visit visit, SlotMix slot) {
    ProductEntry product = slot.product();
    heading("Mix " + slot.slot() + ": " + product.name());
    out.println(
        "  "
            + slot.foils()
            + " foils take "
            + measures.grams(slot.onFoils())
            + ", "
            + measures.grams(slot.onFoils().times(1.0 / slot.foils()))
            + " each on average; "
            + visit.terms().mixing().waste()
            + " more is mixed for what stays in the bowl");
    out.println(
        "  developer "
            + slot.developer().words()
            + "; ready to use the mixture holds "
            + measures.share(slot.readyToUse())
            + " of peroxide (law in the EU: at most "
            + ProductEntry.MOST_STRENGTH
            + ")");
    Columns columns = new Columns();
    for (Bowl bowl : slot.bowls()) {
      columns.add(
          bowl.name(),
          "before foil " + bowl.firstFoil(),
          "at " + measures.since(visit.sinceStart(bowl.mixedAt())),
          measures.grams(bowl.product()) + " product",
          "+ " + measures.grams(bowl.developer()) + " developer",
          "for " + bowl.foils().size() + " foils",
          "good until " + measures.since(visit.sinceStart(bowl.goodUntil())),
          bowl.cross()
              .map(
                  cross ->
                      "developer: blend "
                          + cross.words()
                          + ", and take "
                          + measures.grams(bowl.developer())
                          + " of it")
              .orElse(""));
    }
    columns.print("  ", out);
  }

  private void toner(TonerMix toner) {
    TonerEntry entry = toner.toner();
    heading("Toner: " + entry.name());
    List<String> parts = new ArrayList<>();
    toner.shades().forEach(s -> parts.add(measures.grams(s.weight()) + " " + s.shade()));
    out.println(
        "  "
            + String.join(" + ", parts)
            + " + "
            + measures.grams(toner.developer())
            + " developer of "
            + entry.developerStrength()
            + toner
                .cross()
                .map(
                    cross ->
                        " (blend "
                            + cross.words()
                            + ", and take "
                            + measures.grams(toner.developer())
                            + " of it)")
                .orElse("")
            + ", on the hair "
            + entry.window().words());
    List<String> steps = new ArrayList<>();
    entry.saturation().forEach(s -> steps.add(measures.minutes(s.at()) + " " + s.words()));
    if (!steps.isEmpty()) {
      out.println("  by time: " + String.join(", ", steps));
    }
  }

  private void price(Price price) {
    heading("Price, by the house's rules");
    for (Price.Quote quote : price.quotes()) {
      List<String> lines = new ArrayList<>();
      quote.lines().forEach(line -> lines.add(quote.words(line)));
      out.println(
          "  by the "
              + quote.rule().words()
              + ": "
              + quote.total()
              + " = "
              + String.join("; ", lines));
    }
  }

  private void heading(String words) {
    out.println();
    out.println(words);
  }
}
