package foilwright.web;

import foilwright.app.Choices;
import foilwright.app.DocumentDesk;
import foilwright.app.DocumentKind;
import foilwright.app.Draft;
import foilwright.app.Handle;
import foilwright.app.Handles;
import foilwright.app.Limits;
import foilwright.app.PageDrawings;
import foilwright.app.PatternDesk;
import foilwright.app.Plan;
import foilwright.app.PlanOutcome;
import foilwright.app.PlanRequest;
import foilwright.app.Planning;
import foilwright.app.Remedies;
import foilwright.app.Remedy;
import foilwright.app.Trimmed;
import foilwright.app.Workspace;
import foilwright.head.Head;
import foilwright.pattern.Pattern;
import foilwright.pattern.Section;
import foilwright.placement.Thinning;
import foilwright.service.Caution;
import foilwright.units.Minutes;
import foilwright.web.WorkPage.Card;
import foilwright.web.WorkPage.Look;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.WeakHashMap;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/** Plans pages, changes patterns, and remembers what was done to them while the server runs. */
final class Desk {
  /** Longer than any visit, so that only the windows count. */
  private static final Minutes WHOLE_DAY = Minutes.ofMinutes(24 * 60);

  private final Workspace workspace;
  private final PatternDesk patterns;
  private final Supplier<LocalDate> today;
  private final String token;
  private final Steps<Step> steps = new Steps<>();

  /** Held while a step is taken, so that the second of two sees what the first one left. */
  private final Object stepping = new Object();

  /** By head, the same object for the same measurements as long as the workspace keeps it. */
  private final Map<Head, CompletableFuture<PageDrawings>> drawings = new WeakHashMap<>();

  Desk(Workspace workspace, Supplier<LocalDate> today, String token) {
    this.workspace = workspace;
    this.patterns = new PatternDesk(workspace);
    this.today = today;
    this.token = token;
  }

  /** What a step changes. */
  private enum Aspect {
    PATTERN,
    PART,
    WORKING,
    PACE
  }

  /**
   * What was there before a step.
   *
   * @param ask what the page showed
   * @param pattern as it was saved
   */
  private record Step(Aspect aspect, Ask ask, Pattern pattern) {
    /** What is there now, to come back to. */
    Step now(Ask shown, Pattern open) {
      return new Step(aspect, shown, open);
    }

    Ask applied(Ask shown) {
      return switch (aspect) {
        case PATTERN -> shown;
        case PART -> shown.withPart(ask.part());
        case WORKING -> shown.withOut(ask.out()).withHands(ask.hands());
        case PACE -> shown.withPace(ask.pace());
      };
    }
  }

  /** What is said of a page beside the plan. */
  private record Remark(String said, String notice, String other) {
    static final Remark NONE = new Remark("", "", "");
  }

  /**
   * The page.
   *
   * @throws NoSuchElementException when there is no such pattern, guest or pace
   */
  WorkPage page(Ask ask) {
    return page(ask, Remark.NONE);
  }

  private WorkPage page(Ask ask, Remark remark) {
    return page(ask, remark, request -> Planning.plan(workspace, request, step -> {}, this::begin));
  }

  /**
   * The page of a plan without clocks, and with them when it is asked for them.
   *
   * @param planning of the pattern as it is, or as a change that is not saved makes it
   */
  private WorkPage page(Ask ask, Remark remark, Function<PlanRequest, PlanOutcome> planning) {
    checked(ask);
    PlanRequest request = ask.request(today.get());
    return page(ask, remark, planning.apply(request.withoutClocks()))
        .withClocked(() -> page(ask, remark, planning.apply(request)));
  }

