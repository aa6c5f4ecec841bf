package foilwright.cli;

import foilwright.app.Plan;
import foilwright.app.PlannedTimes;
import foilwright.app.Trimmed;
import foilwright.placement.Thinning;
import foilwright.service.PlacingTime;
import foilwright.service.mix.SlotMix;
import foilwright.service.mix.TonerMix;
import foilwright.service.schedule.Removal;
import foilwright.service.visit.Price;
import foilwright.service.visit.Visit;
import foilwright.units.Minutes;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The questions that decide a foil service, answered on one screen. */
final class ShortAnswer {
  private final Plan plan;
  private final Measures measures;
  private final PrintStream out;

  private ShortAnswer(Plan plan, Measures measures, PrintStream out) {
    this.plan = plan;
    this.measures = measures;
    this.out = out;
  }

  static void print(Plan plan, Measures measures, PrintStream out) {
    new ShortAnswer(plan, measures, out).print();
  }

  private void print() {
    PlanHeading.print(plan, out);
    Plan.Totals totals = plan.totals();
    line(
        "Foils",
        totals.foils()
            + " ("
            + plan.house().foil().name()
            + ", used to "
            + measures.whole(plan.house().foil().usableWidth())
            + " of "
            + measures.whole(plan.house().foil().width())
            + ")");
    line("Lightened", measures.share(totals.lightenedShare()) + " of all hair on the head");
    line("Placing", placing());
    line("", "the first time is kept on half of such days, the second on nine in ten");
    plan.times().ifPresentOrElse(this::times, () -> line("Chair", "not known; see below"));
    plan.regrowth()
        .ifPresent(
            r ->
                line(
                    "Grown out",
                    r.regrowth().grown().words()
                        + " since "
                        + r.regrowth().last()
                        + "; "
                        + r.overlaps().overlaps().size()
                        + " foils lie over old ones"));
    plan.rebooking().ifPresent(r -> line("Come again", r.words()));
    plan.trimmed().ifPresent(this::trimmed);
    plan.order()
        .ifPresent(
            order -> {
              line(
                  "Order",
                  order.proven()
                      ? "no order is better for the aims"
                      : "the best of " + order.tried() + " orders tried");
              order.reached().forEach(reached -> line("", reached.words()));
            });
  }

  private void line(String label, String words) {
    out.printf(Locale.ROOT, "%-11s %s%n", label, words);
  }

  private String placing() {
    List<String> others = new ArrayList<>();
    for (PlacingTime time : plan.placing().subList(1, plan.placing().size())) {
      others.add(time.pace().name() + " " + measures.range(time.total()));
    }
    boolean alone =
        plan.times()
            .map(t -> t.visits().stream().allMatch(v -> v.schedule().hands() == 1))
            .orElse(true);
    return measures.range(plan.placingTime())
        + (alone ? "" : " for one pair of hands")
        + " at the pace "
        + plan.house().pace().name()
        + (others.isEmpty() ? "" : " (" + String.join(", ", others) + ")");
  }

  private void times(PlannedTimes times) {
    if (times.visits().isEmpty()) {
      line("Chair", "no plan for the visit in the way that was asked for");
    }
    for (int i = 0; i < times.visits().size(); i++) {
      if (times.visits().size() > 1) {
        line("Visit " + (i + 1), times.visits().get(i).foils().size() + " foils");
      }
      visit(times, times.visits().get(i));
      if (i < times.toner().size()) {
        line("Toner", toner(times.toner().get(i)));
      }
      price(times.prices().get(i));
    }
    times.told().forEach(cure -> line("Or else", cure.words()));
  }

