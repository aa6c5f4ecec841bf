package foilwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.units.Minutes;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class FoilTimesTest {
  private static void assertSeconds(String text, double... seconds) {
    List<Minutes> expected = Arrays.stream(seconds).mapToObj(Minutes::ofSeconds).toList();
    List<Minutes> times = FoilTimes.parse(text);
    assertEquals(expected.size(), times.size(), text);
    for (int i = 0; i < seconds.length; i++) {
      assertEquals(seconds[i], times.get(i).toSeconds(), 1e-9, text);
    }
  }

  private static void assertRefused(String text, String words) {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> FoilTimes.parse(text), text);
    assertTrue(refused.getMessage().contains(words), refused.getMessage());
  }

  @Test
  void theUnitIsWrittenOnceOrEachTime() {
    assertSeconds("1.1 min, 1.3 min, 54 s", 66, 78, 54);
    assertSeconds("1.1,1.3,0.9 min", 66, 78, 54);
    assertSeconds("1.1, 1.3, 0.9min", 66, 78, 54);
    assertSeconds("65,70,80 s", 65, 70, 80);
    assertSeconds("1.5 min", 90);
  }

  @Test
  void aFileHasLinesAndAHeadline() {
    assertSeconds("min\n1.1\n1.3\n\n0.9\n", 66, 78, 54);
    assertSeconds("\uFEFFs\r\n65\r\n70\r\n", 65, 70);
    assertSeconds("1.1,\n1.3 min,\n", 66, 78);
    assertSeconds("1.1, 1.3\n1, 0.9 min\n", 66, 78, 60, 54);
  }

  @Test
  void aNumberWithoutAnyUnitIsRefused() {
    assertRefused("1.1, 1.3", "\"1.1\" has no unit");
    assertRefused("1.1, 1.3 min, 70 s", "others have several");
  }

  @Test
  void aDecimalCommaIsNotTakenForTwoTimes() {
    assertRefused("1,3 min", "write 1.3, or a blank");
    assertRefused("min\n1,3\n1,1\n", "write 1.3, or a blank");
    assertRefused("1,3, 1,1, 0,9 min", "write 1.3, or a blank");
  }

  @Test
  void whatIsNoTimeIsRefused() {
    assertRefused("", "there is no time");
    assertRefused("min", "there is no time");
    assertRefused("1.1 parsecs", "\"parsecs\" is not a unit");
    assertRefused("parsecs\n1", "\"parsecs\" is not a unit");
    assertRefused("1:05", "\"1:05\" is not a time");
    assertRefused("1.1.1 min", "is not a time");
    assertRefused("x".repeat(100) + "\u0000 1", "...");
  }
}
