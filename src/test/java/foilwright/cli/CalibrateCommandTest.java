package foilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CalibrateCommandTest {
  private static final String HOUSE = "shared/house/practice-room.json";

  @TempDir Path folder;

  /** The fine weave on guest-07. */
  private CommandRun run(String... options) {
    List<String> args =
        new ArrayList<>(List.of("calibrate", "full-head-fine-weave", "--guest", "guest-07"));
    args.addAll(List.of(options));
    return CommandRun.in(folder, args.toArray(String[]::new));
  }

  private void assertRefused(int code, String words, CommandRun run) {
    assertEquals(code, run.code(), run::err);
    assertEquals("", run.out());
    assertTrue(run.err().contains(words), run.err());
    assertFalse(run.err().contains("Exception"), run.err());
    assertFalse(Files.exists(folder.resolve(HOUSE)), "nothing is written after a refusal");
  }

  private static void assertSays(CommandRun run, String... words) {
    assertEquals(0, run.code(), run::err);
    for (String word : words) {
      assertTrue(run.out().replaceAll(" {2,}", "  ").contains(word), word + "\n" + run.out());
    }
  }

  @Test
  void showsWhatChangesBeforeAndNow() {
    CommandRun run =
        run("--mixed", "A 84 g, B 40g", "--left", "A 9 g", "--left", "b 16g", "--took", "80min");
    assertSays(
        run,
        "Full head, fine weave\nguest-07, practice room, ",
        "powder lightener, entry 1 (slot A)\n  A: 84 g mixed, 9 g left; 75 g used where ",
        "lowlight colour, entry 2 (slot B)\n  B: 40 g mixed, 16 g left; 24 g used where ",
        "  before  now\n",
        "  weighed back  0 times  once\n",
        "  factor  1.00  1.",
        "  film on a foil  0.90 g  0.",
        "  for a gram of hair  1.20 g  1.",
        "  this pattern's foils take  ",
        "  with 12 % of waste, about  ",
        "pace lead\n",
        " foils took 80 min where ",
        "  a foil here, on average  0.",
        "  placing this pattern  ",
        "kept in " + HOUSE + "; as it was before, it ships with the program",
        "--undo \"weigh-back A\", --undo \"weigh-back B\", --undo timing");
    assertTrue(CommandRun.in(folder, "check", "practice-room").out().contains("nothing wrong"));
  }

  @Test
  void singleFoilsCountTypedOrFromAFileAlike() throws IOException {
    Files.writeString(folder.resolve("watch.csv"), "min\n1.1\n1.3\n0.9\n");
    CommandRun typed = run("--minutes", "1.1,1.3,0.9 min", "--pace", "stylist");
    CommandRun file = run("--minutes-file", "watch.csv", "--pace", "stylist");
    String words = "pace stylist\n  3 foils, without setting sections, took 3.3 min where ";
    assertSays(typed, words, "  timed  0 times  once\n");
    assertSays(
        file,
        words,
        "  timed  once  2 times\n",
        "as it was before, in shared/house/.kept/practice-room.json/1.json");
  }

  @Test
  void undoSaysWhatItTookAway() throws IOException {
    run("--mixed", "A 84 g", "--left", "A 9 g", "--took", "80min", "--date", "2026-12-01");
    assertSays(
        run("--undo", "weigh-back"),
        "taken away again: 75 g used where ",
        ", 2026-12-01\n",
        "  weighed back  once  0 times\n",
        "  film on a foil  0.",
        " 0.90 g\n");
    CommandRun timing = CommandRun.in(folder, "calibrate", "v-back", "--undo", "timing");
    assertSays(timing, "taken away again: 80 min for ", "  timed  once  0 times\n");
    assertFalse(timing.out().contains("To take this away again"));
    assertEquals(1, run("--undo", "timing").code());
  }

  /** The mix command's bowls, added up. */
  @Test
  void mixedIsWhatThePlanMixes() {
    CommandRun mix = CommandRun.in(folder, "mix", "full-head-fine-weave", "--guest", "guest-07");
    double mixed = 0;
    Matcher bowl =
        Pattern.compile("\n  A\\d .*? ([\\d.]+) g product +\\+ ([\\d.]+) g developer")
            .matcher(mix.out());
    while (bowl.find()) {
      mixed += Double.parseDouble(bowl.group(1)) + Double.parseDouble(bowl.group(2));
    }
    assertTrue(mixed > 20, mix.out());
    assertSays(
        run("--left", "A 9 g"),
        String.format(Locale.ROOT, "A: %.0f g mixed, 9 g left; %.0f g used ", mixed, mixed - 9));
    assertTrue(
        run("--undo", "weigh-back").out().contains(", 2026-03-02\n"),
        "the day is today's unless another is told");
  }

  @Test
  void undoAsksWhichProduct() {
    run("--mixed", "A 84 g, B 40g", "--left", "A 9 g, B 16 g");
    CommandRun which = run("--undo", "weigh-back");
    assertEquals(1, which.code());
    assertTrue(which.err().contains("A (powder lightener, entry 1), B (lowlight"), which.err());
    assertSays(run("--undo", "weigh-back B"), "lowlight colour, entry 2 (slot B)");
    assertSays(run("--undo", "weigh-back"), "powder lightener, entry 1 (slot A)");
  }

  @Test
  void whatCannotBeIsRefused() {
    assertRefused(2, "90 g left of A of 84 g mixed", run("--mixed", "A 84 g", "--left", "A 90 g"));
    assertRefused(2, "say 0 g when nothing was left", run("--mixed", "A 84 g"));
    assertRefused(1, "has no foil with mix D", run("--mixed", "D 84 g", "--left", "D 9 g"));
    assertRefused(
        1, "only 0.3 to 3.0 can be taken in", run("--mixed", "A 840 g", "--left", "A 9 g"));
    assertRefused(1, "name the pace of the person", run("--took", "8 min"));
    assertRefused(1, "was never timed", run("--undo", "timing"));
    assertRefused(3, "no house called", run("--took", "80 min", "--house", "none"));
  }

  @Test
  void optionsThatCannotBeObeyedAreUsageErrors() {
    assertRefused(2, "nothing to calibrate", run());
    assertRefused(2, "nothing to calibrate", run("--date", "2026-12-01"));
    assertRefused(2, "--undo stands alone", run("--undo", "timing", "--took", "8min"));
    assertRefused(2, "weigh-back A", run("--undo", "everything"));
    assertRefused(2, "\"Q\" is not a mix slot", run("--undo", "weigh-back Q"));
    assertRefused(2, "\"Q\" is not a mix slot", run("--left", "Q 9 g"));
    assertRefused(2, "write for example --left \"A 9.5 g\"", run("--left", "9 g, A"));
    assertRefused(2, "A comes twice", run("--left", "A 9 g", "--left", "A 3 g"));
    assertRefused(2, "has no unit", run("--left", "A 9"));
    assertRefused(2, "--took: \"80\" has no unit", run("--took", "80"));
    assertRefused(2, "\"1.1\" has no unit", run("--minutes", "1.1,1.3,0.9"));
    assertRefused(2, "not a date", run("--took", "80min", "--date", "1.12.2026"));
    assertRefused(2, "one of the two", run("--took", "80min", "--minutes", "1 min"));
    assertRefused(
        2, "one of --minutes and", run("--minutes", "1 min", "--minutes-file", "watch.csv"));
    assertRefused(2, "there is no file \"watch.csv\"", run("--minutes-file", "watch.csv"));
    assertRefused(
        2, "Name the guest", CommandRun.in(folder, "calibrate", "v-back", "--took", "30 min"));
    assertRefused(2, "PATTERN", CommandRun.in(folder, "calibrate", "--took", "30 min"));
  }

  @Test
  void aHouseThatCannotBeWrittenIsAFailure() throws IOException {
    Files.writeString(folder.resolve("shared"), "a file");
    assertRefused(3, "shared", run("--took", "80 min"));
    assertEquals("a file", Files.readString(folder.resolve("shared")));
  }
}
