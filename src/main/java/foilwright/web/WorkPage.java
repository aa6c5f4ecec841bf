package foilwright.web;

import foilwright.app.Choices;
import foilwright.app.PageDrawings.Drawing;
import foilwright.app.Remedy;
import foilwright.app.WayOut;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * All that one page shows, in words ready to be read.
 *
 * @param token which a change must bring with it
 * @param said what just happened, for people who do not see it
 * @param notice what a person must read before going on; empty when there is nothing
 * @param other name of a pattern to go to instead; empty when there is none
 * @param clock draws it when it is asked for
 * @param have what the page that asks shows already: marks of drawings, and {@link #LATER} when it
 *     fetches clock, foils and mix by itself
 */
public record WorkPage(
    Ask ask,
    Choices choices,
    String token,
    String revision,
    boolean own,
    boolean canUndo,
    boolean canRedo,
    String title,
    String summary,
    String said,
    String notice,
    String other,
    List<Figure> figures,
    List<Look> looks,
    List<Card> cards,
    List<Drawing> views,
    Supplier<Optional<Drawing>> clock,
    List<FoilRow> foils,
    List<Weighed> bowls,
    List<String> toner,
    List<Answer> onFile,
    List<String> cautions,
    boolean hasVisit,
    PatternPanel panel,
    Set<String> have) {
  static final String LATER = "later";

  /** One figure of the plan; {@code note} may be empty. */
  public record Figure(String label, String value, String note) {}

  /**
   * Something to look at.
   *
   * @param letter of its pin on the drawings; empty when it has none
   * @param kind error, warning or note
   * @param section index of the section it lies in, from 0; -1 when it lies in none
   * @param remedies what the program can do about it by itself
   */
  public record Look(
      String letter,
      String kind,
      String message,
      String cure,
      int section,
      List<Remedy> remedies) {}

  /**
   * One section in the order of work.
   *
   * @param numbers of its foils, blanks between
   * @param foils the same in words
   */
  public record Card(
      int index,
      String name,
      String why,
      String sentence,
      String numbers,
      String foils,
      String minutes,
      String share,
      List<SectionField> fields,
      List<Look> looks) {
    Card withFields(List<SectionField> others) {
      return new Card(index, name, why, sentence, numbers, foils, minutes, share, others, looks);
    }
  }

  /** One foil; clock times count from the start of the visit. */
  public record FoilRow(
      int number,
      String section,
      String find,
      String width,
      String in,
      String due,
      String outBy,
      String out,
      String bowl,
      String mixed) {}

  /** One bowl. */
  public record Weighed(
      String name, String product, String powder, String developer, String when, String foils) {}

  /** What is on file about one question. */
  public record Answer(String question, String answer, boolean missing) {}

  WorkPage withHave(Set<String> shown) {
    return new WorkPage(
        ask, choices, token, revision, own, canUndo, canRedo, title, summary, said, notice, other,
        figures, looks, cards, views, clock, foils, bowls, toner, onFile, cautions, hasVisit, panel,
        shown);
  }

  WorkPage withCards(List<Card> others) {
    return new WorkPage(
        ask, choices, token, revision, own, canUndo, canRedo, title, summary, said, notice, other,
        figures, looks, others, views, clock, foils, bowls, toner, onFile, cautions, hasVisit,
        panel, have);
  }

  WorkPage withPanel(PatternPanel other) {
    return new WorkPage(
        ask,
        choices,
        token,
        revision,
        own,
        canUndo,
        canRedo,
        title,
        summary,
        said,
        notice,
        this.other,
        figures,
        looks,
        cards,
        views,
        clock,
        foils,
        bowls,
        toner,
        onFile,
        cautions,
        hasVisit,
        other,
        have);
  }

  /** Questions without an answer on file, in words; empty when there is none. */
  public String missing() {
    return onFile.stream()
        .filter(Answer::missing)
        .map(Answer::question)
        .collect(Collectors.joining("; "));
  }

  /** An address of the same page with another pattern. */
  public String askFor(String pattern) {
    return ask.withPattern(pattern).query();
  }

  /** Whether the page that asks shows just this drawing already. */
  public boolean has(Drawing drawing) {
    return have.contains(drawing.mark());
  }

  /** Whether clock, foils and mix are left for later. */
  public boolean later() {
    return have.contains(LATER);
  }

  /** An address of the page of its guest, or of the first where there is none. */
  public String guestAsk() {
    return ask.guest().isEmpty() ? ask.withGuest(Ask.FIRST.guest()).query() : ask.query();
  }

  /** What the button below a view says. */
  public static String side(Drawing view) {
    return view.words().split("[:,]", 2)[0];
  }

  /** Words with one full stop at their end. */
  public static String sentence(String words) {
    return words.endsWith(".") ? words : words + ".";
  }

  /** How foils come out, in words. */
  public static String words(WayOut way) {
    return switch (way) {
      case BEST -> "best found";
      case TOGETHER -> "all at one moment";
      case IN_ORDER -> "all in, then in order";
      case WHILE_PLACING -> "as they fall due";
      case WAVES -> "in waves";
      case TWO_MIXES -> "in order, weaker mix first";
      case TWO_VISITS -> "in two visits";
    };
  }

  /** The first thing to look at that is more than a note. */
  public Optional<Look> first() {
    return looks.stream().filter(look -> !look.kind().equals("note")).findFirst();
  }
}
