package foilwright.service.visit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Zone;
import foilwright.fall.NaturalFall;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.pattern.Background;
import foilwright.pattern.Extent;
import foilwright.pattern.Fill;
import foilwright.pattern.Pattern;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.TravelFrom;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
import foilwright.problem.Problem;
import foilwright.units.Length;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** New foils over old ones on the usual women's head, two months apart. */
class RegrowthIdentityTest {
  private static final Head HEAD = Head.usual(HeadKind.WOMAN);
  private static final Regrowth REGROWTH =
      new Regrowth(LocalDate.of(2026, 1, 1), LocalDate.of(2026, 3, 2), Growth.USUAL);
  private static final Set<String> A = Set.of("A");

  private static Section rows(
      double offset, double slice, double background, Zone first, Zone... more) {
    return Section.of(
        "rows " + first.words(),
        RegionSpec.ofZones(first, more).withInsetFromHairline(Extent.ofMillimetres(20)),
        new SectionShape.Horizontal(),
        TravelFrom.BOTTOM,
        Fill.of(Run.ofMillimetres(slice), new Background.Even(Run.ofMillimetres(background)))
            .withOffset(Extent.ofMillimetres(offset)));
  }

  private static Placement place(Head head, double hairMm, Section... sections) {
    return Placer.place(
        Pattern.of("test", sections),
        head,
        HairProfile.usual(Length.ofMillimetres(hairMm)),
        PlacingSettings.USUAL,
        NaturalFall.over(head));
  }

  private static Placement back(double offset, double slice, double background) {
    return place(
        HEAD, 250, rows(offset, slice, background, Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT));
  }

  @Test
  void theSameFoilsLieOverThemselves() {
    Placement placement = back(0, 4, 12);
    Regrowth.Overlaps found = REGROWTH.overlaps(placement, A, placement, A);
    assertEquals(placement.foils().size(), found.overlaps().size());
    for (Regrowth.Overlap overlap : found.overlaps()) {
      assertEquals(1, overlap.share().toFraction(), 1e-9);
      assertEquals(overlap.foil().number(), overlap.over().get(0).old().number());
      assertEquals("21 mm (16 to 26)", overlap.oldLightener().orElseThrow().words());
    }
  }

  /** Thin level slices inside thick ones: the thin ones are all that both share. */
  @Test
  void aSliceInsideAnOldOneLiesOverItAltogether() {
    Placement thick = back(0, 4, 12);
    Placement thin = back(1, 2, 14);
    Regrowth.Overlaps inside = REGROWTH.overlaps(thick, A, thin, A);
    assertEquals(thin.foils().size(), inside.overlaps().size());
    inside.overlaps().forEach(o -> assertEquals(1, o.share().toFraction(), 1e-9));
    Regrowth.Overlaps around = REGROWTH.overlaps(thin, A, thick, A);
    double whole = thin.foils().stream().mapToDouble(RegrowthIdentityTest::area).sum();
    assertEquals(whole, shared(inside), 1e-9 * whole);
    assertEquals(whole, shared(around), 1e-9 * whole);
  }

  /** What the new share with the old, the old share with the new. */
  @Test
  void sharedAreaIsTheSameBothWays() {
    Placement one = back(0, 5, 9);
    Placement other = back(4, 3, 6);
    double there = shared(REGROWTH.overlaps(one, A, other, A));
    double back = shared(REGROWTH.overlaps(other, A, one, A));
    assertTrue(there > 100, there + " mm2");
    // Foils below the least share are not told on one side or the other.
    assertEquals(1, there / back, 0.01);
  }

  private static double shared(Regrowth.Overlaps overlaps) {
    return overlaps.overlaps().stream()
        .flatMap(o -> o.over().stream().map(v -> area(o.foil()) * v.share().toFraction()))
        .mapToDouble(Double::doubleValue)
        .sum();
  }

  private static double area(PlacedFoil foil) {
    return foil.area().toSquareMillimetres();
  }

  @Test
  void foilsInTheOldBackgroundLieOverNothing() {
    Regrowth.Overlaps found = REGROWTH.overlaps(back(0, 4, 12), A, back(7, 4, 12), A);
    assertEquals(new Regrowth.Overlaps(List.of(), List.of()), found);
  }

