package foilwright.cli;

import foilwright.app.FoilClock;
import foilwright.app.Plan;
import foilwright.app.PlannedTimes;
import foilwright.service.mix.Bowl;
import foilwright.service.visit.Block;
import foilwright.service.visit.Checks;
import foilwright.service.visit.Visit;
import foilwright.units.Minutes;
import java.io.PrintStream;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The clocks of a plan in words: the visit's stretches and every foil's minutes. */
final class TimesText {
  private final Plan plan;
  private final Measures measures;
  private final Optional<LocalTime> start;
  private final PrintStream out;

  private TimesText(Plan plan, Measures measures, Optional<LocalTime> start, PrintStream out) {
    this.plan = plan;
    this.measures = measures;
    this.start = start;
    this.out = out;
  }

  static void print(Plan plan, Measures measures, Optional<LocalTime> start, PrintStream out) {
    PlanHeading.print(plan, out);
    TimesText text = new TimesText(plan, measures, start, out);
    if (plan.times().isEmpty() || plan.times().get().visits().isEmpty()) {
      out.println("There is no plan for the visit; see below.");
      return;
    }
    text.print(plan.times().get());
  }

  private void print(PlannedTimes times) {
    out.println();
    out.println(
        start.isPresent()
            ? "Times of day on a usual day."
            : "Minutes from the start of the visit, on a usual day.");
    Map<Integer, FoilClock> clocks = FoilClock.byNumber(plan);
    for (int i = 0; i < times.visits().size(); i++) {
      Visit visit = times.visits().get(i);
      if (times.visits().size() > 1) {
        out.println();
        out.println("Visit " + (i + 1));
      }
      blocks(visit);
      bowlsAndChecks(visit);
      foils(visit, clocks);
    }
  }

  private void blocks(Visit visit) {
    heading("Visit, " + measures.chair(visit.chair()) + "; foils " + visit.removal().words());
    Columns columns = new Columns();
    for (Block block : visit.blocks()) {
      columns.add(
          at(block.start()) + " to " + at(block.end()),
          block.name(),
          block.kind().words(),
          measures.minutes(block.length()));
    }
    columns.print("  ", out);
  }

  private void bowlsAndChecks(Visit visit) {
    heading("Bowls");
    Columns columns = new Columns();
    for (Bowl bowl : visit.mix().bowls()) {
      columns.add(
          bowl.name(),
          "ready at " + at(visit.sinceStart(bowl.mixedAt())),
          "before foil " + bowl.firstFoil(),
          bowl.foils().size() + " foils",
          "good until " + at(visit.sinceStart(bowl.goodUntil())));
    }
    columns.print("  ", out);
    List<String> rounds = new ArrayList<>();
    for (Checks.Round round : visit.checks().rounds()) {
      rounds.add(at(visit.sinceStart(round.start())) + (round.inPassing() ? " in passing" : ""));
    }
    if (!rounds.isEmpty()) {
      heading("Check rounds");
      out.println("  " + String.join(", ", rounds));
    }
  }

  private void foils(Visit visit, Map<Integer, FoilClock> clocks) {
    heading("Foils, in working order");
    Columns columns = new Columns();
    columns.add("foil", "section", "mix", "placed", "due from", "out by", "planned out", "on for");
    visit
        .foils()
        .forEach(
            foil -> {
              FoilClock clock = clocks.get(foil.number());
              columns.add(
                  Integer.toString(foil.number()),
                  foil.section() + ", row " + foil.row(),
                  clock.bowl(),
                  at(clock.begun()) + " to " + at(clock.in()),
                  at(clock.dueFrom()),
                  at(clock.outBy()),
                  at(clock.out()),
                  measures.minutes(clock.exposure()));
            });
    columns.print("  ", out);
  }

  private String at(Minutes since) {
    return start
        .map(
            time -> {
              LocalTime then = time.plusMinutes((long) Math.floor(since.toMinutes()));
              return String.format(Locale.ROOT, "%02d:%02d", then.getHour(), then.getMinute());
            })
        .orElseGet(() -> String.format(Locale.ROOT, "%.1f", since.toMinutes()));
  }

  private void heading(String words) {
    out.println();
    out.println(words);
  }
}
