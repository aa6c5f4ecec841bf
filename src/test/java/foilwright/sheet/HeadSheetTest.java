package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.Zone;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.Tape;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class HeadSheetTest {
  private static String words(Scene scene) {
    return scene.marks().stream()
        .flatMap(m -> m.parts().stream())
        .filter(Part.Lettering.class::isInstance)
        .map(p -> ((Part.Lettering) p).text())
        .collect(Collectors.joining("\n"));
  }

  @ParameterizedTest
  @EnumSource
  void namesEveryZoneTapeAndLandmark(HeadKind kind) {
    Head head = SampleMaps.head(kind);
    Scene scene = HeadSheet.build(head, "Guest-12", "", Paper.A4);
    for (Zone zone : Zone.values()) {
      String name = HeadSheet.zoneName(zone);
      assertTrue(
          scene.marks().stream().anyMatch(m -> m.id().endsWith("-" + name)),
          zone + " is named in no picture");
    }
    String words = words(scene);
    for (Tape tape : Tape.values()) {
      long mm = Math.round(head.reading(tape).toMillimetres());
      assertTrue(words.contains(": " + mm + " mm"), tape + " has no label");
      assertTrue(words.contains(mm + " mm, assumed"), tape + " was not measured");
    }
    for (Landmark landmark : Landmark.values()) {
      assertTrue(
          scene.marks().stream().anyMatch(m -> m.title().endsWith(", " + landmark.words())),
          landmark + " is marked in no picture");
    }
  }

  @Test
  void labelsDoNotOverlap() {
    Scene scene =
        HeadSheet.build(SampleMaps.head(HeadKind.WOMAN), "Guest-12", "part left", Paper.A4);
    List<Part> lines = new ArrayList<>();
    for (Mark mark : scene.marks()) {
      mark.parts().stream().filter(Part.Lettering.class::isInstance).forEach(lines::add);
    }
    for (int i = 0; i < lines.size(); i++) {
      for (int j = i + 1; j < lines.size(); j++) {
        assertFalse(
            lines.get(i).bounds().overlaps(lines.get(j).bounds()),
            lines.get(i) + " over " + lines.get(j));
      }
    }
    assertEquals(1, scene.marks().stream().filter(m -> m.role() == Role.SCALE_BOX).count());
  }

  @ParameterizedTest
  @EnumSource
  void tapeLinesAreAsLongAsTheTapeReads(Tape tape) {
    Head head = SampleMaps.head(HeadKind.MAN);
    double read = head.reading(tape).toMillimetres();
    double drawn = TapeLines.of(head, tape).length();
    // A pulled tape bridges hollows: the line on the skin may be longer, never by much.
    assertEquals(read, drawn, tape == Tape.AROUND ? 0.02 * read : 0.005 * read);
  }
}
