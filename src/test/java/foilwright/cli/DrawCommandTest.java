package foilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The commands that draw and mark. */
class DrawCommandTest {
  private static final String ATTEMPT =
      "{ \"format\": \"foilwright attempt 1\", \"learner\": \"learner-04\", \"foils\": ["
          + " { \"foil\": %d, \"slice\": \"%s\" } ] }";

  @TempDir Path folder;

  private CommandRun run(String... words) {
    return CommandRun.in(folder, words);
  }

  @Test
  void namedSheetsBecomeFiles() throws IOException {
    CommandRun run =
        run(
            "draw",
            "fringe-veil",
            "--guest",
            "guest-07",
            "--sheets",
            "steps,blank",
            "--format",
            "png",
            "--grey");
    assertEquals(0, run.code(), run::err);
    for (String sheet : List.of("steps", "blank")) {
      byte[] png =
          Files.readAllBytes(folder.resolve("output/fringe-veil-guest-07-" + sheet + ".png"));
      assertEquals("PNG", new String(png, 1, 3, StandardCharsets.US_ASCII));
    }
  }

  @Test
  void allSheetsBecomeOneBook() throws IOException {
    CommandRun run = run("draw", "fringe-veil", "--guest", "guest-07", "--all");
    assertEquals(0, run.code(), run::err);
    byte[] pdf = Files.readAllBytes(folder.resolve("output/fringe-veil-guest-07-book.pdf"));
    assertEquals("%PDF", new String(pdf, 0, 4, StandardCharsets.US_ASCII));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "draw fringe-veil --sheets maps",
        "draw fringe-veil --all --sheets map",
        "draw fringe-veil --all --format svg",
        "draw fringe-veil --paper a3",
        "draw fringe-veil --format gif",
        "mark fringe-veil --value 3"
      })
  void whatIsNotThereIsNamed(String words) {
    CommandRun run = run(words.split(" "));
    assertEquals(2, run.code(), run::err);
    assertTrue(run.err().length() > 20, run::err);
  }

  @Test
  void measuredWorkIsMarked() throws IOException {
    Path attempt = folder.resolve("attempt.json");
    Files.writeString(attempt, ATTEMPT.formatted(1, "30 mm"));
    CommandRun run = run("mark", "fringe-veil", "--measured", "attempt.json");
    assertEquals(0, run.code(), run::err);
    assertTrue(run.out().contains("learner-04: 0 of 1 values pass"), run::out);
    assertTrue(run.out().contains("foil 1: slice 30.0"), run::out);
  }

  @Test
  void aFoilThatThePlanDoesNotHaveIsToldWithItsPlace() throws IOException {
    Files.writeString(folder.resolve("attempt.json"), ATTEMPT.formatted(400, "3 mm"));
    CommandRun run = run("mark", "fringe-veil", "--measured", "attempt.json");
    assertEquals(1, run.code());
    assertTrue(run.err().contains("line 1"), run::err);
    assertTrue(run.err().contains("no foil 400"), run::err);
  }

  @Test
  void aMissingFileIsToldApart() {
    assertEquals(3, run("mark", "fringe-veil", "--measured", "nowhere.json").code());
  }
}
