package foilwright.sheet;

import foilwright.anatomy.PartSide;
import foilwright.document.Documents;
import foilwright.drawing.Scene;
import foilwright.fall.NaturalFall;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.PartSetting;
import foilwright.pattern.Pattern;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
import foilwright.units.Length;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Maps of the shipped patterns, for tests. */
final class SampleMaps {
  private static final Path PATTERNS = Path.of("patterns");

  private SampleMaps() {}

  static Head head(HeadKind kind) {
    return Head.usual(kind).withPart(PartSetting.of(PartSide.LEFT));
  }

  static List<Path> patterns() {
    try (Stream<Path> files = Files.list(PATTERNS)) {
      return files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Placement place(String pattern, Head head) {
    return place(PATTERNS.resolve(pattern + ".json"), head);
  }

  static Placement place(Path file, Head head) {
    Pattern pattern = Documents.readPattern(file).value().orElseThrow();
    return Placer.place(
        pattern,
        head,
        HairProfile.usual(Length.ofMillimetres(250)),
        PlacingSettings.USUAL,
        NaturalFall.over(head));
  }

  static MapNotes notes(Placement placement) {
    return new MapNotes(
        "Sample",
        "guest-07, part left",
        List.of(
            new MapNotes.Total("Foils", Integer.toString(placement.foils().size())),
            new MapNotes.Total("Placing", "44\u201358 min")),
        List.of(
            "The maker's instructions come first.",
            "Burning or stinging: take the foil out and rinse at once."));
  }

  static List<Scene> pages(String pattern, HeadKind kind) {
    Head head = head(kind);
    Placement placement = place(pattern, head);
    return MapSheet.build(DrawnHead.of(head), placement, notes(placement), Paper.A4);
  }
}
