package foilwright.app;

import foilwright.document.GuestDocument;
import foilwright.document.HouseDocument;
import foilwright.head.HeadSettings;
import foilwright.pattern.Pattern;
import foilwright.service.marking.Attempt;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Checks documents of any kind. */
public final class Check {
  private Check() {}

  /**
   * Reads one document and says what it is and what is wrong; lays a pattern on a usual head, as
   * the usual house does, and fits the head of a guest, to find what only shows there.
   */
  public static CheckedDocument check(Workspace workspace, String named) {
    Found<?> found = workspace.any(named);
    Optional<?> value = found.value();
    if (value.isPresent() && value.get() instanceof Pattern pattern) {
      PlanOutcome laid = Planning.plan(workspace, PlanRequest.of(named), step -> {});
      return new CheckedDocument(
          named,
          Optional.of(DocumentKind.PATTERN),
          Optional.of(pattern.title()),
          laid.plan().map(plan -> plan.totals().foils()),
          laid.problems().stream().filter(p -> p.document().equals(named)).toList(),
          false);
    }
    List<FoundProblem> problems = new ArrayList<>(found.problems());
    if (value.isPresent() && value.get() instanceof GuestDocument guest) {
      guest.fitHead(HeadSettings.USUAL).problems().forEach(p -> problems.add(found.locate(p)));
    }
    return new CheckedDocument(
        named,
        value.map(Check::kind),
        value.map(Check::title),
        Optional.empty(),
        problems,
        found.unreachable());
  }

  private static DocumentKind kind(Object document) {
    if (document instanceof Attempt) {
      return DocumentKind.ATTEMPT;
    }
    return document instanceof GuestDocument ? DocumentKind.GUEST : DocumentKind.HOUSE;
  }

  private static String title(Object document) {
    if (document instanceof Attempt attempt) {
      return attempt.learner();
    }
    return document instanceof GuestDocument guest
        ? guest.number()
        : ((HouseDocument) document).name();
  }
}
