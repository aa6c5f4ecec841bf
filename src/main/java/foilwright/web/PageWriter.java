package foilwright.web;

import foilwright.app.FoilClock;
import foilwright.app.FoundProblem;
import foilwright.app.Plan;
import foilwright.app.PlannedTimes;
import foilwright.app.Remedy;
import foilwright.pattern.HeadDimensions;
import foilwright.pattern.Section;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.problem.Problem;
import foilwright.service.SafetyQuestion;
import foilwright.service.TimeEstimate;
import foilwright.service.mix.Bowl;
import foilwright.service.mix.SlotMix;
import foilwright.service.mix.TonerMix;
import foilwright.service.visit.Visit;
import foilwright.units.Minutes;
import foilwright.web.WorkPage.Card;
import foilwright.web.WorkPage.Figure;
import foilwright.web.WorkPage.Filed;
import foilwright.web.WorkPage.FoilRow;
import foilwright.web.WorkPage.Look;
import foilwright.web.WorkPage.Weighed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A plan in the words of the page. */
final class PageWriter {
  private static final Pattern SECTION = Pattern.compile("sections\\[(\\d{1,4})\\].*");

  private final Plan plan;
  private final LengthUnit unit;
  private final HeadDimensions head;
  private final Optional<Visit> visit;

  PageWriter(Plan plan, LengthUnit unit) {
    this.plan = plan;
    this.unit = unit;
    head = dimensions(plan);
    visit = plan.times().stream().flatMap(t -> t.visits().stream()).findFirst();
  }

  static HeadDimensions dimensions(Plan plan) {
    return new HeadDimensions(
        plan.head().frontToBack(), plan.head().earToEar(), plan.head().around());
  }

  // Figures.

  /** What is known when the foils are placed. */
  List<Figure> placed() {
    return List.of(
        new Figure("Foils", Integer.toString(plan.totals().foils()), ""),
        new Figure(
            "Placing",
            Measure.range(plan.placingTime().p50(), plan.placingTime().p90()),
            "half of days to nine in ten"),
        new Figure("Lightened", Measure.share(plan.totals().lightenedShare()), "of all hair"));
  }

  /** What is known when the visit is on the clocks. */
  List<Figure> clocked() {
    List<Figure> figures = new ArrayList<>();
    plan.times().ifPresentOrElse(times -> times(times, figures), () -> noTimes(figures));
    return figures;
  }

  private static void noTimes(List<Figure> figures) {
    figures.add(new Figure("Chair", "not known", "see what to look at"));
  }

  private void times(PlannedTimes times, List<Figure> figures) {
    times
        .chair()
        .ifPresentOrElse(
            chair ->
                figures.add(
                    new Figure(
                        "Chair",
                        Measure.hours(chair),
                        times.visits().size() > 1 ? "over two visits" : "")),
            () -> figures.add(new Figure("Chair", "no plan this way", "choose another way out")));
    visit.ifPresent(
        first -> {
          int due = first.firstDue();
          figures.add(
              new Figure(
                  "First due",
                  "foil " + first.foils().get(due).number(),
                  "out by " + at(first, first.schedule().outBy(due))));
        });
    int safe = times.straight().lastSafe();
    boolean all = safe >= plan.totals().foils();
    figures.add(new Figure("Last safe", all ? "all foils" : "foil " + safe, "can go straight in"));
    double grams = 0;
    for (Visit each : times.visits()) {
      grams += each.mix().slots().stream().mapToDouble(s -> s.mixed().toGrams()).sum();
    }
    if (!times.visits().isEmpty()) {
      figures.add(
          new Figure(
              "Mix",
              Measure.wholeGrams(grams),
              times.bowls() + (times.bowls() == 1 ? " bowl" : " bowls")));
    }
    visit.ifPresent(
        first ->
            figures.add(
                first
                    .freeGap()
                    .map(
                        gap ->
                            new Figure(
                                "Free gap",
                                Measure.minutes(Math.floor(gap.length().toMinutes())),
                                "from " + Measure.at(gap.start())))
                    .orElse(new Figure("Free gap", "none", ""))));
  }

  private static String at(Visit visit, Minutes moment) {
    return Measure.at(visit.sinceStart(moment));
  }

  // What to look at.

  /**
   * @param remedies what the program can do about a problem by itself
   */
  static List<Look> looks(
      List<FoundProblem> problems, Optional<Plan> plan, Function<Problem, List<Remedy>> remedies) {
    List<Problem> pinned = plan.map(Plan::pinned).orElse(List.of());
    return problems.stream()
        .map(FoundProblem::problem)
        .sorted(Comparator.comparing(Problem::severity))
        .map(
            problem ->
                new Look(
                    letter(pinned.indexOf(problem)),
                    problem.severity().name().toLowerCase(Locale.ROOT),
                    problem.message(),
                    problem.cure(),
                    section(problem.path()),
                    remedies.apply(problem)))
        .toList();
  }

  private static String letter(int index) {
    if (index < 0) {
      return "";
    }
    return index < 26 ? Character.toString('a' + index) : Integer.toString(index + 1);
  }

  private static int section(String path) {
    Matcher matcher = SECTION.matcher(path);
    return matcher.matches() ? Integer.parseInt(matcher.group(1)) : -1;
  }

  // The order of work.

