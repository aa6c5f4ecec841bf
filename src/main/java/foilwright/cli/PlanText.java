package foilwright.cli;

import foilwright.app.FoundProblem;
import foilwright.app.Plan;
import foilwright.hair.HairProfile;
import foilwright.head.Tape;
import foilwright.placement.Find;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.problem.Severity;
import foilwright.service.AppointmentEstimate;
import foilwright.service.Caution;
import foilwright.service.PlacingTime;
import foilwright.service.ProductEntry;
import foilwright.service.SafetyQuestion;
import foilwright.units.Length;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A plan in the words of the trade, for a terminal. */
final class PlanText {
  private final Plan plan;
  private final Measures measures;
  private final PrintStream out;

  private PlanText(Plan plan, Measures measures, PrintStream out) {
    this.plan = plan;
    this.measures = measures;
    this.out = out;
  }

  static void print(Plan plan, Measures measures, PrintStream out) {
    new PlanText(plan, measures, out).print();
  }

  private void print() {
    out.println(plan.pattern().title());
    out.println(
        plan.guest().number().orElse("no guest named")
            + ", "
            + plan.house().name()
            + ", pace "
            + plan.house().pace().name());
    out.println();
    printFigures();
    printLookFirst();
    printSections();
    printZones();
    printVisit();
    printFoils();
    printCautions();
    printProblems();
  }

  private void line(String label, String words) {
    out.printf(Locale.ROOT, "%-11s %s%n", label, words);
  }

  private void heading(String words) {
    out.println();
    out.println(words);
  }

  private void printFigures() {
    line("Head", head());
    line("Part", part());
    line("Hair", hair());
    Plan.Totals totals = plan.totals();
    line("", measures.hairs(totals.hairs()) + " on " + measures.area(totals.scalp()));
    out.println();
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
    line("Placing", placing());
    plan.visit()
        .ifPresentOrElse(
            visit -> line("Whole visit", measures.range(visit.total())),
            () -> line("Whole visit", "not known; see below"));
    line("", "the first time is kept on half of such days, the second on nine in ten");
    line("Lightened", measures.share(totals.lightenedShare()) + " of all hair on the head");
    line(
        "In foils",
        measures.hairs(totals.pickedHairs())
            + ", "
            + measures.grams(totals.hair())
            + " of hair where the mix goes");
    for (Map.Entry<String, ProductEntry> slot : plan.house().products().entrySet()) {
      if (uses(slot.getKey())) {
        line("Mix " + slot.getKey(), product(slot.getKey(), slot.getValue()));
      }
    }
  }

  /** What may stop the work, before the details of it. */
  private void printLookFirst() {
    long missing =
        Arrays.stream(SafetyQuestion.values())
            .filter(question -> plan.guest().tests().of(question).isEmpty())
            .count();
    if (missing > 0) {
      line(
          "Look first",
          missing + " of " + SafetyQuestion.values().length + " answers on tests are MISSING");
    }
    for (FoundProblem problem : plan.problems()) {
      if (problem.problem().severity() != Severity.NOTE) {
        line("Look first", problem.problem().message());
      }
    }
  }

  private boolean uses(String slot) {
    return plan.placement().foils().stream().anyMatch(foil -> foil.mix().equals(slot));
  }

  private String head() {
    List<String> tapes = new ArrayList<>();
    for (Tape tape : Tape.values()) {
      boolean measured = tape.in(plan.head().tapes()).isPresent();
      tapes.add(
          tape.words()
              + " "
              + measures.whole(plan.head().reading(tape))
              + (measured ? "" : " (assumed)"));
    }
    return plan.head().kind().words() + "; " + String.join(", ", tapes);
  }

  private String part() {
    return switch (plan.head().part().side()) {
      case NONE -> "none";
      case CENTRE -> "centre";
      case LEFT, RIGHT ->
          plan.head().part().side().words()
              + ", "
              + measures.whole(plan.head().part().fromCentre())
              + " from the centre line";
    };
  }

  private String hair() {
    HairProfile hair = plan.guest().hair();
    Length shortest = Collections.min(hair.lengths().byZone().values());
    Length longest = Collections.max(hair.lengths().byZone().values());
    List<String> words = new ArrayList<>();
    words.add(
        shortest.equals(longest)
            ? measures.whole(longest)
            : measures.whole(shortest) + " to " + measures.whole(longest));
    words.add(
        hair.density() + (hair.density().equals(HairProfile.USUAL_DENSITY) ? " (usual)" : ""));
    words.add(hair.nature().level().map(Object::toString).orElse("level missing"));
    words.add(hair.nature().fineness().map(f -> f.words() + " hair").orElse("fineness missing"));
    words.add(
        hair.nature().porosity().map(p -> p.words() + " porosity").orElse("porosity missing"));
    if (!hair.oldLightener().isEmpty()) {
      words.add("old lightener in " + hair.oldLightener().size() + " zones");
    }
    return String.join(", ", words);
  }

  private String placing() {
    List<String> others = new ArrayList<>();
    for (PlacingTime time : plan.placing().subList(1, plan.placing().size())) {
      others.add(time.pace().name() + " " + measures.range(time.total()));
    }
    return measures.range(plan.placingTime())
        + " at the pace "
        + plan.house().pace().name()
        + (others.isEmpty() ? "" : " (" + String.join(", ", others) + ")");
  }

