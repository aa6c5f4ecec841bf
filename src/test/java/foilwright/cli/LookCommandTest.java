package foilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LookCommandTest {
  @TempDir Path folder;

  private CommandRun run(String... args) {
    return CommandRun.in(folder, args);
  }

  @Test
  void tellsAndDrawsALook() throws IOException {
    CommandRun run =
        run(
            "look",
            "dark-rim",
            "--guest",
            "guest-03",
            "--hairs",
            "4000",
            "--size",
            "140",
            "--png",
            "--out",
            "drawn");
    assertEquals(0, run.code(), run::err);
    assertTrue(run.out().contains("guest-03, part centre, worn natural"), run.out());
    assertTrue(run.out().contains("What to know"), run.out());
    assertTrue(run.out().contains("no promise of a result"), run.out());
    String svg = Files.readString(folder.resolve("drawn/dark-rim-guest-03-look.svg"));
    assertEquals(12, svg.split("<image ", -1).length - 1);
    BufferedImage png = ImageIO.read(folder.resolve("drawn/dark-rim-guest-03-look.png").toFile());
    assertTrue(png.getWidth() > 2000, "width " + png.getWidth());
  }

  @Test
  void tellsFiguresForOtherPrograms() {
    CommandRun run =
        run(
            "look",
            "v-back",
            "--hairs",
            "2000",
            "--size",
            "100",
            "--months",
            "0",
            "--json",
            "--style",
            "tied-up");
    assertEquals(0, run.code(), run::err);
    assertTrue(run.out().startsWith("{"), run.out());
    assertTrue(run.out().contains("\"format\": \"foilwright look 1\""), run.out());
    assertTrue(run.out().contains("\"foilsByWorth\""), run.out());
    assertTrue(!run.out().contains("\"later\""), run.out());
  }

  @Test
  void comparesTwoPatternsOnOneGuest() {
    CommandRun run =
        run(
            "compare",
            "dark-rim",
            "v-back",
            "--guest",
            "guest-30",
            "--hairs",
            "2000",
            "--size",
            "100");
    assertEquals(0, run.code(), run::err);
    assertTrue(run.out().contains("Bright inside, dark rim beside V back, guest-30"), run.out());
    assertTrue(run.out().contains("difference"), run.out());
    assertTrue(run.err().contains("-beside-"), run.err());
  }

  @Test
  void refusesWhatItDoesNotKnow() {
    assertEquals(2, run("look", "v-back", "--style", "upside-down").code());
    assertEquals(2, run("look", "v-back", "--hairs", "7").code());
    assertEquals(2, run("look", "v-back", "--months", "many").code());
    assertEquals(3, run("look", "no-such-pattern").code());
  }
}
