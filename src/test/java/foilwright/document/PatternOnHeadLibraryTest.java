package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.fall.NaturalFall;
import foilwright.hair.HairProfile;
import foilwright.head.HairlineSettings;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import foilwright.pattern.Pattern;
import foilwright.placement.PlacedSection;
import foilwright.placement.Placement;
import foilwright.placement.PlacementValidator;
import foilwright.placement.Placer;
import foilwright.problem.Problem;
import foilwright.problem.Severity;
import foilwright.units.Length;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Every shipped pattern can be worked on every shipped guest, on a tiny head and on a huge one. */
class PatternOnHeadLibraryTest {
  private static final HouseDocument HOUSE =
      Documents.readHouse(Path.of("shared/house/practice-room.json")).value().orElseThrow();

  private static Pattern pattern(Path file) {
    return Documents.readPattern(file).value().orElseThrow();
  }

  private static Placement place(Pattern pattern, Head head, HairProfile hair) {
    return Placer.place(
        pattern, head, hair, HOUSE.placingSettings(HOUSE.foils().get(0)), NaturalFall.over(head));
  }

  private static List<String> errors(Placement placement) {
    return placement.problems().stream()
        .filter(p -> p.severity() == Severity.ERROR)
        .map(p -> p.code() + " " + p.path() + ": " + p.message())
        .toList();
  }

  @TestFactory
  Stream<DynamicTest> everyPatternOnEveryGuest() {
    List<DynamicTest> tests = new ArrayList<>();
    for (Path file : Shipped.in(Shipped.GUESTS)) {
      GuestDocument guest = Documents.readGuest(file).value().orElseThrow();
      tests.add(
          DynamicTest.dynamicTest(
              guest.number(),
              () ->
                  everyPatternOn(guest.fitHead(HOUSE.head()).head().orElseThrow(), guest.hair())));
    }
    return tests.stream();
  }

  /** 46 cm is a toddler's head, 68 cm larger than any hat. */
  @ParameterizedTest
  @CsvSource({"CHILD, 460", "MAN, 680"})
  void everyPatternOnTinyAndHugeHeads(HeadKind kind, double aroundMm) {
    Head head =
        Head.fit(
                kind,
                TapeMeasurements.NONE.withAround(Length.ofMillimetres(aroundMm)),
                HairlineSettings.USUAL,
                PartSetting.of(PartSide.CENTRE),
                HeadSettings.USUAL)
            .head()
            .orElseThrow();
    everyPatternOn(head, HairProfile.usual(Length.ofMillimetres(250)));
  }

  private static void everyPatternOn(Head head, HairProfile hair) {
    boolean evenSided =
        head.part().side() == PartSide.CENTRE || head.part().side() == PartSide.NONE;
    for (Path file : Shipped.in(Shipped.PATTERNS)) {
      Placement placement = place(pattern(file), head, hair);
      assertEquals(List.of(), errors(placement), file.toString());
      for (PlacedSection section : placement.sections()) {
        assertFalse(section.foils().isEmpty(), file + ": no foil in " + section.name());
      }
      // A part off the centre divides the top and the fall unevenly: halves of a pair then differ.
      assertEquals(
          List.of(),
          PlacementValidator.faults(placement, 7).stream()
              .filter(fault -> evenSided || !fault.code().equals("fault-mirror"))
              .map(Problem::message)
              .toList(),
          file.toString());
    }
  }

  /** Numbers of foils that the trade is used to (common practice), on 561 mm round. */
  @ParameterizedTest
  @CsvSource({
    "part-line-and-hairline, 10, 20",
    "full-head-fine-weave, 50, 90",
    "diagonals-back, 15, 45",
    "v-back, 15, 45"
  })
  void countsAreThoseOfTheTrade(String name, int least, int most) {
    int foils = onUsualGuest(name).foils().size();
    assertTrue(foils >= least && foils <= most, name + " has " + foils + " foils");
  }

  /** An interior halo with wide background: 6 to 7 foils in the back, two in the fringe. */
  @Test
  void theInteriorHaloIsSparse() {
    Placement placement = onUsualGuest("dark-rim");
    long back =
        placement.foils().stream()
            .filter(f -> f.section().startsWith("back") || f.section().equals("inside V"))
            .count();
    assertTrue(back >= 6 && back <= 7, back + " foils in the back");
    assertEquals(
        2, placement.foils().stream().filter(f -> f.section().equals("fringe pair")).count());
    assertTrue(
        placement.foils().stream()
            .allMatch(f -> f.centreFind().fromHairline().toMillimetres() >= 30),
        "the perimeter stays dark");
  }

  private static Placement onUsualGuest(String name) {
    GuestDocument guest =
        Documents.readGuest(Path.of("shared/guests/guest-07.json")).value().orElseThrow();
    return place(
        pattern(Path.of("patterns/" + name + ".json")),
        guest.fitHead(HOUSE.head()).head().orElseThrow(),
        guest.hair());
  }

  @ParameterizedTest
  @CsvFileSource(resources = "/documents/on-a-head/expected.csv")
  void whatNoHeadCanCarryIsSaid(String file, String code) {
    Pattern pattern = pattern(Path.of("src/test/resources/documents/on-a-head").resolve(file));
    Placement placement =
        place(pattern, Head.usual(HeadKind.WOMAN), HairProfile.usual(Length.ofMillimetres(250)));
    List<String> codes =
        placement.problems().stream()
            .filter(p -> p.severity() == Severity.ERROR)
            .map(Problem::code)
            .toList();
    assertEquals(List.of(code), codes);
  }
}
