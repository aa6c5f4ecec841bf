package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.pattern.Pattern;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every shipped pattern reads without a word of complaint and survives writing. */
class PatternLibraryTest {
  static List<Path> shipped() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("patterns"))) {
      return files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
    }
  }

  @ParameterizedTest
  @MethodSource("shipped")
  void readsWithoutProblems(Path file) {
    ReadResult<Pattern> result = Documents.readPattern(file);
    assertEquals(List.of(), result.problems().stream().map(LocatedProblem::words).toList());
    assertTrue(result.value().isPresent());
  }

  @ParameterizedTest
  @MethodSource("shipped")
  void readsBackEqualAfterWriting(Path file) {
    Pattern pattern = Documents.readPattern(file).value().orElseThrow();
    byte[] written = Documents.write(pattern);
    ReadResult<Pattern> again = Documents.readPattern(written);
    assertEquals(
        pattern,
        again.value().orElseThrow(() -> new AssertionError(again.problems().toString())),
        new String(written, StandardCharsets.UTF_8));
    assertEquals(
        new String(written, StandardCharsets.UTF_8),
        new String(Documents.write(again.value().orElseThrow()), StandardCharsets.UTF_8));
  }
}
