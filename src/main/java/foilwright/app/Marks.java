package foilwright.app;

import foilwright.drawing.Scene;
import foilwright.problem.Problem;
import foilwright.service.Tolerances;
import foilwright.service.marking.Attempt;
import foilwright.service.marking.Criterion;
import foilwright.service.marking.MarkedAttempt;
import foilwright.service.marking.Marking;
import foilwright.service.marking.Measured;
import foilwright.service.marking.Trend;
import foilwright.sheet.DrawnHead;
import foilwright.sheet.DrawnPlan;
import foilwright.sheet.MarkingSheet;
import foilwright.sheet.Paper;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Marks practice work against a plan. */
public final class Marks {
  private static final String UNKNOWN_FOIL = "unknown-foil";

  private Marks() {}

  /**
   * Reads measured work, compares it with a plan and draws the result; without any measured work
   * the table to measure with.
   *
   * @throws IllegalArgumentException when a single value cannot be read; the message says how it is
   *     written
   */
  public static MarkOutcome mark(Workspace workspace, Plan plan, MarkRequest request) {
    Tolerances tolerances = plan.house().tolerances();
    List<MarkedAttempt> marked = new ArrayList<>();
    List<FoundProblem> problems = new ArrayList<>();
    boolean unreachable = false;
    if (!request.values().isEmpty()) {
      MarkedAttempt values = Marking.mark(plan.placement(), tolerances, attempt(request.values()));
      if (!values.unknown().isEmpty()) {
        throw new IllegalArgumentException("the plan has no foil " + values.unknown().get(0));
      }
      marked.add(values);
    }
    for (String named : request.attempts()) {
      Found<Attempt> found = workspace.attempt(named);
      problems.addAll(found.problems());
      unreachable |= found.unreachable();
      if (found.value().isPresent()) {
        MarkedAttempt one = Marking.mark(plan.placement(), tolerances, found.value().get());
        marked.add(one);
        one.unknown().forEach(foil -> problems.add(unknown(found, foil, plan)));
      }
    }
    List<Trend> trends = Marking.trends(marked);
    boolean stopped = problems.stream().anyMatch(FoundProblem::isError);
    return new MarkOutcome(
        marked, trends, stopped ? List.of() : sheets(plan, request, marked), problems, unreachable);
  }

  private static FoundProblem unknown(Found<Attempt> found, int foil, Plan plan) {
    List<Measured> foils = found.value().orElseThrow().foils();
    int index = 0;
    while (foils.get(index).foil() != foil) {
      index++;
    }
    return found.locate(
        Problem.error(
            UNKNOWN_FOIL,
            "foils[" + index + "].foil",
            "the plan has no foil " + foil + "; its last is " + plan.totals().foils(),
            "write the number that stands on the marking sheet of this plan"));
  }

  private static List<SheetFile> sheets(
      Plan plan, MarkRequest request, List<MarkedAttempt> marked) {
    DrawnPlan drawn = DrawnPlan.of(DrawnHead.of(plan.head()), plan.placement());
    Tolerances tolerances = plan.house().tolerances();
    String title = plan.pattern().title();
    Paper paper = request.paper().paper();
    if (marked.isEmpty()) {
      List<Scene> pages =
          MarkingSheet.blank(drawn, tolerances, title, Sheets.notes(plan).subtitle(), paper);
      return files(plan.name() + "-marking", title, pages, request);
    }
    List<SheetFile> files = new ArrayList<>();
    for (int i = 0; i < marked.size(); i++) {
      String name =
          plan.name()
              + "-scored-"
              + (i + 1)
              + "-"
              + FileNames.of(marked.get(i).attempt().learner());
      files.addAll(
          files(
              name,
              title,
              MarkingSheet.scored(drawn, tolerances, marked.get(i), title, paper),
              request));
    }
    if (marked.size() > 1) {
      files.addAll(
          files(
              plan.name() + "-class",
              title,
              List.of(MarkingSheet.trends(marked, title, Sheets.notes(plan).subtitle(), paper)),
              request));
    }
    return List.copyOf(files);
  }

  private static List<SheetFile> files(
      String name, String title, List<Scene> pages, MarkRequest request) {
    return DrawnSheet.of(name, title, pages, request.grey()).files(request.format());
  }

  /** One attempt from single values: foil, criterion, value. */
  private static Attempt attempt(List<String> values) {
    Map<Integer, Measured> foils = new TreeMap<>();
    for (String text : values) {
      String[] words = text.strip().split("\\s+", 3);
      if (words.length < 3 || !words[0].matches("\\d{1,3}")) {
        throw new IllegalArgumentException(wrong(text));
      }
      Criterion criterion =
          Marking.criteriaAtAFoil().stream()
              .filter(c -> c.key().equals(words[1]))
              .findFirst()
              .orElseThrow(() -> new IllegalArgumentException(wrong(text)));
      int foil = Integer.parseInt(words[0]);
      foils.put(foil, foils.getOrDefault(foil, Measured.at(foil)).with(criterion, words[2]));
    }
    return new Attempt(
        "learner-00", List.copyOf(foils.values()), OptionalInt.empty(), OptionalInt.empty());
  }

  private static String wrong(String text) {
    return "\""
        + text
        + "\" is not a value; write a foil's number, one of "
        + Marking.criteriaAtAFoil().stream().map(Criterion::key).collect(Collectors.joining(", "))
        + ", and what was measured, such as \"3 slice 7 mm\"";
  }
}
