package foilwright.app;

import foilwright.document.GuestDocument;
import foilwright.document.HouseDocument;
import foilwright.pattern.Pattern;
import java.util.Optional;

/** Checks documents of any kind. */
public final class Check {
  private Check() {}

  /** Reads one document and says what it is and what is wrong. */
  public static CheckedDocument check(Workspace workspace, String named) {
    Found<?> found = workspace.any(named);
    Optional<?> value = found.value();
    return new CheckedDocument(
        named,
        value.map(Check::kind),
        value.map(Check::title),
        found.problems(),
        found.unreachable());
  }

  private static DocumentKind kind(Object document) {
    if (document instanceof Pattern) {
      return DocumentKind.PATTERN;
    }
    return document instanceof GuestDocument ? DocumentKind.GUEST : DocumentKind.HOUSE;
  }

  private static String title(Object document) {
    if (document instanceof Pattern pattern) {
      return pattern.title();
    }
    return document instanceof GuestDocument guest
        ? guest.number()
        : ((HouseDocument) document).name();
  }
}
