package foilwright.cli;

import foilwright.app.Plan;
import foilwright.hair.HairProfile;
import foilwright.head.Tape;
import foilwright.placement.Find;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.units.Length;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/** Sections, zones and every foil of a plan in words, for a terminal. */
final class PlanDetails {
  private final Plan plan;
  private final Measures measures;
  private final PrintStream out;

  private PlanDetails(Plan plan, Measures measures, PrintStream out) {
    this.plan = plan;
    this.measures = measures;
    this.out = out;
  }

  static void print(Plan plan, Measures measures, PrintStream out) {
    new PlanDetails(plan, measures, out).print();
  }

  private void print() {
    heading("Head and hair");
    line("Head", head());
    line("Part", part());
    line("Hair", hair());
    line("", measures.hairs(plan.totals().hairs()) + " on " + measures.area(plan.totals().scalp()));
    printSections();
    printZones();
    printFoils();
  }

  private void line(String label, String words) {
    out.printf(Locale.ROOT, "  %-6s %s%n", label, words);
  }

  private void heading(String words) {
    out.println();
    out.println(words);
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
}
