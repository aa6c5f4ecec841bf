package foilwright.sheet;

import foilwright.document.Documents;
import foilwright.drawing.Scene;
import foilwright.fall.NaturalFall;
import foilwright.geometry.surface.DirectionField;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.pattern.Pattern;
import foilwright.placement.PlacedFoil;
import foilwright.service.Tolerances;
import foilwright.service.marking.Attempt;
import foilwright.service.marking.Criterion;
import foilwright.service.marking.MarkedAttempt;
import foilwright.service.marking.Marking;
import foilwright.service.marking.Measured;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** The first page of every sheet of one plan, for tests. */
final class SampleSheets {
  private static final String WHOM = "guest-07, part left";

  private SampleSheets() {}

  static Map<String, Scene> of(String pattern, HeadKind kind) {
    Pattern read =
        Documents.readPattern(Path.of("patterns", pattern + ".json")).value().orElseThrow();
    Head head = SampleMaps.head(kind);
    DrawnPlan plan = DrawnPlan.of(DrawnHead.of(head), SampleMaps.place(pattern, head));
    DirectionField fall = NaturalFall.over(head);
    Paper paper = Paper.A4;
    String title = read.title();
    MarkedAttempt marked = marked(plan);
    Map<String, Scene> sheets = new LinkedHashMap<>();
    sheets.put("steps", StepSheet.build(plan, read, fall, WHOM, Wording.USUAL, paper).get(0));
    sheets.put("angles", AngleSheet.build(plan, read, fall, WHOM, paper).get(0));
    sheets.put("blank", PracticeSheet.blank(plan, title, WHOM, paper));
    sheets.put("answer", PracticeSheet.answer(plan, read, WHOM, paper).get(0));
    sheets.put("marking", MarkingSheet.blank(plan, Tolerances.USUAL, title, WHOM, paper).get(0));
    List<Scene> scored = MarkingSheet.scored(plan, Tolerances.USUAL, marked, title, paper);
    sheets.put("scored", scored.get(0));
    sheets.put("where-off", scored.get(scored.size() - 1));
    sheets.put("class", MarkingSheet.trends(List.of(marked, marked), title, "", paper));
    sheets.put("wrap", WrapSheet.build(plan, title, WHOM, paper).get(0));
    sheets.put("client", FilingSheet.client(plan, title, WHOM, blocks(), paper).get(0));
    sheets.put("record", FilingSheet.record(plan, title, WHOM, blocks(), paper).get(0));
    return sheets;
  }

  private static MarkedAttempt marked(DrawnPlan plan) {
    List<Measured> foils = new ArrayList<>();
    for (PlacedFoil foil : plan.placement().foils()) {
      foils.add(
          Measured.at(foil.number())
              .with(Criterion.SLICE, 4 + foil.number() % 5 + " mm")
              .with(Criterion.BACKGROUND, 8 + foil.number() % 7 + " mm")
              .with(Criterion.STRAIGHT, foil.number() % 6 + " mm")
              .with(Criterion.ANGLE, 20 + foil.number() % 40 + " deg"));
    }
    return Marking.mark(
        plan.placement(),
        Tolerances.USUAL,
        new Attempt("learner-04", foils, OptionalInt.of(4), OptionalInt.of(4)));
  }

  private static List<FilingSheet.Block> blocks() {
    return List.of(
        new FilingSheet.Block(
            "The visit",
            List.of(
                new FilingSheet.Row("time, a range", "130 to 160 min"),
                new FilingSheet.Row("price", "")),
            List.of("A range, since no two days are alike.")),
        FilingSheet.Block.of(
            "Before the visit", "An allergy alert test at least 48 h before, for each product."));
  }
}
