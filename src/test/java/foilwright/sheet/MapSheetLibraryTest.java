package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.drawing.Part;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.head.HairlineSettings;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.units.Length;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every shipped pattern on usual, tiny and huge heads. */
class MapSheetLibraryTest {
  private static Map<String, Head> heads() {
    Map<String, Head> heads = new LinkedHashMap<>();
    heads.put("woman", SampleMaps.head(HeadKind.WOMAN));
    heads.put("tiny", round(HeadKind.CHILD, 440));
    heads.put("huge", round(HeadKind.MAN, 680));
    return heads;
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

  @TestFactory
  Stream<DynamicTest> everyMapIsLegible() {
    List<DynamicTest> tests = new ArrayList<>();
    heads()
        .forEach(
            (name, head) -> {
              DrawnHead drawn = DrawnHead.of(head);
              for (Path pattern : SampleMaps.patterns()) {
                Placement placement = SampleMaps.place(pattern, head);
                for (Paper paper : List.of(Paper.A4, Paper.LETTER)) {
                  tests.add(
                      DynamicTest.dynamicTest(
                          pattern.getFileName() + " on " + name + ", " + paper.words(),
                          () ->
                              check(
                                  placement,
                                  MapSheet.on(drawn, paper)
                                      .pages(placement, SampleMaps.notes(placement)))));
                }
              }
            });
    return tests.stream();
  }

  private static void check(Placement placement, List<Scene> pages) {
    assertTrue(placement.foils().size() > 0, "some foils");
    assertEquals(
        placement.foils().stream().map(PlacedFoil::number).collect(Collectors.toSet()),
        numbers(pages),
        "every foil has its number in at least one picture");
    assertTrue(placement.foils().size() <= 90 || pages.size() > 1, "a second page for many foils");
    for (Scene page : pages) {
      SheetChecks.labelsAreClear(page);
      SheetChecks.everythingIsOnThePaper(page);
    }
    cautionsAreOnTheFirstPage(pages.get(0));
  }

  private static Set<Integer> numbers(List<Scene> pages) {
    return pages.stream()
        .flatMap(page -> page.marks().stream())
        .filter(m -> m.role() == Role.NUMBER)
        .map(m -> Integer.valueOf(m.data().get("number")))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static void cautionsAreOnTheFirstPage(Scene first) {
    String words =
        first.marks().stream()
            .filter(m -> m.role() == Role.NOTE)
            .flatMap(m -> m.parts().stream())
            .filter(Part.Lettering.class::isInstance)
            .map(p -> ((Part.Lettering) p).text())
            .collect(Collectors.joining(" "));
    assertTrue(words.contains("rinse at once."), words);
  }
}
