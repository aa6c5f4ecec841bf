package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.pattern.Pattern;
import foilwright.pattern.PatternCheck;
import foilwright.problem.Severity;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What holds for any document, tried on many by chance; the seed is printed. */
class RandomDocumentsIdentityTest {
  private static final long SEED = 20260407;

  @Test
  void anyPatternReadsBackEqualAndPassesTheSchema() {
    System.out.println("seed " + SEED);
    RandomPatterns patterns = new RandomPatterns(SEED);
    for (int i = 0; i < 300; i++) {
      Pattern pattern = patterns.next();
      byte[] written = Documents.write(pattern);
      String text = new String(written, StandardCharsets.UTF_8);
      ReadResult<Pattern> result = Documents.readPattern(written);
      assertEquals(
          PatternCheck.problems(pattern).stream()
              .filter(p -> p.severity() == Severity.ERROR)
              .collect(Collectors.toSet()),
          result.problems().stream()
              .map(LocatedProblem::problem)
              .filter(p -> p.severity() == Severity.ERROR)
              .collect(Collectors.toSet()),
          text);
      Node.ObjectNode root =
          (Node.ObjectNode) TextReader.read(written, new ProblemLog()).orElseThrow();
      assertEquals(pattern, PatternReader.read(root, new ProblemLog()), text);
      assertTrue(Schemas.accepts("pattern", written), text);
    }
  }

  /** Bytes of shipped documents are changed, lost, doubled and cut: nothing but problems follow. */
  @Test
  void brokenBytesGiveProblemsAndNothingElse() throws IOException {
    System.out.println("seed " + SEED);
    Random random = new Random(SEED);
    List<Path> files = new ArrayList<>(Shipped.in(Shipped.PATTERNS));
    files.addAll(Shipped.in(Shipped.GUESTS));
    files.addAll(Shipped.in(Shipped.HOUSES));
    int refused = 0;
    for (int i = 0; i < 3000; i++) {
      Path file = files.get(random.nextInt(files.size()));
      byte[] bytes = Files.readAllBytes(file);
      int changes = 1 + random.nextInt(3);
      for (int k = 0; k < changes; k++) {
        bytes = broken(bytes, random);
      }
      String folder = file.getParent().getFileName().toString();
      ReadResult<?> result = BadDocumentsTest.read(folder, bytes);
      refused += result.value().isEmpty() ? 1 : 0;
      for (LocatedProblem problem : result.problems()) {
        assertTrue(problem.place().line() >= 0 && !problem.words().isBlank());
      }
    }
    assertTrue(refused > 1500, "only " + refused + " of 3000 were refused");
  }

  private static byte[] broken(byte[] bytes, Random random) {
    int at = random.nextInt(bytes.length);
    String marks = "\"{}[]:,0-.e\\ \n";
    switch (random.nextInt(4)) {
      case 0 -> {
        byte[] changed = bytes.clone();
        changed[at] =
            random.nextBoolean()
                ? (byte) random.nextInt(256)
                : (byte) marks.charAt(random.nextInt(marks.length()));
        return changed;
      }
      case 1 -> {
        return java.util.Arrays.copyOf(bytes, Math.max(1, at));
      }
      case 2 -> {
        byte[] shorter = new byte[bytes.length - 1];
        System.arraycopy(bytes, 0, shorter, 0, at);
        System.arraycopy(bytes, at + 1, shorter, at, bytes.length - at - 1);
        return shorter.length == 0 ? bytes : shorter;
      }
      default -> {
        int length = Math.min(bytes.length - at, 1 + random.nextInt(200));
        byte[] longer = new byte[bytes.length + length];
        System.arraycopy(bytes, 0, longer, 0, at + length);
        System.arraycopy(bytes, at, longer, at + length, bytes.length - at);
        return longer;
      }
    }
  }
}
