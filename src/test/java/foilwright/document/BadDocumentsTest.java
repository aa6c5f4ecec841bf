package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.problem.Severity;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each bad document has one thing wrong, and the reading says what and where, and how to cure it.
 */
class BadDocumentsTest {
  private static final Path FOLDER = Path.of("src/test/resources/documents");

  static ReadResult<?> read(String name, byte[] bytes) {
    if (name.startsWith("guest")) {
      return Documents.readGuest(bytes);
    }
    if (name.startsWith("attempt")) {
      return Documents.readAttempt(bytes);
    }
    return name.startsWith("house") ? Documents.readHouse(bytes) : Documents.readPattern(bytes);
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/documents/invalid/expected.csv")
  void oneProblemAtItsPlace(String file, String code, String path, int line) throws IOException {
    ReadResult<?> result = read(file, Files.readAllBytes(FOLDER.resolve("invalid").resolve(file)));
    List<String> found =
        result.problems().stream()
            .map(p -> p.problem().code() + " " + p.problem().path() + " " + p.place().line())
            .toList();
    assertEquals(List.of(code + " " + (path == null ? "" : path) + " " + line), found);
    assertTrue(result.value().isEmpty());
  }

  @Test
  void everyBadDocumentIsExpected() throws IOException {
    Set<String> expected =
        Files.readAllLines(FOLDER.resolve("invalid/expected.csv")).stream()
            .filter(l -> !l.startsWith("#"))
            .map(l -> l.substring(0, l.indexOf(',')))
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(
        expected,
        Shipped.in(FOLDER.resolve("invalid")).stream()
            .map(f -> f.getFileName().toString())
            .collect(Collectors.toCollection(TreeSet::new)));
  }

  static List<Path> sound() {
    return Stream.of("valid", "on-a-head", "old-versions")
        .flatMap(f -> Shipped.in(FOLDER.resolve(f)).stream())
        .toList();
  }

  @ParameterizedTest
  @MethodSource("sound")
  void soundDocumentsRead(Path file) throws IOException {
    ReadResult<?> result = read(file.getFileName().toString(), Files.readAllBytes(file));
    assertEquals(
        List.of(),
        result.problems().stream()
            .filter(p -> p.problem().severity() == Severity.ERROR)
            .map(LocatedProblem::words)
            .toList());
  }

  @Test
  void allProblemsComeOutAtOnceInTheOrderOfTheDocument() {
    String text =
        """
        { "format": "foilwright pattern 1",
          "titel": "Low",
          "sections": [
            { "name": "a", "shape": "horizontal", "from": "top",
              "fill": { "slice": 3, "background": "x mm", "picks": "sold", "mix": ["A", "Q"] } },
            { "name": "b", "shape": { "diagonal": { "angle": "95 deg" } }, "from": "up",
              "fill": { "slice": "3 mm", "background": "5 mm", "picks": "solid", "foils": 0 } }
          ] }
        """;
    assertEquals(
        List.of(
            "1 missing-key ",
            "2 unknown-key titel",
            "5 no-unit sections[0].fill.slice",
            "5 wrong-form sections[0].fill.background",
            "5 unknown-word sections[0].fill.picks",
            "5 unknown-word sections[0].fill.mix[1]",
            "6 missing-key sections[1].shape.diagonal",
            "6 out-of-range sections[1].shape.diagonal.angle",
            "6 unknown-word sections[1].from",
            "7 out-of-range sections[1].fill.foils"),
        Documents.readPattern(text.getBytes(StandardCharsets.UTF_8)).problems().stream()
            .map(p -> p.place().line() + " " + p.problem().code() + " " + p.problem().path())
            .toList());
  }

  @Test
  void theNearestKnownKeyIsNamed() throws IOException {
    String cure = onlyCure("pattern-unknown-key.json");
    assertTrue(cure.contains("\"insetFromHairline\""), cure);
    assertTrue(onlyCure("pattern-unknown-word.json").contains("\"back\""));
    assertTrue(onlyCure("house-unknown-product.json").contains("\"lightener\""));
  }

  @Test
  void aBareNumberIsToldTheUnits() throws IOException {
    String message = onlyProblem("pattern-bare-number.json").problem().message();
    assertTrue(message.contains("mm, cm, in"), message);
  }

  private static String onlyCure(String file) throws IOException {
    return onlyProblem(file).problem().cure();
  }

  private static LocatedProblem onlyProblem(String file) throws IOException {
    ReadResult<?> result = read(file, Files.readAllBytes(FOLDER.resolve("invalid").resolve(file)));
    assertEquals(1, result.problems().size());
    return result.problems().get(0);
  }

  @Test
  void columnsPointAtTheValue() {
    String text = "{\n  \"format\": \"foilwright pattern 1\",\n  \"title\": 7 }";
    LocatedProblem problem =
        Documents.readPattern(text.getBytes(StandardCharsets.UTF_8)).problems().stream()
            .filter(p -> p.problem().path().equals("title"))
            .findFirst()
            .orElseThrow();
    assertEquals(new Place(3, 12), problem.place());
    assertTrue(problem.words().startsWith("line 3, column 12: title: "), problem.words());
  }

  @Test
  void nobodyIsBlamedForAStandIn() {
    String text =
        """
        { "format": "foilwright pattern 1", "title": "x",
          "sections": [
            { "name": 5, "shape": "horizontal", "from": "top",
              "fill": { "slice": "3 mm", "background": "5 mm", "picks": "solid" } },
            { "name": "b", "region": { "except": "a" }, "shape": "horizontal", "from": "top",
              "fill": { "slice": "3 mm", "background": "5 mm", "picks": "solid" } }
          ] }
        """;
    assertEquals(
        List.of("wrong-type"),
        Documents.readPattern(text.getBytes(StandardCharsets.UTF_8)).problems().stream()
            .map(p -> p.problem().code())
            .toList());
  }

  @Test
  void tooLargeIsRefusedUnread() {
    byte[] bytes = new byte[1_000_001];
    java.util.Arrays.fill(bytes, (byte) '[');
    ReadResult<?> result = Documents.readPattern(bytes);
    assertEquals("too-large", result.problems().get(0).problem().code());
    byte[] deep = new byte[1_000_000];
    java.util.Arrays.fill(deep, (byte) '[');
    assertEquals("too-deep", Documents.readPattern(deep).problems().get(0).problem().code());
  }

  @Test
  void laterProblemsFindTheirPlace() throws IOException {
    byte[] bytes = Files.readAllBytes(FOLDER.resolve("old-versions/pattern-1.json"));
    Places places = Documents.readPattern(bytes).places();
    assertEquals(11, places.find("sections[0].fill.slice").line());
    assertEquals(11, places.find("sections[0].fill.slice.first.of").line());
    assertEquals(16, places.find("sections[1]").line());
    assertEquals(new Place(1, 1), places.find(""));
    assertFalse(places.find("sections[9].fill").line() == 0);
  }

  @Test
  void anOldVersionReadsAsTheSamePattern() throws IOException {
    byte[] old = Files.readAllBytes(FOLDER.resolve("old-versions/pattern-0.json"));
    byte[] now = Files.readAllBytes(FOLDER.resolve("old-versions/pattern-1.json"));
    assertEquals(
        Documents.readPattern(now).value().orElseThrow(),
        Documents.readPattern(old).value().orElseThrow());
    byte[] mixed =
        new String(old, StandardCharsets.UTF_8)
            .replace("pattern 0", "pattern 1")
            .getBytes(StandardCharsets.UTF_8);
    assertTrue(Documents.readPattern(mixed).value().isEmpty());
  }
}
