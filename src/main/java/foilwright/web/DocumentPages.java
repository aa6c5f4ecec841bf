package foilwright.web;

import foilwright.app.Calibration;
import foilwright.app.CalibrationOutcome;
import foilwright.app.DocumentDesk;
import foilwright.app.DocumentKind;
import foilwright.app.Draft;
import foilwright.app.FoundProblem;
import foilwright.app.Measured;
import foilwright.app.TapeDrawings;
import foilwright.app.Workspace;
import foilwright.pattern.MixSlot;
import foilwright.problem.Problem;
import foilwright.problem.Severity;
import foilwright.service.Caution;
import foilwright.service.SafetyQuestion;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The pages of guests and of the house: shown, changed, taken back, and begun. */
final class DocumentPages {
  private static final String SAVED = "Changed and saved.";

  /** How a page is sent. */
  interface Sender {
    void send(Context context, String template, Object page);
  }

  private final Workspace workspace;
  private final Supplier<LocalDate> today;
  private final String token;
  private final Sender sender;
  private final DocumentDesk guests;
  private final DocumentDesk houses;
  private final Steps<Draft> steps = new Steps<>();

  /** Held while a step is taken, so that the second of two sees what the first one left. */
  private final Object stepping = new Object();

  DocumentPages(Workspace workspace, Supplier<LocalDate> today, String token, Sender sender) {
    this.workspace = workspace;
    this.today = today;
    this.token = token;
    this.sender = sender;
    guests = new DocumentDesk(workspace, DocumentKind.GUEST);
    houses = new DocumentDesk(workspace, DocumentKind.HOUSE);
  }

  void route(JavalinConfig config) {
    for (DocumentKind kind : List.of(DocumentKind.GUEST, DocumentKind.HOUSE)) {
      String path = "/" + kind.words();
      config.routes.get(path, context -> show(context, kind));
      config.routes.post(path, context -> change(context, kind));
      config.routes.post(path + "/undo", context -> step(context, kind, true));
      config.routes.post(path + "/redo", context -> step(context, kind, false));
    }
    config.routes.post("/guests", this::begin);
    config.routes.post("/house/measured", this::measured);
  }

  private DocumentDesk desk(DocumentKind kind) {
    return kind == DocumentKind.GUEST ? guests : houses;
  }

  /** The house or the guest of an address. */
  private static String name(Ask ask, DocumentKind kind) {
    return kind == DocumentKind.GUEST ? ask.guest() : ask.houseName();
  }

  private DocumentDesk.Open open(DocumentKind kind, String name) {
    if (!desk(kind).names().contains(name)) {
      throw new NoSuchElementException("There is no " + kind.words() + " called \"" + name + "\".");
    }
    return desk(kind)
        .open(name)
        .orElseThrow(() -> new NoSuchElementException(damaged(desk(kind), kind, name)));
  }

  /** What keeps a document from being read: its file, each line, what is wrong and the cure. */
  static String damaged(DocumentDesk desk, DocumentKind kind, String name) {
    return "The "
        + kind.words()
        + " \""
        + name
        + "\" cannot be read from the file "
        + name
        + ".json. "
        + desk.problems(name).stream()
            .filter(FoundProblem::isError)
            .map(DocumentPages::words)
            .collect(Collectors.joining(" "))
        + " Nothing was changed in it.";
  }

  private static String words(FoundProblem found) {
    Problem problem = found.problem();
    String line = found.line() > 0 ? "Line " + found.line() + ": " : "";
    return line + problem.message() + "; " + problem.cure() + ".";
  }

  private static Form form(DocumentKind kind, Draft draft, LengthUnit unit) {
    return kind == DocumentKind.GUEST ? GuestForm.of(draft, unit) : HouseForm.of(draft, unit);
  }

  // Showing.

  private DocumentPage page(
      Ask ask, DocumentKind kind, DocumentDesk.Open open, String said, String notice) {
    return page(ask, kind, open, said, notice, "");
  }

