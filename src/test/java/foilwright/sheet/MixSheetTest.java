package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.service.mix.Bowl;
import foilwright.service.schedule.Removal;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class MixSheetTest {
  private static final Optional<LocalTime> MORNING = Optional.of(LocalTime.of(9, 30));

  private static MixCard full() {
    return SampleTimelines.card(
        "full-head-fine-weave", "lead", Removal.WHILE_PLACING, Optional.empty());
  }

  private static MixCard veil() {
    return SampleTimelines.card("fringe-veil", "apprentice", Removal.IN_PLACING_ORDER, MORNING);
  }

  private static List<Scene> pages(MixCard card, Paper paper) {
    return MixSheet.build(card, SampleTimelines.notes("Sample"), paper);
  }

  @TestFactory
  Stream<DynamicTest> everyMixIsLegible() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Paper paper : List.of(Paper.A4, Paper.LETTER)) {
      tests.add(legible("full head", full(), paper));
      tests.add(legible("fringe veil", veil(), paper));
      tests.add(
          legible(
              "dark rim",
              SampleTimelines.card("dark-rim", "stylist", Removal.IN_PLACING_ORDER, MORNING),
              paper));
      tests.add(
          legible(
              "many bowls",
              SampleTimelines.card("full-head-fine-weave", "apprentice", Removal.IN_WAVES, MORNING),
              paper));
    }
    return tests.stream();
  }

  private static DynamicTest legible(String name, MixCard card, Paper paper) {
    return DynamicTest.dynamicTest(
        name + " on " + paper.words(),
        () -> {
          List<Scene> pages = pages(card, paper);
          for (Scene page : pages) {
            SheetChecks.labelsAreClear(page);
            SheetChecks.everythingIsOnThePaper(page);
            assertTrue(page.marks().stream().anyMatch(m -> m.role() == Role.SCALE_BOX), page.id());
            assertFalse(SheetChecks.words(page).contains("\u2026"), "nothing is cut short");
          }
          assertEquals(
              card.plan().bowls().size(),
              pages.stream()
                  .flatMap(p -> p.marks().stream())
                  .filter(m -> m.data().containsKey("bowl"))
                  .count());
        });
  }

  @Test
  void everyBowlTellsItsWeightsAndTheFoilBeforeWhichItIsMixed() {
    MixCard card = full();
    Scene page = pages(card, Paper.A4).get(0);
    for (Bowl bowl : card.plan().bowls()) {
      Mark row =
          page.marks().stream()
              .filter(m -> m.id().equals("bowl-" + bowl.name().toLowerCase(Locale.ROOT)))
              .findFirst()
              .orElseThrow();
      List<String> texts = texts(row);
      assertEquals(bowl.name(), texts.get(0));
      assertEquals(Integer.toString(bowl.firstFoil()), texts.get(2));
      assertEquals(Math.round(bowl.mixed().toGrams()), Long.parseLong(texts.get(texts.size() - 1)));
      assertEquals(
          3,
          row.parts().stream().filter(Part.Shape.class::isInstance).count(),
          "boxes for product, developer and what is left over");
    }
  }

  private static List<String> texts(Mark mark) {
    return mark.parts().stream()
        .filter(Part.Lettering.class::isInstance)
        .map(part -> ((Part.Lettering) part).text())
        .toList();
  }

  @Test
  void whatIsMissingStandsInFrontInAStrongFrame() {
    Mark missing =
        pages(veil(), Paper.A4).get(0).marks().stream()
            .filter(m -> m.role() == Role.PROBLEM)
            .findFirst()
            .orElseThrow();
    assertTrue(missing.title().contains("elasticity test"), missing.title());
    assertTrue(
        missing.title().contains("maker's sheet of powder lightener, entry 3"), missing.title());
  }

  @Test
  void nothingMissingNeedsNoFrame() {
    MixCard card = full();
    MixCard complete =
        new MixCard(
            card.plan(),
            card.settings(),
            card.toner(),
            card.sheets(),
            List.of(),
            card.beforeFirstParting(),
            card.start());
    assertTrue(
        pages(complete, Paper.A4).stream()
            .flatMap(page -> page.marks().stream())
            .noneMatch(m -> m.role() == Role.PROBLEM));
  }

  @Test
  void twoStocksAreToldWhereTheDeveloperIsMixed() {
    String words = SheetChecks.words(pages(veil(), Paper.A4).get(0));
    assertTrue(words.contains("mixed from 6 % and 1.9 %"), words);
    assertTrue(words.contains("1.9 %, g"), words);
    assertTrue(words.contains("ready to use 2.02 % by weight, where the limit is 12 %"), words);
  }
}