  private WorkPage page(Ask ask, Remark remark, PlanOutcome outcome) {
    PatternDesk.Open open = open(ask);
    Choices choices = checked(ask);
    Optional<Plan> plan = outcome.plan();
    List<Look> looks =
        PageWriter.looks(
            outcome.problems(),
            plan,
            problem -> plan.map(p -> Remedies.of(workspace, p, problem)).orElse(List.of()));
    Optional<PageWriter> writer = plan.map(p -> new PageWriter(p, ask.unit()));
    Optional<PageDrawings> drawings = plan.map(p -> drawingsOn(p.head()).join());
    return new WorkPage(
        ask,
        choices,
        token,
        open.revision(),
        open.own(),
        steps.canUndo(ask.pattern()),
        steps.canRedo(ask.pattern()),
        open.pattern().title(),
        open.pattern().summary(),
        remark.said()
            + plan.map(p -> " " + p.totals().foils() + " foils.").orElse(" There is no plan."),
        remark.notice(),
        remark.other(),
        writer.map(PageWriter::placed).orElse(List.of()),
        writer.map(PageWriter::clocked).orElse(List.of()),
        looks,
        writer.map(w -> w.cards(looks)).orElse(List.of()),
        drawings.map(d -> d.views(plan.orElseThrow())).orElse(List.of()),
        () -> plan.flatMap(p -> drawings.orElseThrow().clock(p)),
        writer.map(PageWriter::foils).orElse(List.of()),
        writer.map(PageWriter::bowls).orElse(List.of()),
        writer.map(PageWriter::toner).orElse(List.of()),
        writer.map(PageWriter::onFile).orElse(List.of()),
        Arrays.stream(Caution.values()).map(Caution::text).toList(),
        plan.flatMap(Plan::times).map(t -> !t.visits().isEmpty()).orElse(false),
        PatternPanel.of(open.pattern(), ask.unit()),
        Answer.WHOLE,
        () -> page(ask, remark));
  }

  private void begin(Head head) {
    var unused = drawingsOn(head);
  }

  /** Begins to draw a head, or gives what was drawn of it before. */
  private CompletableFuture<PageDrawings> drawingsOn(Head head) {
    synchronized (drawings) {
      return drawings.computeIfAbsent(
          head, h -> CompletableFuture.supplyAsync(() -> PageDrawings.on(h)));
    }
  }

  /** The plan of an address, for its sheets; empty when there is none. */
  Optional<Plan> plan(Ask ask) {
    checked(ask);
    return Planning.plan(workspace, ask.request(today.get()), step -> {}).plan();
  }

  /** The same plan without clocks, which is there sooner. */
  private Optional<Plan> placed(Ask ask) {
    checked(ask);
    return Planning.plan(workspace, ask.request(today.get()).withoutClocks(), step -> {}).plan();
  }

  /** The same without a pace that its house has not. */
  Ask paced(Ask ask) {
    return Choices.in(workspace, ask.houseName()).paces().contains(ask.pace())
        ? ask
        : ask.withPace("");
  }

  private PatternDesk.Open open(Ask ask) {
    if (Choices.in(workspace, ask.houseName()).patterns().stream()
        .noneMatch(p -> p.name().equals(ask.pattern()))) {
      throw new NoSuchElementException("There is no pattern called \"" + ask.pattern() + "\".");
    }
    return patterns
        .open(ask.pattern())
        .orElseThrow(
            () ->
                new NoSuchElementException(
                    DocumentPages.damaged(
                        new DocumentDesk(workspace, DocumentKind.PATTERN),
                        DocumentKind.PATTERN,
                        ask.pattern())));
  }

  private Choices checked(Ask ask) {
    Choices choices = Choices.in(workspace, ask.houseName());
    if (!choices.houses().contains(ask.houseName())) {
      throw new NoSuchElementException("There is no house called \"" + ask.house() + "\".");
    }
    if (choices.patterns().stream().noneMatch(p -> p.name().equals(ask.pattern()))) {
      throw new NoSuchElementException("There is no pattern called \"" + ask.pattern() + "\".");
    }
    if (!ask.guest().isEmpty() && !choices.guests().contains(ask.guest())) {
      throw new NoSuchElementException("There is no guest called \"" + ask.guest() + "\".");
    }
    if (!ask.pace().isEmpty() && !choices.paces().contains(ask.pace())) {
      throw new NoSuchElementException("There is no pace called \"" + ask.pace() + "\".");
    }
    return choices;
  }

  /** How a change ended. */
  enum End {
    DONE,
    /** A field holds what cannot stand there; nothing was changed. */
    WRONG,
    /** Somebody else had changed the pattern; both are kept. */
    BESIDE
  }

  /** A change and the page after it. */
  record Changed(End end, WorkPage page) {}

  /**
   * Changes a section by its fields.
   *
   * @param revision of the pattern that the person saw
   * @param typed text by field
   */
  Changed change(Ask ask, String revision, int section, Map<String, String> typed)
      throws IOException {
    PatternDesk.Open open = open(ask);
    Section changed;
    try {
      changed = fields(ask, planned(ask)).change(section(open.pattern(), section), typed);
    } catch (SectionFields.WrongField e) {
      return wrong(ask, section, typed, e.key(), e.getMessage());
    }
    Pattern before = open.pattern();
    Pattern after = before.withSection(section, s -> changed);
    if (after.equals(before)) {
      return new Changed(End.DONE, page(ask, new Remark("Nothing changed.", "", "")));
    }
    try {
      return save(ask, revision, before, after, "Changed and saved.");
    } catch (RefusedException e) {
      List<String> keys = fields(ask, planned(ask)).changed(section(before, section), typed);
      return wrong(ask, section, typed, keys.size() == 1 ? keys.get(0) : "", e.getMessage());
    }
  }

