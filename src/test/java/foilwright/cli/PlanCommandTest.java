package foilwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.service.Caution;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanCommandTest {
  @TempDir Path folder;

  private CommandRun run(String... args) {
    return CommandRun.in(folder, args);
  }

  private static void assertRefused(int code, String words, CommandRun run) {
    assertEquals(code, run.code(), run::err);
    assertEquals("", run.out());
    assertTrue(run.err().contains(words), run.err());
    assertFalse(run.err().contains("\tat "), "a stack trace reached the user: " + run.err());
    assertFalse(run.err().contains("Exception"), run.err());
  }

  @Test
  void tellsThePlanOfAGuest() {
    CommandRun run = run("plan", "dark-rim", "--guest", "guest-07", "--pace", "stylist", "--full");
    assertEquals(0, run.code(), run::err);
    String said = run.out();
    assertTrue(said.startsWith("Bright inside, dark rim\nguest-07, practice room, pace stylist\n"));
    assertTrue(said.contains("around 561 mm,"), said);
    Matcher foils = Pattern.compile("\nFoils +(\\d+) ").matcher(said);
    assertTrue(foils.find(), said);
    int count = Integer.parseInt(foils.group(1));
    assertTrue(said.matches("(?s).*\n +" + count + "  \\S.*"), "the last foil is missing");
    assertTrue(said.matches("(?s).*\nPlacing +\\d+ to \\d+ min at the pace stylist .*"), said);
    assertTrue(said.matches("(?s).*\nChair +\\d h \\d+ min to \\d h \\d+ min .*"), said);
    assertTrue(said.matches("(?s).*\nLightened +\\d+\\.\\d % of all hair on the head\n.*"), said);
  }

  @Test
  void cautionsAndWhatIsMissingAreAlwaysTold() {
    CommandRun run = run("plan", "fringe-veil", "--full");
    assertEquals(0, run.code(), run::err);
    for (Caution caution : Caution.values()) {
      assertTrue(run.out().contains(caution.text()), caution.text());
    }
    assertTrue(
        run.out().contains("allergy alert test, each product, at least 48 h before: MISSING"));
    assertTrue(run.out().contains("a usual woman's head is assumed"), run.out());
    assertTrue(run.out().contains("level missing"), run.out());
  }

  @Test
  void messagesStayOutOfTheResult() {
    CommandRun run = run("plan", "fringe-veil", "--json");
    assertEquals(0, run.code());
    assertTrue(run.out().startsWith("{\n  \"format\": \"foilwright plan 1\""), run.out());
    assertTrue(run.out().endsWith("}\n"));
    for (String line : run.err().lines().toList()) {
      assertTrue(line.endsWith(" ...") || line.startsWith("wrote "), line);
    }
  }

  @Test
  void theTableHasOneLineForEachFoil() {
    List<String> lines = run("plan", "fringe-veil", "--csv").out().lines().toList();
    assertTrue(lines.get(0).startsWith("number,section,"), lines.get(0));
    assertTrue(lines.get(lines.size() - 1).startsWith((lines.size() - 1) + ","));
  }

  @Test
  void inchesStandBesideMillimetres() {
    String said = run("plan", "fringe-veil", "--inches", "--full").out();
    assertTrue(said.contains("95 mm (3.7 in)"), said);
    assertTrue(said.contains(" sq in)"), said);
    assertFalse(run("plan", "fringe-veil").out().contains(" in)"));
  }

  @Test
  void theSameCommandSaysTheSame() {
    String[] command = {"plan", "v-back", "--guest", "guest-12", "--part", "right"};
    assertEquals(run(command).out(), run(command).out());
  }

  @Test
  void aNamedFileWinsOverAShippedDocument() throws IOException {
    String text = Files.readString(Path.of("patterns/fringe-veil.json"));
    Path own = Files.createDirectories(folder.resolve("patterns")).resolve("v-back.json");
    Files.writeString(own, text);
    assertTrue(run("plan", "v-back").out().startsWith("Fringe veil\n"));
    assertTrue(run("plan", own.toString()).out().startsWith("Fringe veil\n"));
    Files.delete(own);
    assertTrue(run("plan", "v-back").out().startsWith("V back\n"));
  }

  @Test
  void whatDoesNotExistIsAFailure() {
    assertRefused(3, "there is no pattern called \"nothing\"", run("plan", "nothing"));
    assertRefused(3, "there is no \"none.json\"", run("plan", "v-back", "--guest", "none.json"));
    assertRefused(3, "there is no house called \"none\"", run("plan", "v-back", "--house", "none"));
    assertRefused(3, "is a folder", run("plan", folder + "/"));
  }

  @Test
  void aBrokenDocumentIsAProblemAtItsLine() throws IOException {
    String text =
        Files.readString(Path.of("patterns/fringe-veil.json")).replaceFirst("\"fill\"", "\"fil\"");
    Files.writeString(folder.resolve("mine.json"), text);
    CommandRun run = run("plan", "mine.json");
    assertRefused(1, "problem in mine.json, line ", run);
    assertTrue(run.err().contains("    cure: "), run.err());
  }

  @Test
  void optionsThatCannotBeObeyedAreUsageErrors() {
    assertRefused(2, "PATTERN", run("plan"));
    assertRefused(2, "left, centre, right, none", run("plan", "v-back", "--part", "middle"));
    assertRefused(2, "one of --json and --csv", run("plan", "v-back", "--json", "--csv"));
    assertRefused(2, "--guest", run("plan", "v-back", "--guest"));
    assertRefused(2, "--help", run("plan", "v-back", "--colour", "red"));
    assertRefused(1, "lead, stylist, apprentice", run("plan", "v-back", "--pace", "hurried"));
  }

  private List<String> written(String out) throws IOException {
    try (Stream<Path> files = Files.walk(folder.resolve(out))) {
      return files
          .filter(Files::isRegularFile)
          .map(file -> file.getFileName().toString())
          .sorted()
          .toList();
    }
  }

  @Test
  void theMapIsWrittenAndSaidSo() throws IOException {
    CommandRun run = run("plan", "v-back", "--guest", "guest-07");
    assertTrue(run.err().contains("wrote output/v-back-guest-07-map.svg"), run.err());
    assertEquals(List.of("v-back-guest-07-map.svg"), written("output"));
    byte[] first = Files.readAllBytes(folder.resolve("output/v-back-guest-07-map.svg"));
    assertTrue(new String(first, StandardCharsets.UTF_8).startsWith("<svg id='"));
    run("plan", "v-back", "--guest", "guest-07", "--json", "--out", "a/b");
    assertArrayEquals(first, Files.readAllBytes(folder.resolve("a/b/v-back-guest-07-map.svg")));
  }

  @Test
  void aPictureIsWrittenWhenAskedFor() throws IOException {
    run("plan", "fringe-veil", "--png");
    assertEquals(
        List.of("fringe-veil-usual-head-map.png", "fringe-veil-usual-head-map.svg"),
        written("output"));
    BufferedImage picture =
        ImageIO.read(folder.resolve("output/fringe-veil-usual-head-map.png").toFile());
    assertEquals(297 / 25.4 * 200, picture.getWidth(), 1);
  }

  @Test
  void aFolderThatCannotBeMadeIsAFailureAfterThePlan() throws IOException {
    Files.writeString(folder.resolve("taken"), "a file");
    for (String out : new String[] {"taken", "taken/inside"}) {
      CommandRun run = run("plan", "fringe-veil", "--out", out);
      assertEquals(3, run.code(), run::err);
      assertTrue(run.out().startsWith("Fringe veil\n"));
      assertTrue(run.err().contains("taken"), run.err());
      assertFalse(run.err().contains("Exception"), run.err());
    }
    assertEquals("a file", Files.readString(folder.resolve("taken")));
    assertRefused(2, "no folder can be called", run("plan", "fringe-veil", "--out", "a\0b"));
  }

  @Test
  void nothingHalfWrittenStaysWhenAFileCannotBeReplaced() throws IOException {
    Path inTheWay = folder.resolve("output/fringe-veil-usual-head-map.svg/kept");
    Files.createDirectories(inTheWay.getParent());
    Files.writeString(inTheWay, "kept");
    CommandRun run = run("plan", "fringe-veil");
    assertEquals(3, run.code(), run::err);
    assertFalse(run.err().contains("Exception"), run.err());
    assertEquals(List.of("kept"), written("output"));
  }

  @Test
  void aPatternThatDoesNotFitIsStillToldAndDrawn() throws IOException {
    String text =
        Files.readString(Path.of("patterns/fringe-veil.json"))
            .replaceFirst("\"fill\": \\{", "\"fill\": { \"slices\": 190,");
    Files.writeString(folder.resolve("mine.json"), text);
    CommandRun run = run("plan", "mine.json");
    assertEquals(1, run.code(), run.err());
    assertTrue(run.out().contains("problem in mine.json, line "), run.out());
    assertEquals(List.of("mine-usual-head-map.svg"), written("output"));
  }
}
