package foilwright.web;

import foilwright.app.Choices;
import foilwright.app.PageDrawings.Drawing;
import foilwright.app.PageDrawings.Picture;
import foilwright.app.Remedy;
import foilwright.app.WayOut;
import gg.jte.Content;
import gg.jte.html.OwaspHtmlTemplateOutput;
import gg.jte.output.StringOutput;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * All that one page shows, in words ready to be read.
 *
 * @param token which a change must bring with it
 * @param said what just happened, for people who do not see it
 * @param notice what a person must read before going on; empty when there is nothing
 * @param other name of a pattern to go to instead; empty when there is none
 * @param clock draws it when it is asked for
 * @param placed figures that are known when the foils are placed
 * @param timed figures that are known when the visit is on the clocks
 * @param answer how much of it is sent
 * @param clocked the same page with all that comes of putting the visit on the clocks; this page
 *     need not have it
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
    List<Figure> placed,
    List<Figure> timed,
    List<Look> looks,
    List<Card> cards,
    List<Picture> views,
    Supplier<Optional<Drawing>> clock,
    List<FoilRow> foils,
    List<Weighed> bowls,
    List<String> toner,
    List<Filed> onFile,
    List<String> cautions,
    boolean hasVisit,
    PatternPanel panel,
    Answer answer,
    Supplier<WorkPage> clocked) {
  private static final List<String> PARTS =
      Stream.of(
              "top", "placed", "timed", "first", "notice", "steps", "origin", "general", "clock",
              "foils", "mix", "looks", "papers")
          .map(name -> "part-" + name)
          .toList();

  private static final List<String> CARD_PARTS = List.of("card-said-", "card-form-", "card-looks-");

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
  public record Filed(String question, String answer, boolean missing) {}

  WorkPage withAnswer(Answer sent) {
    return new WorkPage(
        ask, choices, token, revision, own, canUndo, canRedo, title, summary, said, notice, other,
        placed, timed, looks, cards, views, clock, foils, bowls, toner, onFile, cautions, hasVisit,
        panel, sent, clocked);
  }

  WorkPage withCards(List<Card> others) {
    return new WorkPage(
        ask, choices, token, revision, own, canUndo, canRedo, title, summary, said, notice, other,
        placed, timed, looks, others, views, clock, foils, bowls, toner, onFile, cautions, hasVisit,
        panel, answer, clocked);
  }

  WorkPage withPanel(PatternPanel changed) {
    return new WorkPage(
        ask, choices, token, revision, own, canUndo, canRedo, title, summary, said, notice, other,
        placed, timed, looks, cards, views, clock, foils, bowls, toner, onFile, cautions, hasVisit,
        changed, answer, clocked);
  }

  WorkPage withClocked(Supplier<WorkPage> page) {
    return new WorkPage(
        ask, choices, token, revision, own, canUndo, canRedo, title, summary, said, notice, other,
        placed, timed, looks, cards, views, clock, foils, bowls, toner, onFile, cautions, hasVisit,
        panel, answer, page);
  }

  /** Changed alike with clocks and without. */
  WorkPage with(UnaryOperator<WorkPage> change) {
    return change.apply(this).withClocked(() -> clocked.get().with(change));
  }

  /** Questions without an answer on file, in words; empty when there is none. */
  public String missing() {
    return onFile.stream()
        .filter(Filed::missing)
        .map(Filed::question)
        .collect(Collectors.joining("; "));
  }

  /** An address of the same page with another pattern. */
  public String askFor(String pattern) {
    return ask.withPattern(pattern).query();
  }

  /** A part of the page as it is to be sent. */
  public Answer.Part part(String id, Content content) {
    StringOutput html = new StringOutput();
    content.writeTo(new OwaspHtmlTemplateOutput(html));
    return answer.part(id, html.toString());
  }

  /** A view as it is to be sent. */
  public Answer.Part part(Picture view) {
    return answer.part(drawingId(view), view.drawing().svg());
  }

  /** The view that the page shows large. */
  public String large() {
    return views.stream()
        .map(Picture::id)
        .filter(answer.large()::equals)
        .findFirst()
        .orElse(Answer.USUAL_LARGE);
  }

  private static String drawingId(Picture view) {
    return "drawing-" + view.id();
  }

  /** Names of all parts that a page of this plan has. */
  Set<String> parts() {
    Set<String> parts = new HashSet<>(PARTS);
    views.forEach(view -> parts.add(drawingId(view)));
    for (Card card : cards) {
      CARD_PARTS.forEach(part -> parts.add(part + card.index()));
    }
    return parts;
  }

  /** Whether only parts are sent, for a page that has the others. */
  public boolean isPatch() {
    return answer.isPatch();
  }

  /** An address of the page of its guest, or of the first where there is none. */
  public String guestAsk() {
    return ask.guest().isEmpty() ? ask.withGuest(Ask.FIRST.guest()).query() : ask.query();
  }

  /** What the button below a view says. */
  public static String side(Picture view) {
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