  private void visit(PlannedTimes times, Visit visit) {
    int due = visit.firstDue();
    line(
        "First due",
        "foil "
            + visit.foils().get(due).number()
            + ", out by "
            + measures.since(visit.sinceStart(visit.schedule().outBy(due))));
    int safe = times.straight().lastSafe();
    line(
        "Last safe",
        safe >= plan.totals().foils()
            ? "all foils can go in before the first comes out"
            : "foil " + safe + ": so many can go straight in before the first comes out");
    line(
        "Out",
        visit.removal().words()
            + (visit.removal() == Removal.IN_WAVES
                ? " of "
                    + visit.schedule().waves().stream()
                        .map(Object::toString)
                        .collect(Collectors.joining(", "))
                    + " foils"
                : ""));
    line(
        "",
        "all in by "
            + measures.since(visit.sinceStart(visit.schedule().allIn()))
            + ", the last out by "
            + measures.since(visit.sinceStart(visit.schedule().end()))
            + (visit.schedule().proven() ? "" : " (" + bound(visit) + ")"));
    for (SlotMix slot : visit.mix().slots()) {
      line("Mix " + slot.slot(), mix(slot));
    }
    int bowls = visit.mix().bowls().size();
    List<String> fresh = new ArrayList<>();
    visit.mix().bowls().stream()
        .skip(1)
        .forEach(
            bowl ->
                fresh.add(
                    bowl.name()
                        + " before foil "
                        + bowl.firstFoil()
                        + " at "
                        + measures.since(visit.sinceStart(bowl.mixedAt()))));
    line(
        "Bowls",
        bowls
            + (visit.slowBowls() > bowls ? " (" + visit.slowBowls() + " on a slow day)" : "")
            + (fresh.isEmpty() ? "" : "; fresh: " + String.join(", ", fresh)));
    line("Chair", measures.chair(visit.chair()));
    line(
        "Free gap",
        visit
            .freeGap()
            .map(
                gap ->
                    measures.minutes(gap.length())
                        + ", from "
                        + measures.since(gap.start())
                        + " to "
                        + measures.since(gap.end())
                        + ", on a usual day")
            .orElse("none"));
  }

  private String bound(Visit visit) {
    Minutes over = visit.schedule().end().minus(visit.schedule().lowerBound());
    return "at most " + measures.minutes(over) + " later than could be";
  }

  private String mix(SlotMix slot) {
    return String.format(
        Locale.ROOT,
        "%s: %.0f g + %.0f g developer of %s, for %d foils that take %s",
        slot.product().name(),
        slot.productWeight().toGrams(),
        slot.developerWeight().toGrams(),
        slot.developer().words(),
        slot.foils(),
        measures.grams(slot.onFoils()));
  }

  private String toner(TonerMix toner) {
    List<String> parts = new ArrayList<>();
    toner.shades().forEach(s -> parts.add(measures.grams(s.weight()) + " " + s.shade()));
    parts.add(
        measures.grams(toner.developer()) + " developer of " + toner.toner().developerStrength());
    return toner.toner().name() + ": " + String.join(" + ", parts);
  }

  private void price(Price price) {
    price
        .quoted()
        .ifPresent(quote -> line("Price", quote.total() + ", by the " + quote.rule().words()));
  }

  private void trimmed(Trimmed trimmed) {
    int kept = trimmed.before() - trimmed.givenUp().size();
    line(
        "Given up",
        trimmed.givenUp().isEmpty()
            ? "nothing: the whole pattern keeps within the limits"
            : trimmed.givenUp().size()
                + " of "
                + trimmed.before()
                + " foils, "
                + kept
                + " are left; these went, by their numbers in the whole pattern:");
    Map<String, List<Integer>> reasons = new LinkedHashMap<>();
    for (Thinning.Choice choice : trimmed.givenUp()) {
      reasons
          .computeIfAbsent(
              String.format(
                  Locale.ROOT,
                  "seen about %d %% as much as hair in general, as it falls in this cut",
                  10 * Math.round(choice.seen().share().toPercent() / 10)),
              r -> new ArrayList<>())
          .add(choice.foil().number());
    }
    reasons.forEach(
        (reason, foils) -> {
          Collections.sort(foils);
          line(
              "",
              foils.stream().map(Object::toString).collect(Collectors.joining(", "))
                  + " ("
                  + reason
                  + ")");
        });
  }
}