  /** Changes anything of a pattern by its form, or does what a button of the form says. */
  Changed change(Ask ask, String revision, Map<String, List<String>> typed) throws IOException {
    Pattern before = open(ask).pattern();
    Form form = PatternForm.of(Draft.of(before), ask.unit());
    form.hiddenAct(
        "add", draft -> PatternForm.added(draft, first(typed, "shape"), first(typed, "place")));
    Form.Sent sent = form.send(typed);
    Pattern after = sent.draft().pattern().orElse(before);
    String wrong = sent.why().values().stream().findFirst().orElse("");
    if (!after.equals(before)) {
      Changed changed = save(ask, revision, before, after, "Changed and saved.");
      return wrong.isEmpty() || changed.end() != End.DONE
          ? changed
          : new Changed(End.WRONG, marked(changed.page(), sent));
    }
    if (wrong.isEmpty()) {
      return new Changed(End.DONE, page(ask, new Remark("Nothing changed.", "", "")));
    }
    String notice = sent.why().getOrDefault("", "");
    WorkPage page =
        page(
            ask,
            new Remark(
                "Not changed: " + wrong + ".",
                notice.isEmpty() ? "" : "Not changed: " + notice + ".",
                ""));
    return new Changed(End.WRONG, marked(page, sent));
  }

  private static WorkPage marked(WorkPage page, Form.Sent sent) {
    return page.with(
        each -> each.withPanel(new PatternPanel(Form.marked(each.panel().groups(), sent))));
  }

  private static String first(Map<String, List<String>> typed, String key) {
    return typed.getOrDefault(key, List.of("")).get(0);
  }

  /**
   * Makes a new pattern of the person's own.
   *
   * @param begin a shape for its first section, or the name of a pattern to start from
   */
  Changed make(Ask ask, String title, String begin) throws IOException {
    try {
      Pattern pattern =
          PatternForm.SHAPES.contains(begin)
              ? PatternForm.begun(title, begin).pattern().orElse(null)
              : Draft.of(open(ask.withPattern(begin)).pattern())
                  .with("title", title)
                  .pattern()
                  .orElse(null);
      if (pattern == null) {
        throw new IllegalArgumentException("a title takes 1 to 80 characters on one line");
      }
      PatternDesk.Open made = patterns.create(pattern);
      return new Changed(
          End.DONE,
          page(
              ask.withPattern(made.name()),
              new Remark("New pattern, saved as " + made.name() + ".", "", "")));
    } catch (IllegalArgumentException e) {
      return new Changed(
          End.WRONG,
          page(
              ask,
              new Remark(
                  "No new pattern: " + e.getMessage() + ".",
                  "No new pattern was made: " + e.getMessage() + ".",
                  "")));
    }
  }

  /** The page as it would be with fields typed otherwise; nothing is saved. */
  Changed tried(Ask ask, OptionalInt section, Map<String, String> typed) {
    Remark trial = new Remark("Not saved yet.", "", "");
    if (section.isEmpty()) {
      return new Changed(End.DONE, page(ask, trial));
    }
    int index = section.getAsInt();
    Section changed;
    try {
      changed = fields(ask, planned(ask)).change(section(open(ask).pattern(), index), typed);
    } catch (SectionFields.WrongField e) {
      return wrong(ask, index, typed, e.key(), e.getMessage());
    }
    return new Changed(
        End.DONE,
        page(
            ask,
            trial,
            request ->
                Planning.plan(
                    workspace,
                    request,
                    step -> {},
                    this::begin,
                    before -> before.withSection(index, s -> changed))));
  }

  /** The handles of a section, if one is asked for, and of the part line. */
  List<HandleMark> handles(Ask ask, OptionalInt section) {
    Optional<Plan> plan = placed(ask);
    if (plan.isEmpty()) {
      return List.of();
    }
    PageDrawings drawn = drawingsOn(plan.get().head()).join();
    List<HandleMark> marks = new ArrayList<>();
    if (section.isPresent()) {
      String name = section(plan.get().pattern(), section.getAsInt()).name();
      for (Handle handle : Handles.of(workspace, plan.get(), section.getAsInt(), drawn)) {
        marks.add(HandleMark.of(handle, name, ask.unit()));
      }
    }
    Handles.ofPartLine(plan.get().head(), drawn)
        .ifPresent(handle -> marks.add(HandleMark.of(handle, "", ask.unit())));
    return marks;
  }

