package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.document.Documents;
import foilwright.document.GuestDocument;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.fall.NaturalFall;
import foilwright.geometry.surface.DirectionField;
import foilwright.head.HairlineSettings;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import foilwright.pattern.Pattern;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
import foilwright.service.Tolerances;
import foilwright.service.marking.Attempt;
import foilwright.service.marking.Criterion;
import foilwright.service.marking.MarkedAttempt;
import foilwright.service.marking.Marking;
import foilwright.service.marking.Measured;
import foilwright.units.Length;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every sheet of every shipped pattern on every shipped guest, on either paper in turn. */
class EverySheetLibraryTest {
  private static final Wording LEFT = new Wording(true, true);

  private static List<Path> guests() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("shared/guests"))) {
      return files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
    }
  }

  @TestFactory
  Stream<DynamicTest> noLabelLiesOnAnotherAndAllIsOnThePaper() throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    int turn = 0;
    for (Path file : guests()) {
      GuestDocument guest = Documents.readGuest(file).value().orElseThrow();
      Head head = guest.fitHead(HeadSettings.USUAL).head().orElseThrow();
      DrawnHead drawn = DrawnHead.of(head);
      DirectionField fall = NaturalFall.over(head);
      for (Path pattern : SampleMaps.patterns()) {
        Paper paper = turn % 2 == 0 ? Paper.A4 : Paper.LETTER;
        boolean all = turn++ % 3 == 0;
        tests.add(
            DynamicTest.dynamicTest(
                pattern.getFileName() + " on " + guest.number() + ", " + paper.words(),
                () -> {
                  Pattern read = Documents.readPattern(pattern).value().orElseThrow();
                  Placement placement =
                      Placer.place(read, head, guest.hair(), PlacingSettings.USUAL, fall);
                  check(read, DrawnPlan.of(drawn, placement), fall, paper, all);
                }));
      }
    }
    return tests.stream();
  }

  /** Sheets with numbers on the head every time, those without on every third plan. */
  private static void check(
      Pattern pattern, DrawnPlan plan, DirectionField fall, Paper paper, boolean all) {
    Wording wording = all ? LEFT : Wording.USUAL;
    String title = pattern.title();
    clear(StepSheet.build(plan, pattern, fall, "guest", wording, paper));
    everyFoilIsInAStep(plan, pattern, fall);
    List<Scene> answer = PracticeSheet.answer(plan, pattern, "guest", paper);
    clear(answer);
    assertEquals(
        plan.placement().foils().stream().map(f -> "" + f.number()).collect(Collectors.toSet()),
        answer.stream()
            .flatMap(page -> page.marks().stream())
            .filter(m -> m.role() == Role.NUMBER)
            .map(m -> m.data().get("number"))
            .collect(Collectors.toSet()),
        "every foil has its number");
    MarkedAttempt marked = marked(plan.placement());
    clear(MarkingSheet.scored(plan, Tolerances.USUAL, marked, title, paper));
    if (all) {
      clear(AngleSheet.build(plan, pattern, fall, "guest", paper));
      clear(List.of(PracticeSheet.blank(plan, title, "guest", paper)));
      clear(MarkingSheet.blank(plan, Tolerances.USUAL, title, "guest", paper));
      clear(List.of(MarkingSheet.trends(List.of(marked, marked), title, "", paper)));
      clear(FilingSheet.client(plan, title, "guest", blocks(), paper));
      clear(FilingSheet.record(plan, title, "guest", blocks(), paper));
    }
  }

  private static void everyFoilIsInAStep(DrawnPlan plan, Pattern pattern, DirectionField fall) {
    List<Integer> taught =
        Lesson.of(pattern, plan.head().head(), plan.placement(), fall, Wording.USUAL).stream()
            .flatMap(step -> step.foils().stream())
            .map(PlacedFoil::number)
            .sorted()
            .toList();
    assertEquals(plan.placement().foils().stream().map(PlacedFoil::number).toList(), taught);
  }

  private static void clear(List<Scene> pages) {
    assertFalse(pages.isEmpty());
    Set<String> ids = new HashSet<>();
    for (Scene page : pages) {
      assertTrue(ids.add(page.id()), page.id());
      SheetChecks.labelsAreClear(page);
      SheetChecks.everythingIsOnThePaper(page);
    }
  }

  /** Every second foil measured, some of it off. */
  private static MarkedAttempt marked(Placement placement) {
    List<Measured> foils = new ArrayList<>();
    for (PlacedFoil foil : placement.foils()) {
      if (foil.number() % 2 == 1) {
        foils.add(
            Measured.at(foil.number())
                .with(Criterion.SLICE, 3 + foil.number() % 5 + ".5 mm")
                .with(Criterion.BACKGROUND, 8 + foil.number() % 9 + " mm")
                .with(Criterion.STRAIGHT, foil.number() % 7 + " mm")
                .with(Criterion.ANGLE, 20 + foil.number() % 50 + " deg"));
      }
    }
    return Marking.mark(
        placement,
        Tolerances.USUAL,
        new Attempt("learner-04", foils, OptionalInt.of(12), OptionalInt.of(14)));
  }

  private static List<FilingSheet.Block> blocks() {
    List<FilingSheet.Block> blocks = new ArrayList<>();
    for (int i = 1; i <= 9; i++) {
      blocks.add(
          new FilingSheet.Block(
              "Block " + i,
              List.of(
                  new FilingSheet.Row("time", "2 h 10 to 2 h 40, whatever the day brings"),
                  new FilingSheet.Row("weighed", "")),
              List.of(
                  "A sentence that is long enough to need a second line in a column of this"
                      + " width, as most of them are.")));
    }
    return blocks;
  }

  @TestFactory
  Stream<DynamicTest> everyWrapIsWhole() {
    List<DynamicTest> tests = new ArrayList<>();
    List<Head> heads =
        List.of(
            SampleMaps.head(HeadKind.TRAINING_HEAD),
            round(HeadKind.CHILD, 440),
            round(HeadKind.MAN, 680));
    List<Path> patterns = SampleMaps.patterns();
    for (int i = 0; i < patterns.size(); i++) {
      Path pattern = patterns.get(i);
      Head head = heads.get(i % heads.size());
      Paper paper = i % 2 == 0 ? Paper.LETTER : Paper.A4;
      tests.add(
          DynamicTest.dynamicTest(
              pattern.getFileName() + " on " + head.kind() + ", " + paper.words(),
              () -> {
                DrawnPlan plan = DrawnPlan.of(DrawnHead.of(head), SampleMaps.place(pattern, head));
                List<Scene> pages = WrapSheet.build(plan, "Sample", "training head", paper);
                clear(pages);
                assertEquals(
                    plan.foils().stream().map(f -> "" + f.number()).collect(Collectors.toSet()),
                    pages.stream()
                        .flatMap(page -> page.marks().stream())
                        .filter(m -> m.id().contains("-number-"))
                        .map(m -> m.data().get("number"))
                        .collect(Collectors.toSet()),
                    "every foil has its number");
              }));
    }
    return tests.stream();
  }

  private static Head round(HeadKind kind, double millimetres) {
    return Head.fit(
            kind,
            TapeMeasurements.NONE.withAround(Length.ofMillimetres(millimetres)),
            HairlineSettings.USUAL,
            PartSetting.NONE,
            HeadSettings.USUAL)
        .head()
        .orElseThrow();
  }
}
