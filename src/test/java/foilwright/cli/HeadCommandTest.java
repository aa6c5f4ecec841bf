package foilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HeadCommandTest {
  @TempDir Path folder;

  private CommandRun run(String... args) {
    return CommandRun.in(folder, args);
  }

  @Test
  void tellsWhatWasMeasuredAndWhatIsAssumed() {
    CommandRun run = run("head", "--kind", "women", "--around", "56cm");
    assertEquals(0, run.code(), run::err);
    assertTrue(run.out().startsWith("Head, woman\n"), run.out());
    assertTrue(run.out().matches("(?s).*\n  around +560 mm +measured\n.*"), run.out());
    assertTrue(run.out().matches("(?s).*\n  ear to ear +\\d+ mm +assumed\n.*"), run.out());
    assertTrue(run.out().matches("(?s).*\n  scalp +\\d+\\.\\d cm2 +100.0 %\n.*"), run.out());
    assertTrue(run.out().matches("(?s).*\n  apex +0 mm +-?[0-9.]+ mm +[0-9.]+ mm\n.*"), run.out());
  }

  @Test
  void theGuestsTapesCountUnlessAnotherIsGiven() {
    assertTrue(run("head", "--guest", "guest-07").out().matches("(?s).*\n  around +561 mm .*"));
    assertTrue(
        run("head", "--guest", "guest-07", "--around", "22 in", "--inches")
            .out()
            .matches("(?s).*\n  around +559 mm \\(22.0 in\\) +measured.*"));
  }

  @Test
  void theHeadIsDrawn() throws IOException {
    run("head", "--guest", "guest-07", "--out", "mine");
    run("head", "--kind", "training-head", "--out", "mine");
    for (String name : new String[] {"guest-07", "training-head"}) {
      String svg = Files.readString(folder.resolve("mine/" + name + "-head.svg"));
      assertTrue(svg.startsWith("<svg id='"), name);
    }
  }

  @Test
  void kindsAreToldApart() {
    for (String kind : new String[] {"women", "men", "child", "training-head"}) {
      assertEquals(0, run("head", "--kind", kind).code(), kind);
    }
    assertTrue(run("head", "--kind", "men").out().startsWith("Head, man\n"));
  }

  @Test
  void whatCannotBeAHeadIsRefused() {
    CommandRun run = run("head", "--around", "560 mm", "--ear-to-ear", "500 mm");
    assertEquals(1, run.code());
    assertEquals("", run.out());
    assertTrue(run.err().contains("would be accepted"), run.err());
    for (String[] wrong :
        new String[][] {
          {"--around", "56"}, {"--around", "-3 cm"}, {"--kind", "horse"}, {"--part", "up"}
        }) {
      assertEquals(2, run("head", wrong[0], wrong[1]).code(), wrong[1]);
    }
    assertEquals(3, run("head", "--guest", "guest-99").code());
  }

  @Test
  void aTapeOutsideAllHeadsIsRefusedWithItsRange() {
    for (String around : new String[] {"1 mm", "299 mm", "2 m", "100 m", "0 mm"}) {
      CommandRun run = run("head", "--around", around);
      assertEquals(2, run.code(), around + ": " + run.out() + run.err());
      assertTrue(run.err().contains("is outside 300 mm to 800 mm"), run.err());
    }
  }
}