  private static Section section(Pattern pattern, int wanted) {
    if (wanted < 0 || wanted >= pattern.sections().size()) {
      throw new NoSuchElementException("There is no section " + (wanted + 1) + ".");
    }
    return pattern.sections().get(wanted);
  }

  private Plan planned(Ask ask) {
    return placed(ask).orElseThrow(() -> new NoSuchElementException("There is no plan to change."));
  }

  private static SectionFields fields(Ask ask, Plan plan) {
    return new SectionFields(PageWriter.dimensions(plan), ask.unit());
  }

  /** A changed pattern is none; nothing was saved. */
  private static final class RefusedException extends RuntimeException {
    private static final long serialVersionUID = 1;

    RefusedException(IllegalArgumentException why) {
      super(why.getMessage(), why);
    }
  }

  private Changed save(Ask ask, String revision, Pattern before, Pattern after, String said)
      throws IOException {
    PatternDesk.Saved saved;
    try {
      saved = patterns.save(ask.pattern(), revision, after);
    } catch (IllegalArgumentException e) {
      throw new RefusedException(e);
    }
    if (saved.beside()) {
      return beside(ask, saved);
    }
    steps.done(saved.open().name(), new Step(Aspect.PATTERN, ask, before));
    return changed(ask, saved, said);
  }

  private Changed changed(Ask ask, PatternDesk.Saved saved, String said) {
    boolean copied = !saved.open().name().equals(ask.pattern());
    String notice =
        copied
            ? "You now work on a copy of your own, saved as \""
                + saved.open().name()
                + "\"; the shipped pattern stays as it is."
            : "";
    return new Changed(
        End.DONE, page(ask.withPattern(saved.open().name()), new Remark(said, notice, "")));
  }

  private Changed beside(Ask ask, PatternDesk.Saved saved) {
    return new Changed(
        End.BESIDE,
        page(
            ask,
            new Remark(
                "Not saved over the other change.",
                "This pattern was changed elsewhere after this page was shown, so your change was"
                    + " not saved over it. This page now shows the other change; yours is kept as"
                    + " \""
                    + saved.open().name()
                    + "\".",
                saved.open().name())));
  }

  private Changed wrong(
      Ask ask, int section, Map<String, String> typed, String key, String message) {
    WorkPage page =
        page(ask, new Remark("Not changed: " + message + ".", key.isEmpty() ? message : "", ""));
    return new Changed(
        End.WRONG,
        page.with(each -> marked(each, section, key, typed.getOrDefault(key, ""), message)));
  }

  private static WorkPage marked(
      WorkPage page, int section, String key, String typed, String message) {
    List<Card> cards = new ArrayList<>(page.cards());
    Card card = cards.get(section);
    cards.set(
        section,
        card.withFields(
            card.fields().stream()
                .map(f -> f.key().equals(key) ? f.wrong(typed, message) : f)
                .toList()));
    return page.withCards(cards);
  }

  /**
   * Wears the part elsewhere, as a step that can be taken back.
   *
   * @param part in the words of an {@link Ask}
   */
  Changed movePart(Ask ask, String part) {
    return shown(ask, Aspect.PART, ask.withPart(part), "Part moved.");
  }

  /**
   * Does what a button beside a problem says, as a step that can be taken back.
   *
   * @param words of a remedy that the plan has
   * @throws NoSuchElementException when it has none of these words; nothing is then changed
   */
  Changed cure(Ask ask, String revision, String words) throws IOException {
    Remedy remedy =
        page(ask).clocked().get().looks().stream()
            .flatMap(look -> look.remedies().stream())
            .filter(each -> each.words().equals(words))
            .findFirst()
            .orElseThrow(
                () ->
                    new NoSuchElementException(
                        "The problem that this would cure is no longer there. Load the page"
                            + " again."));
    String said = "Done: " + words + ".";
    if (remedy instanceof Remedy.TakeOut change) {
      return shown(ask, Aspect.WORKING, ask.withOut(change.way()), said);
    } else if (remedy instanceof Remedy.WorkTogether change) {
      return shown(ask, Aspect.WORKING, ask.withHands(change.hands()), said);
    } else if (remedy instanceof Remedy.PlanAtPace change) {
      return shown(ask, Aspect.PACE, ask.withPace(change.pace()), said);
    } else if (remedy instanceof Remedy.LeaveOutUntilItFits) {
      return fit(ask, revision, new Limits(Optional.of(WHOLE_DAY), Optional.empty()));
    }
    Pattern before = open(ask).pattern();
    try {
      return save(ask, revision, before, ((Remedy.OfSection) remedy).applied(before), said);
    } catch (RefusedException e) {
      return refused(ask, e.getMessage());
    }
  }

