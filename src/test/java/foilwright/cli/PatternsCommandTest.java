package foilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PatternsCommandTest {
  @TempDir Path folder;

  @Test
  void listsShippedAndOwnOneLineEach() throws IOException {
    Path own = Files.createDirectories(folder.resolve("patterns"));
    Files.writeString(own.resolve("a-broken-one.json"), "{");
    Files.writeString(own.resolve("notes.txt"), "not a pattern");
    CommandRun run = CommandRun.in(folder, "patterns");
    assertEquals(0, run.code(), run.err());
    List<String> lines = run.out().lines().toList();
    assertTrue(
        lines.get(0).matches("a-broken-one +own +has a problem; check it by its name"),
        lines.get(0));
    for (int i = 1; i < lines.size(); i++) {
      assertTrue(lines.get(i).matches("[a-z0-9-]+ +shipped +\\S.* sections?(: .+)?"), lines.get(i));
    }
    assertTrue(lines.size() > 3, run.out());
  }

  @Test
  void aCopyOfAShippedPatternIsStillTheShippedOne() throws IOException {
    Path own = Files.createDirectories(folder.resolve("patterns"));
    String text = Files.readString(Path.of("patterns/dark-rim.json"));
    Files.writeString(own.resolve("dark-rim.json"), text);
    assertTrue(listed().matches("(?s).*\\bdark-rim +shipped .*"), listed());
    Files.writeString(own.resolve("dark-rim.json"), text + " ");
    assertTrue(listed().matches("(?s).*\\bdark-rim +own .*"), listed());
  }

  private String listed() {
    return CommandRun.in(folder, "patterns").out();
  }
}