  private String product(String slot, ProductEntry product) {
    String bowls =
        plan.visit()
            .map(AppointmentEstimate::bowls)
            .map(counts -> counts.get(slot))
            .map(count -> count == 1 ? "1 bowl" : count + " bowls")
            .orElse("");
    return String.format(
        Locale.ROOT,
        "%s, %s : %s with %s developer, on the hair %.0f to %.0f min; %s",
        product.name(),
        plain(product.ratio().product()),
        plain(product.ratio().developer()),
        product.developerStrength(),
        product.window().least().toMinutes(),
        product.window().most().toMinutes(),
        bowls);
  }

  private static String plain(double value) {
    return value == Math.rint(value)
        ? String.format(Locale.ROOT, "%.0f", value)
        : Double.toString(value);
  }

  private void printSections() {
    heading("Sections, in working order");
    for (Plan.SectionFigures figures : plan.sections()) {
      PlacedSection placed = figures.placed();
      out.println(
          "  " + placed.name() + ": " + placed.shape() + ", " + foils(placed.foils().size()));
      out.println(
          "      "
              + String.join(
                  ", ",
                  measures.range(figures.placing()),
                  measures.area(placed.figures().area()),
                  measures.share(placed.figures().lightenedShare()) + " lightened",
                  measures.grams(figures.hair()) + " of hair"));
      if (!placed.remainderWords().isBlank()) {
        out.println("      " + placed.remainderWords());
      }
    }
  }

  private static String foils(int count) {
    return count == 1 ? "1 foil" : count + " foils";
  }

  private void printZones() {
    heading("Zones");
    Columns columns = new Columns();
    for (Plan.ZoneFigures zone : plan.zones()) {
      columns.add(
          zone.zone().words(),
          foils(zone.foils()),
          measures.area(zone.area()),
          measures.hairs(zone.hairs()),
          measures.share(zone.lightenedShare()) + " lightened");
    }
    columns.print("  ", out);
  }

  private void printVisit() {
    if (plan.visit().isEmpty()) {
      return;
    }
    heading("Visit, all foils placed and then removed in the same order");
    Columns columns = new Columns();
    for (AppointmentEstimate.Block block : plan.visit().get().blocks()) {
      columns.add(
          block.phase().words(),
          measures.range(block.time()),
          block.phase().hands() ? "" : "hands free");
    }
    columns.print("  ", out);
  }

  private void printFoils() {
    heading("Foils, in working order");
    int digits = Integer.toString(plan.placement().foils().size()).length();
    for (PlacedFoil foil : plan.placement().foils()) {
      out.println(
          String.format(Locale.ROOT, "  %" + digits + "d  ", foil.number())
              + String.join(
                  ", ",
                  foil.section(),
                  "row " + foil.row(),
                  parting(foil),
                  measures.whole(foil.width()) + " wide",
                  "slice " + slice(foil),
                  background(foil),
                  "mix " + foil.mix(),
                  measures.hairs(foil.pickedHairs()),
                  measures.grams(foil.hair())));
      out.println(" ".repeat(digits + 4) + "centre in the " + find(foil));
      out.println(
          " ".repeat(digits + 4) + "from " + end(foil.startFind()) + ", to " + end(foil.endFind()));
    }
  }

  /** A level parting needs no angle: its shape's name says it. */
  private String parting(PlacedFoil foil) {
    double degrees = foil.partingAngle().toDegrees();
    return foil.shape()
        + (degrees < 0.5 ? "" : " " + measures.angle(degrees))
        + foil.lowerEnd().map(end -> " with the " + end + " end lower").orElse("");
  }

  /** To half a millimetre, which is what a comb can hold. */
  private String slice(PlacedFoil foil) {
    String from = measures.fine(toHalf(foil.sliceAtStart()));
    String to = measures.fine(toHalf(foil.sliceAtEnd()));
    return from.equals(to) ? from : from + " at its start, " + to + " at its end";
  }

  private static Length toHalf(Length length) {
    return Length.ofMillimetres(Math.max(0.5, Math.rint(2 * length.toMillimetres()) / 2));
  }

  /** One end of a foil's middle line. */
  private String end(Find find) {
    double aside = Math.rint(find.fromCentre().toMillimetres());
    String centre =
        aside == 0
            ? "on the centre line"
            : measures.whole(Length.ofMillimetres(Math.abs(aside)))
                + (aside > 0 ? " right" : " left")
                + " of the centre line";
    return measures.whole(find.fromHairline()) + " in from the hairline, " + centre;
  }

  private String background(PlacedFoil foil) {
    if (foil.backgroundBefore().toMillimetres() < 0.05) {
      return foil.row() == 1 ? "from the edge of the section" : "back-to-back";
    }
    return measures.fine(foil.backgroundBefore()) + " left out before it";
  }

  private String find(PlacedFoil foil) {
    String inInches =
        String.format(
            Locale.ROOT,
            " (%.1f in from the hairline, %.1f in from the centre line)",
            foil.centreFind().fromHairline().toInches(),
            Math.abs(foil.centreFind().fromCentre().toInches()));
    return foil.centreFind().words() + (measures.inches() ? inInches : "");
  }

  private void printCautions() {
    heading("Before anything is mixed");
    for (Caution caution : Caution.values()) {
      out.println("  - " + caution.text());
    }
    heading("On file for " + plan.guest().number().orElse("this guest"));
    for (SafetyQuestion question : SafetyQuestion.values()) {
      out.println("  " + question.words() + ": " + plan.guest().tests().words(question));
    }
  }

  private void printProblems() {
    List<FoundProblem> problems = plan.problems();
    if (!problems.isEmpty()) {
      heading("To look at");
      Problems.print(
          problems.stream()
              .sorted(Comparator.comparing((FoundProblem found) -> found.problem().severity()))
              .toList(),
          out);
    }
  }
}
