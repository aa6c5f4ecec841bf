package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.head.Head;
import foilwright.head.HeadSettings;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The tapes of every guest describe a head. */
class GuestHeadLibraryTest {
  private static final Path FOLDER = Path.of("src/test/resources/documents");

  static List<Path> guests() {
    List<Path> guests = new ArrayList<>(Shipped.in(Shipped.GUESTS));
    guests.add(FOLDER.resolve("valid/guest-every-key.json"));
    return guests;
  }

  @ParameterizedTest
  @MethodSource("guests")
  void tapesAreMet(Path file) {
    GuestDocument guest = Documents.readGuest(file).value().orElseThrow();
    Head.Fitted fitted = guest.fitHead(HeadSettings.USUAL);
    assertEquals(List.of(), fitted.problems());
    Head head = fitted.head().orElseThrow();
    guest
        .tapes()
        .around()
        .ifPresent(
            around -> assertEquals(around.toMillimetres(), head.around().toMillimetres(), 0.5));
  }

  @Test
  void contradictoryTapesAreFoundAtTheirLine() {
    ReadResult<GuestDocument> read =
        Documents.readGuest(FOLDER.resolve("on-a-head/guest-contradictory-tape.json"));
    Head.Fitted fitted = read.value().orElseThrow().fitHead(HeadSettings.USUAL);
    assertTrue(fitted.head().isEmpty());
    LocatedProblem problem = read.locate(fitted.problems().get(0));
    assertEquals("tapes-contradict", problem.problem().code());
    assertEquals("head.earToEar", problem.problem().path());
    assertEquals(4, problem.place().line());
    assertTrue(problem.place().column() > 60, problem.toString());
  }
}
