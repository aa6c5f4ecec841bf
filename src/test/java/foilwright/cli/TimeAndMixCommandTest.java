package foilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.service.Caution;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TimeAndMixCommandTest {
  @TempDir Path folder;

  private CommandRun run(String... args) {
    return CommandRun.in(folder, args);
  }

  private static double number(String form, String text) {
    Matcher matcher = Pattern.compile(form).matcher(text);
    assertTrue(matcher.find(), form + " is not in:\n" + text);
    return Double.parseDouble(matcher.group(1));
  }

  @Test
  void timeTellsEveryFoilsMinutesAndDrawsTheTimeline() {
    CommandRun run = run("time", "v-back", "--guest", "guest-07", "--pace", "stylist");
    assertEquals(0, run.code(), run::err);
    List<String> rows = run.out().lines().filter(line -> line.matches("  \\d+ .* min")).toList();
    int foils = 0;
    for (String row : rows) {
      Matcher times =
          Pattern.compile(" ([\\d.]+) to ([\\d.]+) +([\\d.]+) +([\\d.]+) +([\\d.]+) +(\\d+) min$")
              .matcher(row);
      if (!times.find()) {
        continue;
      }
      foils++;
      double in = Double.parseDouble(times.group(2));
      double outBy = Double.parseDouble(times.group(4));
      double out = Double.parseDouble(times.group(5));
      assertTrue(Double.parseDouble(times.group(3)) <= out + 0.06, row);
      assertTrue(out <= outBy + 0.06, row);
      assertTrue(in < out, row);
    }
    assertEquals(36, foils, run.out());
    assertTrue(Files.exists(folder.resolve("output/v-back-guest-07-timeline.svg")));
    for (Caution caution : Caution.values()) {
      assertTrue(run.out().contains(caution.text()), caution.text());
    }
  }

  @Test
  void clockTimesWhenTheHourIsTold() {
    CommandRun run = run("time", "v-back", "--guest", "guest-07", "--at", "09:30");
    assertEquals(0, run.code(), run::err);
    assertTrue(run.out().contains("09:30 to "), run.out());
    assertEquals(2, run("time", "v-back", "--at", "half past nine").code());
  }

  @Test
  void mixWeighsWhatTheFoilsTakeAndTheWaste() {
    CommandRun run = run("mix", "dark-rim", "--guest", "guest-07");
    assertEquals(0, run.code(), run::err);
    double taken = number("foils take ([\\d.]+) g", run.out());
    double product = number("([\\d.]+) g product", run.out());
    double developer = number("\\+ ([\\d.]+) g developer ", run.out());
    assertEquals(2, developer / product, 1e-9, "1 : 2");
    assertTrue(product + developer >= 1.12 * taken - 0.06);
    assertTrue(product + developer <= 1.12 * taken + 3 + 0.06, "the scale's step of 1 g");
    assertTrue(run.out().contains("Foil to cut"));
    assertTrue(Files.exists(folder.resolve("output/dark-rim-guest-07-mix.svg")));
    for (Caution caution : Caution.values()) {
      assertTrue(run.out().contains(caution.text()), caution.text());
    }
  }

  @Test
  void everyWayOutIsPlannedOrSaidToBeImpossible() {
    for (String way : List.of("best", "while-placing", "waves", "two-visits")) {
      CommandRun run = run("plan", "full-head-fine-weave", "--guest", "guest-07", "--out-by", way);
      assertEquals(0, run.code(), run::err);
      assertTrue(run.out().contains("\nChair       "), run.out());
      assertFalse(run.out().contains("no plan for the visit"), way);
    }
    CommandRun together =
        run("plan", "full-head-fine-weave", "--guest", "guest-07", "--out-by", "together");
    assertTrue(together.out().contains("no plan for the visit"), together.out());
    assertTrue(together.out().contains("min over its time"), together.out());
    assertTrue(together.out().contains("\nOr else     In "), together.out());
    assertEquals(2, run("plan", "v-back", "--out-by", "magic").code());
  }

  /** What the limits leave can be kept as a pattern, and planned again it is what was left. */
  @Test
  void limitsTrimAndTheRestCanBeKept() {
    CommandRun run =
        run(
            "plan",
            "full-head-fine-weave",
            "--guest",
            "guest-07",
            "--within",
            "90 min",
            "--at-most",
            "40",
            "--save-as",
            "patterns/shorter.json");
    assertEquals(0, run.code(), run::err);
    double left = number("\nFoils +(\\d+) ", run.out());
    assertTrue(left <= 40 && left > 20, "left " + left);
    assertEquals(80 - left, number("Given up +(\\d+) of 80 foils", run.out()));
    CommandRun again = run("plan", "shorter", "--guest", "guest-07");
    assertEquals(left, number("\nFoils +(\\d+) ", again.out()));
    assertEquals(2, run("plan", "v-back", "--within", "90").code());
    assertEquals(2, run("plan", "v-back", "--at-most", "none").code());
    assertEquals(2, run("plan", "v-back", "--save-as", "x.json").code());
    CommandRun short1 = run("plan", "v-back", "--guest", "guest-07", "--within", "5 min");
    assertTrue(short1.out().contains("not even one foil"), short1.out());
  }

  @Test
  void aBetterOrderIsNumberedAnew() {
    CommandRun run =
        run("plan", "diagonals-back", "--guest", "guest-07", "--order", "walks,hairline");
    assertEquals(0, run.code(), run::err);
    double walks = number("walks round the chair: (\\d+) instead", run.out());
    double before = number("walks round the chair: \\d+ instead of (\\d+)", run.out());
    assertTrue(walks <= before);
    assertEquals(2, run("plan", "v-back", "--order", "speed").code());
  }

  @Test
  void theCalendarHoldsTheVisit() throws IOException {
    CommandRun run =
        run(
            "plan",
            "v-back",
            "--guest",
            "guest-07",
            "--ics",
            "visit.ics",
            "--on",
            "2026-05-04",
            "--at",
            "14:00");
    assertEquals(0, run.code(), run::err);
    String text = Files.readString(folder.resolve("visit.ics"), StandardCharsets.UTF_8);
    assertTrue(text.startsWith("BEGIN:VCALENDAR\r\n"), text);
    assertTrue(text.contains("DTSTART:20260504T140000\r\n"), text);
    String unfolded = text.replace("\r\n ", "");
    assertTrue(unfolded.contains(Caution.BURNING.text()), unfolded);
    assertFalse(unfolded.contains("MISSING on file"), unfolded);
    CommandRun unknown =
        run("plan", "v-back", "--ics", "unknown.ics", "--on", "2026-05-04", "--at", "14:00");
    assertEquals(0, unknown.code(), unknown::err);
    String other = Files.readString(folder.resolve("unknown.ics")).replace("\r\n ", "");
    assertTrue(other.contains("MISSING on file: allergy alert test"), other);
    assertEquals(2, run("plan", "v-back", "--ics", "visit.ics").code());
  }

  @Test
  void theWholePlanIsTheSameJsonFromEveryCommand() {
    String[] options = {"v-back", "--guest", "guest-07", "--json"};
    String plan = run("plan", options[0], options[1], options[2], options[3]).out();
    assertEquals(plan, run("time", options[0], options[1], options[2], options[3]).out());
    assertEquals(plan, run("mix", options[0], options[1], options[2], options[3]).out());
    assertTrue(plan.contains("\"firstDueMinutes\""), plan.substring(0, 200));
  }
}