  /** Shows the page otherwise, as a step that can be taken back; the pattern stays as it is. */
  private Changed shown(Ask before, Aspect aspect, Ask after, String said) {
    steps.done(before.pattern(), new Step(aspect, before, open(before).pattern()));
    return new Changed(End.DONE, page(after, new Remark(said, "", "")));
  }

  private Changed refused(Ask ask, String why) {
    String notice = "Not changed: " + why + ".";
    return new Changed(End.WRONG, page(ask, new Remark(notice, notice, "")));
  }

  /**
   * Leaves out the foils that show least until the pattern keeps within limits, and saves it.
   *
   * @param within minutes from the first parting until the last foil is out; may be empty
   * @param most foils; may be empty
   */
  Changed fit(Ask ask, String revision, String within, String most) throws IOException {
    Limits limits;
    try {
      Optional<Minutes> time =
          within.isEmpty()
              ? Optional.empty()
              : Optional.of(Minutes.parse(within.matches("[\\d.]+") ? within + " min" : within));
      if (!most.isEmpty() && !most.matches("\\d{1,4}")) {
        throw new IllegalArgumentException("\"" + most + "\" is not a number of foils");
      }
      limits =
          new Limits(time, most.isEmpty() ? Optional.empty() : Optional.of(Integer.parseInt(most)));
    } catch (IllegalArgumentException e) {
      return refused(ask, e.getMessage());
    }
    return limits.any()
        ? fit(ask, revision, limits)
        : refused(ask, "say a time, a number of foils, or both");
  }

  private Changed fit(Ask ask, String revision, Limits limits) throws IOException {
    Pattern before = open(ask).pattern();
    PlanOutcome outcome =
        Planning.plan(
            workspace, ask.request(today.get()).withLimits(limits), step -> {}, this::begin);
    Optional<Trimmed> trimmed = outcome.plan().flatMap(Plan::trimmed);
    if (trimmed.isEmpty()) {
      return refused(ask, "not even one foil keeps within that; allow more time");
    }
    List<Thinning.Choice> givenUp = trimmed.get().givenUp();
    if (givenUp.isEmpty()) {
      return new Changed(
          End.DONE, page(ask, new Remark("It fits as it is. Nothing changed.", "", "")));
    }
    String numbers =
        givenUp.stream()
            .map(choice -> choice.foil().number())
            .sorted()
            .map(String::valueOf)
            .collect(Collectors.joining(", "));
    return save(
        ask,
        revision,
        before,
        trimmed.get().pattern(),
        "Left out of the "
            + trimmed.get().before()
            + " foils, by their numbers till now: "
            + numbers
            + ".");
  }

  /** An earlier state of a pattern took the place of this one. */
  void broughtBack(Ask ask, Pattern before) {
    steps.done(ask.pattern(), new Step(Aspect.PATTERN, ask, before));
  }

  /**
   * Takes the last step back, or does again what was taken back.
   *
   * @throws IOException when the pattern cannot be saved; the step can then be taken later
   */
  Changed step(Ask ask, String revision, boolean back) throws IOException {
    String said = back ? "Taken back." : "Done again.";
    synchronized (stepping) {
      PatternDesk.Open open = open(ask);
      Optional<Step> next = steps.next(ask.pattern(), back);
      if (next.isEmpty()) {
        return new Changed(End.DONE, page(ask));
      }
      Step step = next.get();
      if (step.aspect() != Aspect.PATTERN) {
        steps.taken(ask.pattern(), back, step.now(ask, open.pattern()));
        return new Changed(End.DONE, page(step.applied(ask), new Remark(said, "", "")));
      }
      if (!open.revision().equals(revision)) {
        return new Changed(
            End.BESIDE,
            page(
                ask,
                new Remark(
                    "Nothing was changed.",
                    "This pattern was changed elsewhere after this page was shown. The page now"
                        + " shows it as it is; press again if you still want to.",
                    "")));
      }
      PatternDesk.Saved saved = patterns.save(ask.pattern(), revision, step.pattern());
      if (saved.beside()) {
        return beside(ask, saved);
      }
      if (saved.open().name().equals(ask.pattern())) {
        steps.taken(ask.pattern(), back, step.now(ask, open.pattern()));
      } else {
        steps.done(saved.open().name(), step.now(ask, open.pattern()));
      }
      return changed(ask, saved, said);
    }
  }
}