  private DocumentPage page(
      Ask ask,
      DocumentKind kind,
      DocumentDesk.Open open,
      String said,
      String notice,
      String other) {
    boolean guest = kind == DocumentKind.GUEST;
    Optional<TapeDrawings.Taped> taped =
        guest ? Optional.of(TapeDrawings.of(workspace, open.draft())) : Optional.empty();
    List<String> told =
        Stream.concat(
                open.draft().problems().stream(),
                taped.stream().flatMap(t -> t.problems().stream()))
            .filter(problem -> problem.severity() != Severity.NOTE)
            .map(problem -> problem.message() + "; " + problem.cure() + ".")
            .distinct()
            .toList();
    return new DocumentPage(
        ask,
        token,
        open.revision(),
        kind.words(),
        open.name(),
        guest ? open.name() : "House: " + open.draft().text("name"),
        intro(kind, open),
        steps.canUndo(key(kind, open.name())),
        steps.canRedo(key(kind, open.name())),
        said,
        notice,
        other,
        form(kind, open.draft(), ask.unit()).groups(),
        taped.map(TapeDrawings.Taped::drawings).orElse(List.of()),
        told,
        guest ? missing(open.draft()) : "",
        guest ? Arrays.stream(Caution.values()).map(Caution::text).toList() : List.of(),
        guest ? List.of() : open.draft().keys("slots"),
        desk(kind).names(),
        guests.freeGuest());
  }

  private static String intro(DocumentKind kind, DocumentDesk.Open open) {
    if (open.own()) {
      return "Your own. Every change is saved at once; the last hundred states are kept.";
    }
    return kind == DocumentKind.GUEST
        ? "A shipped guest. The first change makes one of your own under the next free number."
        : "The shipped house. The first change makes a copy of your own, which is used from then on.";
  }

  private static String missing(Draft guest) {
    return Arrays.stream(SafetyQuestion.values())
        .filter(q -> guest.text("tests." + q.key() + ".answer").isEmpty())
        .map(SafetyQuestion::words)
        .collect(Collectors.joining("; "));
  }

  private static String key(DocumentKind kind, String name) {
    return kind + " " + name;
  }

  private void show(Context context, DocumentKind kind) {
    Ask ask = PageServer.ask(context);
    DocumentPage page = page(ask, kind, open(kind, name(ask, kind)), "", "");
    boolean part = context.header("HX-Request") != null;
    if (part) {
      context.header("HX-Push-Url", address(page));
    }
    sender.send(context, part ? "document.jte" : "documentpage.jte", page);
  }

  private static String address(DocumentPage page) {
    return "/" + page.kind() + "?" + page.ask().query();
  }

  private void answer(Context context, int status, DocumentPage page) {
    context.status(status).header("HX-Push-Url", address(page));
    sender.send(context, "document.jte", page);
  }

  // Changing.

  private void change(Context context, DocumentKind kind) throws IOException {
    Ask ask = PageServer.ask(context);
    DocumentDesk.Open before = open(kind, name(ask, kind));
    Form.Sent sent = form(kind, before.draft(), ask.unit()).send(context.formParamMap());
    String wrong = sent.why().values().stream().findFirst().orElse("");
    if (sent.draft().equals(before.draft())) {
      String said = wrong.isEmpty() ? "Nothing changed." : "Not changed: " + wrong + ".";
      String notice = sent.why().containsKey("") ? said : "";
      answer(
          context, wrong.isEmpty() ? 200 : 422, page(ask, kind, before, said, notice).marked(sent));
      return;
    }
    String revision = Optional.ofNullable(context.formParam("revision")).orElse("");
    DocumentDesk.Saved saved = desk(kind).save(before.name(), revision, sent.draft());
    String now = saved.open().name();
    if (saved.beside()) {
      answerBeside(context, ask, kind, before.name(), saved);
      return;
    }
    steps.done(
        key(kind, now),
        kind == DocumentKind.GUEST ? before.draft().with("number", now) : before.draft());
    Ask next = kind == DocumentKind.GUEST ? ask.withGuest(now) : ask;
    String notice =
        now.equals(before.name())
            ? ""
            : "You now work on a guest of your own, "
                + now
                + "; "
                + before.name()
                + " stays as it is.";
    DocumentPage page = page(next, kind, saved.open(), SAVED, notice);
    answer(context, wrong.isEmpty() ? 200 : 422, page.marked(sent));
  }

  private void answerBeside(
      Context context, Ask ask, DocumentKind kind, String name, DocumentDesk.Saved saved) {
    String other = saved.open().name();
    answer(
        context,
        409,
        page(
            ask,
            kind,
            open(kind, name),
            "Not saved over the other change.",
            "This was changed elsewhere after the page was shown. Your change is kept as \""
                + other
                + "\".",
            other));
  }

