package foilwright.app;

import foilwright.document.GuestDocument;
import foilwright.head.Head;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import foilwright.problem.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Fits heads to what is known of them. */
public final class Heads {
  private Heads() {}

  /**
   * The head that is asked for.
   *
   * @param progress is told each step as it begins
   */
  public static HeadOutcome fit(
      Workspace workspace, HeadRequest request, Consumer<String> progress) {
    Optional<Found<GuestDocument>> guest = request.guest().map(workspace::guest);
    List<FoundProblem> problems = new ArrayList<>();
    guest.ifPresent(g -> problems.addAll(g.problems()));
    Optional<GuestDocument> person =
        guest.isPresent() ? guest.get().value() : Optional.of(Nobody.GUEST);
    if (person.isEmpty()) {
      return new HeadOutcome("", Optional.empty(), problems, guest.get().unreachable());
    }
    progress.accept("measuring the head");
    GuestDocument asked = asked(person.get(), request);
    Head.Fitted fitted = asked.fitHead(HeadSettings.USUAL);
    fitted.problems().forEach(p -> problems.add(locate(guest, p)));
    return new HeadOutcome(
        guest.isPresent() ? asked.number() : FileNames.of(asked.head().words()),
        fitted.head(),
        problems,
        false);
  }

  /** A guest with what the request says in the place of the guest's own. */
  static GuestDocument asked(GuestDocument person, HeadRequest request) {
    return new GuestDocument(
        person.number(),
        request.kind().orElse(person.head()),
        merged(person.tapes(), request.tapes()),
        person.hairline(),
        request.part().map(wish -> part(person.part(), wish)).orElse(person.part()),
        person.hair(),
        person.history(),
        person.tests(),
        person.wish());
  }

  private static TapeMeasurements merged(TapeMeasurements own, TapeMeasurements instead) {
    return new TapeMeasurements(
        instead.around().or(own::around),
        instead.frontToBack().or(own::frontToBack),
        instead.earToEar().or(own::earToEar),
        instead.frontHairlineHeight().or(own::frontHairlineHeight),
        instead.napeDepth().or(own::napeDepth));
  }

  /** As far from the centre as is wished, else as the guest wears it there, else as is usual. */
  private static PartSetting part(PartSetting own, PartWish wish) {
    PartSetting usual = own.side() == wish.side() ? own : PartSetting.of(wish.side());
    return wish.fromCentre().map(aside -> new PartSetting(wish.side(), aside)).orElse(usual);
  }

  /** A problem of a guest or head at its place in the guest's document, if there is one. */
  static FoundProblem locate(Optional<Found<GuestDocument>> guest, Problem problem) {
    return guest.map(g -> g.locate(problem)).orElse(new FoundProblem("", 0, 0, problem));
  }
}
