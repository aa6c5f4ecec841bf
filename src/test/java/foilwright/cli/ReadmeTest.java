package foilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs every command of the README, and holds its map to what the first of them draws. */
class ReadmeTest {
  private static final Path README = Path.of("README.md");
  private static final Path MAP = Path.of("src/test/resources/golden/map-dark-rim-guest-07.svg");
  private static final Pattern COMMAND =
      Pattern.compile("java -jar target/foilwright\\.jar ([^`\\n]+)");

  @TempDir Path folder;

  @Test
  void everyCommandRuns() throws IOException {
    copyPatterns();
    List<String> commands = commands();
    assertTrue(commands.size() >= 8, commands.toString());
    for (String command : commands) {
      if (command.startsWith("serve")) {
        // It runs until it is stopped; the tests of the page start it on their own.
        continue;
      }
      CommandRun run = CommandRun.in(folder, words(command));
      assertEquals(0, run.code(), command + "\n" + run.err());
      assertTrue(run.out().length() > 100 || run.err().contains("wrote "), command);
    }
  }

  /**
   * When the sheet is meant to change, look at it, then rewrite the file with {@code mvn test
   * -Dtest=ReadmeTest -Dgolden.rewrite=true}.
   */
  @Test
  void theMapIsTheOneThatTheFirstCommandDraws() throws IOException {
    copyPatterns();
    String first = commands().get(0);
    assertEquals(0, CommandRun.in(folder, words(first)).code());
    Path drawn = folder.resolve("output/dark-rim-guest-07-map.svg");
    if (Boolean.getBoolean("golden.rewrite")) {
      Files.write(MAP, Files.readAllBytes(drawn));
    }
    assertEquals(Files.readString(MAP), Files.readString(drawn));
    assertTrue(Files.readString(README).contains(MAP.toString().replace('\\', '/')));
  }

  @Test
  void theSectionShownCanBeUsed() throws IOException {
    String readme = Files.readString(README);
    int from = readme.indexOf("```json") + 7;
    String section = readme.substring(from, readme.indexOf("```", from));
    Path file = folder.resolve("own.json");
    Files.writeString(
        file,
        "{ \"format\": \"foilwright pattern 1\", \"title\": \"Own\", \"sections\": ["
            + section
            + "] }");
    CommandRun run = CommandRun.in(folder, "check", "own.json");
    assertEquals(0, run.code(), run::err);
    assertTrue(run.out().contains("nothing wrong"), run.out());
  }

  private void copyPatterns() throws IOException {
    Path copies = Files.createDirectories(folder.resolve("patterns"));
    try (Stream<Path> files = Files.list(Path.of("patterns"))) {
      for (Path file : (Iterable<Path>) files::iterator) {
        Files.copy(file, copies.resolve(file.getFileName()));
      }
    }
  }

  /** The words of a command line; what stands in quotes is one word. */
  private static String[] words(String command) {
    List<String> words = new ArrayList<>();
    Matcher matcher = Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(command);
    while (matcher.find()) {
      words.add(matcher.group(1) == null ? matcher.group(2) : matcher.group(1));
    }
    return words.toArray(String[]::new);
  }

  private static List<String> commands() throws IOException {
    List<String> commands = new ArrayList<>();
    Matcher matcher = COMMAND.matcher(Files.readString(README));
    while (matcher.find()) {
      commands.add(matcher.group(1).strip());
    }
    return commands;
  }
}