  /** An earlier state of a document took the place of this one. */
  void broughtBack(DocumentKind kind, String name, Draft before) {
    steps.done(key(kind, name), before);
  }

  private void step(Context context, DocumentKind kind, boolean back) throws IOException {
    Ask ask = PageServer.ask(context);
    String revision = Optional.ofNullable(context.formParam("revision")).orElse("");
    DocumentDesk.Open open;
    synchronized (stepping) {
      open = open(kind, name(ask, kind));
      String key = key(kind, open.name());
      if (!open.revision().equals(revision)) {
        String notice =
            "This was changed elsewhere after the page was shown. Press again if you still want to.";
        answer(context, 409, page(ask, kind, open, "Nothing was changed.", notice));
        return;
      }
      Optional<Draft> next = steps.next(key, back);
      if (next.isPresent()) {
        DocumentDesk.Saved saved = desk(kind).save(open.name(), revision, next.get());
        if (saved.beside()) {
          answerBeside(context, ask, kind, open.name(), saved);
          return;
        }
        steps.taken(key, back, open.draft());
        open = saved.open();
      }
    }
    answer(context, 200, page(ask, kind, open, back ? "Taken back." : "Done again.", ""));
  }

  private void begin(Context context) throws IOException {
    Ask ask = PageServer.ask(context);
    String name = Optional.ofNullable(context.formParam("name")).orElse("").strip();
    if (!name.matches("guest-\\d{2,6}") || guests.names().contains(name)) {
      String why =
          guests.names().contains(name)
              ? "there is a " + name + " already"
              : "a guest goes by number, such as " + guests.freeGuest() + ", and never by name";
      DocumentPage page =
          page(
              ask,
              DocumentKind.GUEST,
              open(DocumentKind.GUEST, ask.guest()),
              "No new guest: " + why + ".",
              "No new guest was made: " + why + ".");
      answer(context, 422, page);
      return;
    }
    DocumentDesk.Open made = guests.create(name, DocumentDesk.newGuest(name));
    answer(
        context,
        200,
        page(
            ask.withGuest(name),
            DocumentKind.GUEST,
            made,
            "New guest, saved as " + name + ".",
            ""));
  }

  /** Takes in what scale and watch said after the visit of the address. */
  private void measured(Context context) throws IOException {
    Ask ask = PageServer.ask(context);
    DocumentDesk.Open before = open(DocumentKind.HOUSE, ask.houseName());
    String why = "";
    try {
      Measured measured = read(context);
      CalibrationOutcome outcome =
          Calibration.calibrate(workspace, ask.request(today.get()), measured, step -> {});
      if (outcome.calibrated().isEmpty()) {
        why =
            outcome.problems().stream()
                .filter(FoundProblem::isError)
                .map(DocumentPages::words)
                .findFirst()
                .orElse("the visit cannot be planned");
      }
    } catch (IllegalArgumentException e) {
      why = e.getMessage();
    }
    DocumentDesk.Open after = open(DocumentKind.HOUSE, ask.houseName());
    if (!why.isEmpty()) {
      answer(
          context,
          422,
          page(ask, DocumentKind.HOUSE, after, "Not taken in: " + why, "Not taken in: " + why));
      return;
    }
    steps.done(key(DocumentKind.HOUSE, after.name()), before.draft());
    answer(
        context,
        200,
        page(
            ask,
            DocumentKind.HOUSE,
            after,
            "Taken in and saved.",
            "Taken in: take-up and paces now follow what was measured for "
                + ask.pattern()
                + " on "
                + (ask.guest().isEmpty() ? "a usual head" : ask.guest())
                + "."));
  }

  private Measured read(Context context) {
    Map<MixSlot, Mass> left = new EnumMap<>(MixSlot.class);
    for (MixSlot slot : MixSlot.values()) {
      String text = Optional.ofNullable(context.formParam("left-" + slot)).orElse("").strip();
      if (!text.isEmpty()) {
        left.put(slot, Mass.parse(text.matches("[\\d.]+") ? text + " g" : text));
      }
    }
    String took = Optional.ofNullable(context.formParam("took")).orElse("").strip();
    return new Measured(
        Map.of(),
        left,
        took.isEmpty()
            ? Optional.empty()
            : Optional.of(Minutes.parse(took.matches("[\\d.]+") ? took + " min" : took)),
        List.of(),
        Optional.of(today.get()));
  }
}