  @Test
  void aFewAreToldOneByOne() {
    Section old = rows(0, 4, 12, Zone.BACK_UPPER_LEFT);
    Section few = old.withLeaveOut(List.of());
    Placement before = place(HEAD, 250, old);
    Placement now =
        place(
            HEAD,
            250,
            Section.of("one", few.region(), few.shape(), few.from(), few.fill().withSlices(1)));
    List<Problem> cautions = REGROWTH.overlaps(before, A, now, A).problems();
    assertEquals(now.foils().size(), cautions.size());
    assertEquals(
        "foil 1 lies 100 % over old foil 1; old lightener begins 21 mm (16 to 26) from the scalp",
        cautions.get(0).message());
    assertTrue(cautions.get(0).cure().startsWith("keep new product off it"));
    assertTrue(cautions.get(0).place().isPresent());
  }

  @Test
  void manyAreToldBySection() {
    Section upper = rows(0, 4, 12, Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT);
    Section crown = rows(0, 4, 12, Zone.CROWN);
    Placement placement = place(HEAD, 250, upper, crown);
    int first = placement.sections().get(0).foils().size();
    int all = placement.foils().size();
    List<Problem> cautions = REGROWTH.overlaps(placement, A, placement, A).problems();
    assertEquals(
        List.of(
            "foils 1 to " + first + " lie 100 % over old foils 1 to " + first,
            "foils "
                + (first + 1)
                + " to "
                + all
                + " lie 100 % over old foils "
                + (first + 1)
                + " to "
                + all),
        cautions.stream().map(p -> p.message().replaceAll(";.*", "")).toList());
  }

  /** Old product that began away from the scalp has grown out as far, and short hair lost it. */
  @Test
  void whereOldLightenerBegins() {
    Section section = rows(0, 4, 12, Zone.CROWN);
    Section away =
        Section.of(
            section.name(),
            section.region(),
            section.shape(),
            section.from(),
            startingAt(section.fill(), Length.ofMillimetres(10)));
    Placement before = place(HEAD, 250, away);
    Placement now = place(HEAD, 250, section);
    Growth.Grown begins =
        REGROWTH.overlaps(before, A, now, A).overlaps().get(0).oldLightener().orElseThrow();
    assertEquals(
        REGROWTH.grown().mean().toMillimetres() + 10, begins.mean().toMillimetres(), 1e-12);
    Placement cropped = place(HEAD, 15, section);
    Regrowth.Overlaps gone = REGROWTH.overlaps(before, A, cropped, A);
    assertEquals(Optional.empty(), gone.overlaps().get(0).oldLightener());
    assertEquals(List.of(), gone.problems());
  }

  private static Fill startingAt(Fill fill, Length fromScalp) {
    return new Fill(
        fill.slices(),
        fill.offset(),
        fill.slice(),
        fill.background(),
        fill.remainder(),
        fill.picks(),
        fill.foils(),
        fill.shortEnds(),
        fill.mix(),
        fromScalp);
  }

  @Test
  void onlyLightenerOverLightenerIsACaution() {
    Placement placement = place(HEAD, 250, rows(0, 4, 12, Zone.CROWN));
    Regrowth.Overlaps lowlights = REGROWTH.overlaps(placement, Set.of("B"), placement, A);
    assertEquals(placement.foils().size(), lowlights.overlaps().size());
    assertTrue(lowlights.overlaps().stream().allMatch(o -> o.oldLightener().isEmpty()));
    assertEquals(List.of(), lowlights.problems());
    Regrowth.Overlaps now = REGROWTH.overlaps(placement, A, placement, Set.of("B"));
    assertTrue(now.overlaps().stream().allMatch(o -> o.oldLightener().isPresent()));
    assertEquals(List.of(), now.problems());
  }

  @Test
  void anotherHeadIsRefused() {
    Placement here = place(HEAD, 250, rows(0, 4, 12, Zone.CROWN));
    Placement there = place(Head.usual(HeadKind.MAN), 250, rows(0, 4, 12, Zone.CROWN));
    assertThrows(IllegalArgumentException.class, () -> REGROWTH.overlaps(here, A, there, A));
  }
}
