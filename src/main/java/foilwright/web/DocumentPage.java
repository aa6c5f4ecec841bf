package foilwright.web;

import foilwright.app.PageDrawings.Drawing;
import java.util.List;

/**
 * A guest or the house, with a field for everything it says.
 *
 * @param kind {@code guest} or {@code house}; where the page lies
 * @param name of the document
 * @param intro what becomes of changes
 * @param said what just happened, for people who do not see it
 * @param notice what a person must read before going on; empty when there is nothing
 * @param other the document in which a refused change is kept; empty when there is none
 * @param drawings what fields light; may be none
 * @param told what is odd about it, in sentences
 * @param missing what is not on file; empty when nothing is
 * @param cautions what always comes first
 * @param slots mixes that can be weighed back; none for a guest
 * @param names of all documents of the kind
 * @param free the next number that no guest has
 */
public record DocumentPage(
    Ask ask,
    String token,
    String revision,
    String kind,
    String name,
    String title,
    String intro,
    boolean canUndo,
    boolean canRedo,
    String said,
    String notice,
    String other,
    List<FormGroup> groups,
    List<Drawing> drawings,
    List<String> told,
    String missing,
    List<String> cautions,
    List<String> slots,
    List<String> names,
    String free) {
  public DocumentPage {
    groups = List.copyOf(groups);
    drawings = List.copyOf(drawings);
    told = List.copyOf(told);
    cautions = List.copyOf(cautions);
    slots = List.copyOf(slots);
    names = List.copyOf(names);
  }

  DocumentPage marked(Form.Sent sent) {
    return new DocumentPage(
        ask,
        token,
        revision,
        kind,
        name,
        title,
        intro,
        canUndo,
        canRedo,
        said,
        notice,
        other,
        Form.marked(groups, sent),
        drawings,
        told,
        missing,
        cautions,
        slots,
        names,
        free);
  }

  /** Where the document lies in which a refused change is kept. */
  public String otherAddress() {
    return "/" + kind + "?" + (isGuest() ? ask.withGuest(other) : ask.withHouse(other)).query();
  }

  /** Groups that stand open: the first of a guest, none of a house. */
  public boolean open(FormGroup group) {
    return kind.equals("guest") && List.of("head", "hair", "cut").contains(group.id());
  }

  /** What the fields of a drawing are lit by. */
  public boolean isGuest() {
    return kind.equals("guest");
  }
}
