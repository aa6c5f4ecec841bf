package foilwright.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.document.Documents;
import foilwright.fall.NaturalFall;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.Region;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.pattern.Extent;
import foilwright.pattern.KeptCover;
import foilwright.pattern.Pattern;
import foilwright.pattern.Section;
import foilwright.units.Length;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * A pattern that is laid again after a change lies just as if it had been laid for the first time.
 */
class PlacementAgainTest {
  private static final Head HEAD = Head.usual(HeadKind.WOMAN);
  private static final HairOnHead HAIR =
      HairOnHead.of(HEAD, HairProfile.usual(Length.ofMillimetres(200)));
  private static final DirectionField FALL = NaturalFall.over(HEAD);

  private static final KeptCover COVER =
      new KeptCover(Optional.of(Extent.ofMillimetres(7)), Optional.empty(), Optional.empty());

  private static List<Pattern> shipped() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("patterns"))) {
      return files
          .filter(f -> f.toString().endsWith(".json"))
          .sorted()
          .map(f -> Documents.readPattern(f).value().orElseThrow())
          .toList();
    }
  }

  private static Placer.Laid lay(Pattern pattern, Placer.Laid before) {
    return Placer.place(pattern, HAIR, PlacingSettings.USUAL, FALL, before);
  }

  /** All that can be said of a placement, regions by their areas and borders. */
  private static List<Object> told(Placement placement) {
    List<Object> all = new ArrayList<>();
    for (PlacedFoil f : placement.foils()) {
      all.add(
          List.of(
              f.number(),
              f.section(),
              f.sectionIndex(),
              f.row(),
              f.inRow(),
              f.side(),
              f.zone(),
              f.mix()));
      all.add(List.of(f.area(), f.region().outline(), f.parting(), f.middle(), f.lowerEnd()));
      all.add(List.of(f.width(), f.sliceAtStart(), f.sliceAtEnd(), f.backgroundBefore()));
      all.add(List.of(f.hairs(), f.pickedHairs(), f.hair(), f.startFind(), f.endFind()));
    }
    for (PlacedSection s : placement.sections()) {
      all.add(
          List.of(
              s.index(),
              s.name(),
              s.foils().size(),
              s.partings(),
              s.figures(),
              s.remainderWords(),
              s.untouched().area()));
    }
    all.add(placement.problems());
    return all;
  }

  private static Pattern with(Pattern pattern, int index, Section section) {
    List<Section> sections = new ArrayList<>(pattern.sections());
    sections.set(index, section);
    return new Pattern(pattern.title(), pattern.summary(), pattern.order(), sections);
  }

  @Test
  void everyChangeLiesAsIfLaidForTheFirstTime() throws IOException {
    int takenOver = 0;
    for (Pattern pattern : shipped()) {
      Placer.Laid before = lay(pattern, Placer.Laid.NOTHING);
      for (int i = 0; i < pattern.sections().size(); i++) {
        Section section = pattern.sections().get(i);
        Pattern changed = with(pattern, i, section.withKeptCover(COVER));
        Placer.Laid again = lay(changed, before);
        assertEquals(
            told(lay(changed, Placer.Laid.NOTHING).placement()),
            told(again.placement()),
            pattern.title() + ", " + section.name());
        List<Region> known = before.placement().foils().stream().map(PlacedFoil::region).toList();
        takenOver +=
            (int)
                again.placement().foils().stream()
                    .filter(f -> known.stream().anyMatch(r -> r == f.region()))
                    .count();
        before = again;
      }
      List<Section> fewer = pattern.sections().subList(0, pattern.sections().size() - 1);
      if (!fewer.isEmpty() && fewer.size() < pattern.sections().size()) {
        Pattern shorter = new Pattern(pattern.title(), pattern.summary(), pattern.order(), fewer);
        assertEquals(
            told(lay(shorter, Placer.Laid.NOTHING).placement()),
            told(lay(shorter, before).placement()));
      }
    }
    assertTrue(takenOver > 100, "only " + takenOver + " foils were taken over");
  }

  @Test
  void nothingIsTakenOverFromOtherHair() throws IOException {
    Pattern pattern = shipped().get(0);
    Placer.Laid before = lay(pattern, Placer.Laid.NOTHING);
    PlacedFoil first = before.placement().foils().get(0);
    assertSame(first.region(), lay(pattern, before).placement().foils().get(0).region());
    HairOnHead other = HairOnHead.of(HEAD, HairProfile.usual(Length.ofMillimetres(100)));
    Placement there = Placer.place(pattern, other, PlacingSettings.USUAL, FALL, before).placement();
    assertFalse(first.region() == there.foils().get(0).region());
    assertEquals(100, there.foils().get(0).hairLength().toMillimetres(), 1e-6);
  }
}
