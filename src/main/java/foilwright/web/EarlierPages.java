package foilwright.web;

import foilwright.app.DocumentDesk;
import foilwright.app.DocumentKind;
import foilwright.app.Draft;
import foilwright.app.EarlierStates;
import foilwright.app.FoundProblem;
import foilwright.app.PageDrawings;
import foilwright.app.Plan;
import foilwright.app.Planning;
import foilwright.app.Workspace;
import io.javalin.config.JavalinConfig;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Supplier;

/** Earlier states of a document, and what to do with one that cannot be read. */
public final class EarlierPages {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT)
          .withZone(ZoneId.systemDefault());

  private final Workspace workspace;
  private final Supplier<LocalDate> today;
  private final String token;
  private final SheetPages.PageWriting writing;

  /** Is told what was in use before, where it was sound. */
  interface BroughtBack {
    void tell(Ask ask, String name, Draft before);
  }

  private final BroughtBack broughtBack;

  EarlierPages(
      Workspace workspace,
      Supplier<LocalDate> today,
      String token,
      SheetPages.PageWriting writing,
      BroughtBack broughtBack) {
    this.workspace = workspace;
    this.today = today;
    this.token = token;
    this.writing = writing;
    this.broughtBack = broughtBack;
  }

  /**
   * What the page shows.
   *
   * @param now mark of the state in use, which must not change unseen
   * @param problems that keep the document from being read; none when it is sound
   * @param looked the state that is looked at
   */
  public record Shown(
      Ask ask,
      String token,
      DocumentKind kind,
      String name,
      String now,
      List<String> problems,
      List<Row> rows,
      Optional<Looked> looked) {
    /** The newest state that can be brought back. */
    public Optional<Row> lastSound() {
      return rows.stream().filter(r -> r.number() > 0 && r.sound()).findFirst();
    }

    /** Where the document is worked on. */
    public String home() {
      return kind == DocumentKind.PATTERN ? "/" : "/" + kind.words();
    }
  }

  /**
   * One state.
   *
   * @param number 0 for the one in use
   */
  public record Row(int number, String saved, String changed, boolean sound) {}

  /**
   * A state that is looked at.
   *
   * @param sentences what it says; for a pattern a sentence for each section
   */
  public record Looked(int number, List<String> sentences, List<PageDrawings.Picture> views) {}

  void register(JavalinConfig config) {
    config.routes.get("/earlier", this::show);
    config.routes.post("/earlier", this::bringBack);
  }

  /** Whether a person's own pattern cannot be read. */
  boolean isDamaged(Ask ask) {
    DocumentDesk patterns = new DocumentDesk(workspace, DocumentKind.PATTERN);
    return patterns.names().contains(ask.pattern()) && patterns.open(ask.pattern()).isEmpty();
  }

  private boolean workspaceHas(DocumentKind kind, String name) {
    return new DocumentDesk(workspace, kind).names().contains(name);
  }

  /** Where a damaged pattern is told and cured. */
  static String address(Ask ask) {
    return "/earlier?kind=pattern&name=" + ask.pattern() + "&" + ask.query();
  }

  private static DocumentKind kind(String word) {
    return Arrays.stream(DocumentKind.values())
        .filter(k -> k != DocumentKind.ATTEMPT && k.words().equals(word))
        .findFirst()
        .orElseThrow(() -> new BadRequestResponse("There is no kind \"" + word + "\"."));
  }

  private static String parameter(Context context, String name) {
    String form = context.formParam(name);
    String value = form != null ? form : context.queryParam(name);
    return Optional.ofNullable(value).orElse("");
  }

  private static int number(Context context, String name) {
    String text = parameter(context, name);
    if (!text.matches("\\d{0,9}")) {
      throw new BadRequestResponse("There is no state \"" + text + "\".");
    }
    return text.isEmpty() ? 0 : Integer.parseInt(text);
  }

  private String checkedName(DocumentKind kind, Context context) {
    String name = parameter(context, "name");
    if (!workspaceHas(kind, name)) {
      throw new NoSuchElementException("There is no " + kind.words() + " \"" + name + "\".");
    }
    return name;
  }

  private void show(Context context) throws IOException {
    DocumentKind kind = kind(parameter(context, "kind"));
    String name = checkedName(kind, context);
    EarlierStates states = EarlierStates.of(workspace, kind, name);
    Ask ask = PageServer.ask(context);
    int look = number(context, "look");
    Optional<Looked> looked =
        look == 0
            ? Optional.empty()
            : Optional.of(
                looked(
                    ask,
                    states
                        .find(look)
                        .orElseThrow(
                            () -> new NoSuchElementException("That state is not kept any more."))));
    List<EarlierStates.State> all = states.all();
    writing.show(
        context,
        "earlier.jte",
        new Shown(ask, token, kind, name, mark(all), problems(kind, name), rows(all), looked));
  }

  private List<String> problems(DocumentKind kind, String name) {
    return new DocumentDesk(workspace, kind)
        .problems(name).stream()
            .filter(FoundProblem::isError)
            .map(
                found ->
                    name
                        + ".json. "
                        + (found.line() > 0 ? "Line " + found.line() + ": " : "")
                        + found.problem().message()
                        + ". Cure: "
                        + found.problem().cure()
                        + ".")
            .toList();
  }

  private static List<Row> rows(List<EarlierStates.State> all) {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      EarlierStates.State state = all.get(i);
      String changed =
          i + 1 < all.size()
              ? EarlierStates.changes(state, all.get(i + 1))
              : "the first that is kept";
      rows.add(new Row(state.number(), WHEN.format(state.saved()), changed, state.isSound()));
    }
    return rows;
  }

  private static String mark(List<EarlierStates.State> all) {
    return all.stream()
        .filter(s -> s.number() == 0)
        .flatMap(s -> s.draft().stream())
        .map(draft -> draft.revision())
        .findFirst()
        .orElse("damaged");
  }

  private Looked looked(Ask ask, EarlierStates.State state) {
    List<String> sentences = new ArrayList<>();
    List<PageDrawings.Picture> views = List.of();
    if (state.draft().isEmpty()) {
      sentences.add("This state cannot be read.");
    } else if (state.draft().get().pattern().isPresent()
        && state.draft().get().kind() == DocumentKind.PATTERN) {
      Optional<Plan> plan =
          Planning.plan(
                  workspace,
                  ask.request(today.get()),
                  step -> {},
                  head -> {},
                  now -> state.draft().get().pattern().orElseThrow())
              .plan();
      if (plan.isPresent()) {
        PageWriter writer = new PageWriter(plan.get(), ask.unit());
        sentences.add(plan.get().totals().foils() + " foils on this head.");
        writer
            .cards(List.of())
            .forEach(card -> sentences.add(card.name() + ": " + card.sentence()));
        views = PageDrawings.on(plan.get().head()).views(plan.get());
      }
    }
    if (sentences.isEmpty()) {
      state.draft().get().keys("").forEach(key -> sentences.add(key));
    }
    return new Looked(state.number(), sentences, views);
  }

  private void bringBack(Context context) throws IOException {
    DocumentKind kind = kind(parameter(context, "kind"));
    String name = checkedName(kind, context);
    EarlierStates states = EarlierStates.of(workspace, kind, name);
    Ask ask = PageServer.ask(context);
    List<EarlierStates.State> all = states.all();
    if (!mark(all).equals(parameter(context, "now"))) {
      throw new ConflictResponse(
          "This document was changed elsewhere after the page was shown. Nothing was changed."
              + " Look at its states again.");
    }
    states.bringBack(number(context, "number"));
    all.stream()
        .filter(state -> state.number() == 0 && state.isSound())
        .flatMap(state -> state.draft().stream())
        .forEach(draft -> broughtBack.tell(ask, name, draft));
    context.header(
        "HX-Redirect", "/earlier?kind=" + kind.words() + "&name=" + name + "&" + ask.query());
  }
}
