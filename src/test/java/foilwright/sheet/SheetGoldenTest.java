package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import foilwright.drawing.Scene;
import foilwright.drawing.svg.SvgLetters;
import foilwright.drawing.svg.SvgWriter;
import foilwright.head.HeadKind;
import foilwright.service.schedule.Removal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Whole sheets as text. When a sheet is meant to change, look at it, then rewrite the files with
 * {@code mvn test -Dtest=SheetGoldenTest -Dgolden.rewrite=true}.
 */
class SheetGoldenTest {
  private static final Path GOLDEN = Path.of("src/test/resources/golden");

  private static void assertGolden(String name, Scene scene) throws IOException {
    // One mark a line, so that a difference can be read.
    String svg = SvgWriter.write(scene, SvgLetters.LINKED).replace("<g id=", "\n<g id=") + "\n";
    Path file = GOLDEN.resolve(name + ".svg");
    if (Boolean.getBoolean("golden.rewrite")) {
      Files.createDirectories(GOLDEN);
      Files.writeString(file, svg);
    }
    assertEquals(Files.readString(file), svg, name);
  }

  @Test
  void mapOfAFringeVeil() throws IOException {
    assertGolden("map-fringe-veil", SampleMaps.pages("fringe-veil", HeadKind.WOMAN).get(0));
  }

  @Test
  void timelineOfADarkRim() throws IOException {
    List<Scene> pages =
        SampleTimelines.pages(
            "dark-rim",
            "stylist",
            Removal.IN_PLACING_ORDER,
            Optional.of(LocalTime.of(9, 30)),
            Paper.A4);
    assertGolden("timeline-dark-rim", pages.get(0));
  }

  @Test
  void timelineOfAFullHead() throws IOException {
    List<Scene> pages =
        SampleTimelines.pages(
            "full-head-fine-weave", "lead", Removal.WHILE_PLACING, Optional.empty(), Paper.A4);
    assertGolden("timeline-full-head", pages.get(0));
    assertGolden("timeline-full-head-2", pages.get(1));
  }

  @Test
  void mixOfAFringeVeil() throws IOException {
    List<Scene> pages =
        SampleTimelines.mixPages(
            "fringe-veil",
            "apprentice",
            Removal.IN_PLACING_ORDER,
            Optional.of(LocalTime.of(9, 30)),
            Paper.A4);
    assertGolden("mix-fringe-veil", pages.get(0));
  }

  @Test
  void headOfATrainingHead() throws IOException {
    assertGolden(
        "head-training-head",
        HeadSheet.build(
            SampleMaps.head(HeadKind.TRAINING_HEAD), "Training head", "part left", Paper.A4));
  }

  @Test
  void everyOtherSheetOfAFringeVeil() throws IOException {
    for (Map.Entry<String, Scene> sheet :
        SampleSheets.of("fringe-veil", HeadKind.TRAINING_HEAD).entrySet()) {
      assertGolden(sheet.getKey() + "-fringe-veil", sheet.getValue());
    }
  }
}
