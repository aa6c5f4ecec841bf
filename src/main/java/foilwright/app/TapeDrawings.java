package foilwright.app;

import foilwright.app.PageDrawings.Drawing;
import foilwright.document.Documents;
import foilwright.document.GuestDocument;
import foilwright.head.Head;
import foilwright.head.HeadSettings;
import foilwright.head.Tape;
import foilwright.problem.Problem;
import foilwright.sheet.DrawnHead;
import foilwright.sheet.TapeGuide;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A guest's head as the tape says it: what is odd about the measurements, and where to lay them.
 */
public final class TapeDrawings {
  private TapeDrawings() {}

  /**
   * What the tape says.
   *
   * @param drawings one for each measurement, named by its key
   * @param problems of the measurements
   */
  public record Taped(List<Drawing> drawings, List<Problem> problems) {}

  /** Of a guest; where the head cannot be fitted a usual one is drawn. */
  public static Taped of(Workspace workspace, Draft guest) {
    GuestDocument person = Documents.readGuest(guest.bytes()).value().orElse(Nobody.GUEST);
    HeadSettings settings =
        workspace
            .house(Planning.USUAL_HOUSE)
            .value()
            .map(house -> house.head())
            .orElse(HeadSettings.USUAL);
    Head.Fitted fitted = workspace.heads().fit(person, settings);
    Optional<Head> head = fitted.head();
    DrawnHead drawn =
        DrawnHead.of(
            head.or(() -> workspace.heads().fit(Nobody.GUEST, settings).head()).orElseThrow());
    return new Taped(
        Arrays.stream(Tape.values()).map(tape -> drawing(drawn, tape)).toList(), fitted.problems());
  }

  private static Drawing drawing(DrawnHead drawn, Tape tape) {
    Drawing bare = Drawing.of(TapeGuide.of(drawn, tape));
    return new Drawing(bare.id(), bare.words() + ": " + TapeGuide.how(tape), bare.svg());
  }
}