  /** Cards in the order of the pattern. */
  List<Card> cards(List<Look> looks) {
    SectionFields fields = new SectionFields(head, unit);
    List<Card> cards = new ArrayList<>();
    for (int i = 0; i < plan.pattern().sections().size(); i++) {
      int index = i;
      Section section = plan.pattern().sections().get(i);
      List<Plan.SectionFigures> its =
          plan.sections().stream().filter(s -> s.placed().index() == index).toList();
      List<Integer> numbers =
          its.stream()
              .flatMap(s -> s.placed().foils().stream())
              .map(PlacedFoil::number)
              .sorted()
              .toList();
      cards.add(
          new Card(
              i,
              section.name(),
              section.why(),
              SectionSentence.of(section, head, unit),
              numbers.stream().map(Object::toString).collect(Collectors.joining(" ")),
              ranges(numbers),
              numbers.isEmpty() ? "no time" : minutes(its),
              share(its),
              fields.of(section),
              looks.stream().filter(look -> look.section() == index).toList()));
    }
    return cards;
  }

  private static String minutes(List<Plan.SectionFigures> sections) {
    double half = sum(sections, TimeEstimate::p50);
    double nine = sum(sections, TimeEstimate::p90);
    return Measure.range(Minutes.ofMinutes(half), Minutes.ofMinutes(nine));
  }

  private static double sum(
      List<Plan.SectionFigures> sections, java.util.function.Function<TimeEstimate, Minutes> of) {
    return sections.stream().mapToDouble(s -> of.apply(s.placing()).toMinutes()).sum();
  }

  private static String share(List<Plan.SectionFigures> sections) {
    double hairs = 0;
    double lightened = 0;
    for (Plan.SectionFigures section : sections) {
      PlacedSection.Figures figures = section.placed().figures();
      hairs += figures.hairs();
      lightened += figures.hairs() * figures.lightenedShare().toFraction();
    }
    return hairs > 0 ? String.format(Locale.ROOT, "%.0f %%", 100 * lightened / hairs) : "0 %";
  }

  private static String ranges(List<Integer> numbers) {
    if (numbers.isEmpty()) {
      return "no foil";
    }
    StringBuilder text = new StringBuilder(numbers.size() == 1 ? "foil " : "foils ");
    int from = numbers.get(0);
    for (int i = 0; i < numbers.size(); i++) {
      boolean ends = i + 1 == numbers.size() || numbers.get(i + 1) != numbers.get(i) + 1;
      if (ends) {
        int to = numbers.get(i);
        text.append(from == to ? Integer.toString(from) : from + "\u2013" + to);
        if (i + 1 < numbers.size()) {
          text.append(", ");
          from = numbers.get(i + 1);
        }
      }
    }
    return text.toString();
  }

  // Foils, bowls, what is on file.

  List<FoilRow> foils() {
    Map<Integer, FoilClock> clocks = FoilClock.byNumber(plan);
    return plan.placement().foils().stream().map(foil -> row(foil, clocks)).toList();
  }

  private FoilRow row(PlacedFoil foil, Map<Integer, FoilClock> clocks) {
    Optional<FoilClock> clock = Optional.ofNullable(clocks.get(foil.number()));
    return new FoilRow(
        foil.number(),
        foil.section() + ", row " + foil.row(),
        foil.startFind().words(),
        unit.text(foil.width()),
        clock.map(c -> Measure.at(c.in())).orElse("not known"),
        clock.map(c -> Measure.at(c.dueFrom())).orElse("not known"),
        clock.map(c -> Measure.at(c.outBy())).orElse("not known"),
        clock.map(c -> Measure.at(c.out())).orElse("not known"),
        clock.map(FoilClock::bowl).orElse(foil.mix()),
        clock.map(c -> Measure.grams(c.mixed())).orElse("not known"));
  }

  List<Weighed> bowls() {
    List<Weighed> bowls = new ArrayList<>();
    for (Visit each : plan.times().map(PlannedTimes::visits).orElse(List.of())) {
      for (SlotMix slot : each.mix().slots()) {
        for (Bowl bowl : slot.bowls()) {
          bowls.add(
              new Weighed(
                  bowl.name(),
                  slot.product().name(),
                  Measure.wholeGrams(bowl.product().toGrams()),
                  Measure.wholeGrams(bowl.developer().toGrams())
                      + " of "
                      + slot.developer().words(),
                  at(each, bowl.mixedAt()) + ", before foil " + bowl.firstFoil(),
                  ranges(bowl.foils().stream().sorted().toList())));
        }
      }
    }
    return bowls;
  }

  List<String> toner() {
    List<String> lines = new ArrayList<>();
    for (TonerMix toner : plan.times().map(PlannedTimes::toner).orElse(List.of())) {
      lines.add(
          toner.toner().name()
              + ": "
              + toner.shades().stream()
                  .map(s -> Measure.grams(s.weight()) + " " + s.shade())
                  .collect(Collectors.joining(" + "))
              + " + "
              + Measure.grams(toner.developer())
              + " developer of "
              + toner.toner().developerStrength());
    }
    return lines;
  }

  List<Filed> onFile() {
    List<Filed> answers = new ArrayList<>();
    List<SafetyQuestion> missing = plan.guest().tests().missing();
    for (SafetyQuestion question : SafetyQuestion.values()) {
      answers.add(
          new Filed(
              question.words(), plan.guest().tests().words(question), missing.contains(question)));
    }
    return answers;
  }
}
