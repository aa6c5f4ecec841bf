package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class NearestTest {
  @Test
  void distancesInClosedForm() {
    assertEquals(0, Nearest.distance("slice", "slice"));
    assertEquals(1, Nearest.distance("slice", "slices"));
    assertEquals(1, Nearest.distance("slcie", "slice"));
    assertEquals(5, Nearest.distance("", "slice"));
    assertEquals(3, Nearest.distance("kitten", "sitting"));
  }

  @Test
  void onlyNearWordsAreOffered() {
    List<String> known = List.of("slice", "slices", "background", "mix");
    assertEquals(Optional.of("slice"), Nearest.find("Slice", known));
    assertEquals(Optional.of("background"), Nearest.find("backgrund", known));
    assertEquals(Optional.empty(), Nearest.find("zebra", known));
    assertEquals(Optional.empty(), Nearest.find("", known));
    assertEquals(Optional.empty(), Nearest.find("x".repeat(100_000), known));
  }
}
