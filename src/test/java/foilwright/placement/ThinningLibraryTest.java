package foilwright.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Side;
import foilwright.document.Documents;
import foilwright.document.GuestDocument;
import foilwright.document.HouseDocument;
import foilwright.fall.NaturalFall;
import foilwright.hair.HairOnHead;
import foilwright.head.Head;
import foilwright.pattern.Pattern;
import foilwright.pattern.PatternCheck;
import foilwright.problem.Severity;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every shipped pattern, thinned out on two guests: one parted on the left, one not at all. */
class ThinningLibraryTest {
  private static final HouseDocument HOUSE =
      Documents.readHouse(Path.of("shared/house/practice-room.json")).value().orElseThrow();

  private static List<String> kept(Placement placement, Set<Integer> without) {
    return placement.foils().stream()
        .filter(f -> !without.contains(f.number()))
        .map(
            f ->
                String.join(
                    " | ",
                    f.section(),
                    f.row() + "." + f.inRow(),
                    f.mix(),
                    f.centre().toString(),
                    f.area().toString()))
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"guest-07", "guest-12"})
  void theThinnedPatternGivesExactlyTheKeptFoils(String number) throws IOException {
    GuestDocument guest =
        Documents.readGuest(Path.of("shared/guests/" + number + ".json")).value().orElseThrow();
    Head head = guest.fitHead(HOUSE.head()).head().orElseThrow();
    boolean evenSided = head.part().side() == PartSide.NONE;
    HairOnHead hair = HairOnHead.of(head, guest.hair());
    PlacingSettings settings = HOUSE.placingSettings(HOUSE.foils().get(0));
    List<Path> files;
    try (Stream<Path> found = Files.list(Path.of("patterns"))) {
      files = found.sorted().toList();
    }
    assertTrue(files.size() > 5);
    for (Path file : files) {
      Pattern pattern = Documents.readPattern(file).value().orElseThrow();
      Placement whole = Placer.place(pattern, hair, settings, NaturalFall.over(head));
      List<Thinning.Choice> order = Thinning.rank(whole, head);
      assertEquals(
          whole.foils().stream().map(PlacedFoil::number).toList(),
          order.stream().map(c -> c.foil().number()).sorted().toList());
      balanced(file, order);
      // A third of them in two helpings, the second on the pattern that is thinned already.
      int first = whole.foils().size() / 6;
      int both = whole.foils().size() / 3 + 1;
      List<PlacedFoil> given = order.stream().map(Thinning.Choice::foil).toList();
      Pattern thin = Thinning.leaveOut(pattern, given.subList(0, first));
      thin = Thinning.leaveOut(thin, given.subList(first, both));
      assertEquals(
          List.of(),
          PatternCheck.problems(thin).stream()
              .filter(p -> p.severity() == Severity.ERROR)
              .toList());
      assertEquals(thin, Documents.readPattern(Documents.write(thin)).value().orElseThrow());
      Placement again = Placer.place(thin, hair, settings, NaturalFall.over(head));
      Set<Integer> without =
          given.subList(0, both).stream().map(PlacedFoil::number).collect(Collectors.toSet());
      assertEquals(kept(whole, without), kept(again, Set.of()), file.toString());
      assertEquals(
          List.of(),
          PlacementValidator.faults(again, 11).stream()
              .filter(f -> evenSided || !f.code().equals("fault-mirror"))
              .toList(),
          file.toString());
      assertTrue(
          again.problems().stream().noneMatch(p -> p.code().equals("no-such-foil")),
          file.toString());
    }
  }

  /** Whatever number is given up, the sides lose the same within one foil while both have some. */
  private static void balanced(Path file, List<Thinning.Choice> order) {
    List<Side> sides = order.stream().map(c -> c.foil().side()).toList();
    int more = 0;
    for (int i = 0; i < sides.size(); i++) {
      more += sides.get(i) == Side.LEFT ? 1 : sides.get(i) == Side.RIGHT ? -1 : 0;
      Side other = more > 0 ? Side.RIGHT : Side.LEFT;
      boolean none = !sides.subList(i + 1, sides.size()).contains(other);
      assertTrue(Math.abs(more) <= 1 || none, file + ": " + sides.subList(0, i + 1));
    }
  }
}
