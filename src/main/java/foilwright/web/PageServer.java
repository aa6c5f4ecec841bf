package foilwright.web;

import foilwright.app.DocumentKind;
import foilwright.app.Draft;
import foilwright.app.HeadModel;
import foilwright.app.Plan;
import foilwright.app.VisitEntry;
import foilwright.app.Workspace;
import foilwright.fall.FallSettings;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.HashMap;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;

/** The local web server. It listens to this machine alone. */
public final class PageServer {
  private static final String LOOPBACK = "127.0.0.1";
  private static final String PAGE_TYPE = "text/html; charset=utf-8";
  private static final long MOST_REQUEST_BYTES = 64 * 1024;

  /** A page with a hundred sections says so what it shows of each. */
  private static final int MOST_HEADER_BYTES = 32 * 1024;

  private final Desk desk;
  private final SheetPages sheets;
  private final DocumentPages documents;
  private final EarlierPages earlier;
  private final LookPages looks;
  private final Guard guard = new Guard();
  private final Assets assets = new Assets();

  /** One processor is left to changes while others wait for their clocks. */
  private final Semaphore clocks =
      new Semaphore(Math.max(1, Runtime.getRuntime().availableProcessors() - 1), true);

  private final TemplateEngine templates =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, PageServer.class.getClassLoader(), "foilwright.web.template");
  private final Javalin server;

  private PageServer(Workspace workspace, Supplier<LocalDate> today, int port, int hairs) {
    desk = new Desk(workspace, today, guard.changeToken());
    sheets = new SheetPages(desk, today, this::show);
    documents = new DocumentPages(workspace, today, guard.changeToken(), this::show);
    earlier =
        new EarlierPages(workspace, today, guard.changeToken(), this::show, this::tellBroughtBack);
    looks = new LookPages(desk, hairs, this::show);
    Thread first = new Thread(this::warmUp, "first page");
    first.setDaemon(true);
    first.start();
    try {
      server = Javalin.create(this::configure).start(LOOPBACK, port);
    } catch (JavalinBindException e) {
      throw new PortTakenException(port, e);
    }
  }

  /** Makes the first page while the server starts, so that a person need not wait for it. */
  private void warmUp() {
    templates.render("page.jte", desk.page(Ask.FIRST).clocked().get(), new StringOutput());
  }

  /**
   * Starts it.
   *
   * @param today the day it is, asked anew for every page
   * @param port 0 for any that is free
   * @throws PortTakenException when another program listens there
   */
  public static PageServer start(Workspace workspace, Supplier<LocalDate> today, int port) {
    return start(workspace, today, port, FallSettings.USUAL_HAIRS);
  }

  /**
   * Starts it with looks of no more than so many hairs, which come sooner and say less.
   *
   * @throws PortTakenException when another program listens there
   */
  static PageServer start(Workspace workspace, Supplier<LocalDate> today, int port, int hairs) {
    return new PageServer(workspace, today, port, hairs);
  }

  /** Another program listens at the port. */
  public static final class PortTakenException extends RuntimeException {
    private static final long serialVersionUID = 1;

    PortTakenException(int port, Throwable cause) {
      super("port " + port + " is taken", cause);
    }
  }

  /** Where its page is. */
  public String address() {
    return "http://" + LOOPBACK + ":" + server.port() + "/";
  }

  /** Stops when what it is doing is done. */
  public void stop() {
    looks.stop();
    server.stop();
  }

  private void configure(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.startup.startupWatcherEnabled = false;
    config.http.maxRequestSize = MOST_REQUEST_BYTES;
    config.http.defaultContentType = "text/plain; charset=utf-8";
    config.jetty.modifyHttpConfiguration(
        http -> {
          http.setSendServerVersion(false);
          http.setRequestHeaderSize(MOST_HEADER_BYTES);
        });
    config.jetty.modifyServer(jetty -> jetty.setStopTimeout(20_000));
    config.routes.before(guard::check);
    config.routes.get("/", this::first);
    config.routes.get("/work", this::work);
    config.routes.post("/later", this::later);
    config.routes.post("/try", this::tryOut);
    config.routes.get("/handles", this::handles);
    config.routes.post("/section/{index}", this::change);
    config.routes.post("/pattern", this::changePattern);
    config.routes.post("/patterns", this::makePattern);
    documents.route(config);
    config.routes.post("/part", this::movePart);
    config.routes.post("/cure", this::cure);
    config.routes.post("/fit", this::fit);
    config.routes.post("/undo", context -> step(context, true));
    config.routes.post("/redo", context -> step(context, false));
    sheets.register(config);
    earlier.register(config);
    config.routes.get("/head.json", this::head);
    looks.register(config);
    config.routes.get("/visit.ics", this::calendar);
    config.routes.get("/assets/{name}", assets::send);
    config.routes.exception(
        NoSuchElementException.class, (e, context) -> sorry(context, 404, e.getMessage()));
    config.routes.exception(
        HttpResponseException.class, (e, context) -> sorry(context, e.getStatus(), e.getMessage()));
    config.routes.exception(
        IOException.class,
        (e, context) -> sorry(context, 500, "The file could not be written. Nothing was changed."));
    config.routes.exception(
        Exception.class,
        (e, context) ->
            sorry(context, 500, "The program failed: " + e + ". This is a fault of the program."));
    config.routes.error(404, context -> sorry(context, 404, "There is no such page."));
  }

  private void tellBroughtBack(Ask ask, String name, Draft before) {
    if (before.kind() == DocumentKind.PATTERN) {
      before.pattern().ifPresent(pattern -> desk.broughtBack(ask.withPattern(name), pattern));
    } else {
      documents.broughtBack(before.kind(), name, before);
    }
  }

  static Ask ask(Context context) {
    return Ask.of(
        name -> {
          String form = context.formParam(name);
          return form != null ? form : context.queryParam(name);
        });
  }

  private void show(Context context, String template, Object page) {
    StringOutput html = new StringOutput(1 << 18);
    templates.render(template, page, html);
    context.contentType(PAGE_TYPE).result(html.toString());
  }

  /** How much of a page to send, by what the page that asks says that it shows. */
  private static Answer answer(Context context, boolean first) {
    return Answer.of(value(context, "have"), value(context, "large"), first);
  }

  private static String value(Context context, String name) {
    String form = context.formParam(name);
    String value = form != null ? form : context.queryParam(name);
    return value == null ? "" : value;
  }

  /** Sends the parts that have changed, or all where the page is made of other parts now. */
  private void showWork(Context context, WorkPage page) {
    String address = "/?" + page.ask().query();
    if (!Optional.ofNullable(context.header("HX-Current-URL")).orElse("").endsWith(address)) {
      context.header("HX-Push-Url", address);
    }
    Answer answer = answer(context, true).forParts(page.parts());
    if (answer.isPatch()) {
      context.header("HX-Reswap", "none");
      show(context, "patch.jte", page.withAnswer(answer));
    } else {
      show(context, "work.jte", page.clocked().get().withAnswer(answer));
    }
  }

  private void sorry(Context context, int status, String words) {
    if (context.res().isCommitted() || context.attribute("sorry") != null) {
      return;
    }
    context.attribute("sorry", true);
    context.status(status);
    show(context, "sorry.jte", words);
  }

  private void first(Context context) {
    Ask ask = ask(context);
    if (earlier.isDamaged(ask)) {
      context.redirect(EarlierPages.address(ask), HttpStatus.SEE_OTHER);
    } else {
      show(context, "page.jte", desk.page(ask).clocked().get());
    }
  }

  private void work(Context context) {
    if (earlier.isDamaged(ask(context))) {
      context.header("HX-Redirect", EarlierPages.address(ask(context)));
      return;
    }
    showWork(context, desk.page(desk.paced(ask(context))));
  }

  private void later(Context context) {
    clocks.acquireUninterruptibly();
    try {
      show(
          context,
          "later.jte",
          desk.page(ask(context)).clocked().get().withAnswer(answer(context, false)));
    } finally {
      clocks.release();
    }
  }

  private void change(Context context) throws IOException {
    Map<String, String> typed = new HashMap<>();
    context.formParamMap().forEach((name, values) -> typed.put(name, values.get(0)));
    String index = context.pathParam("index");
    if (!index.matches("\\d{1,4}")) {
      throw new BadRequestResponse("There is no such section.");
    }
    answer(context, desk.change(ask(context), revision(context), Integer.parseInt(index), typed));
  }

  private void changePattern(Context context) throws IOException {
    answer(context, desk.change(ask(context), revision(context), context.formParamMap()));
  }

  private void makePattern(Context context) throws IOException {
    answer(
        context,
        desk.make(
            ask(context),
            Optional.ofNullable(context.formParam("title")).orElse("").strip(),
            Optional.ofNullable(context.formParam("begin")).orElse("")));
  }

  private void tryOut(Context context) {
    Map<String, String> typed = new HashMap<>();
    context.formParamMap().forEach((name, values) -> typed.put(name, values.get(0)));
    answer(context, desk.tried(ask(context), section(context), typed));
  }

  private void movePart(Context context) {
    String to = Optional.ofNullable(context.formParam("to")).orElse("");
    answer(context, desk.movePart(ask(context), to));
  }

  private void cure(Context context) throws IOException {
    String words = Optional.ofNullable(context.formParam("cure")).orElse("");
    answer(context, desk.cure(ask(context), revision(context), words));
  }

  private void fit(Context context) throws IOException {
    answer(
        context,
        desk.fit(
            ask(context),
            revision(context),
            Optional.ofNullable(context.formParam("within")).orElse("").strip(),
            Optional.ofNullable(context.formParam("most")).orElse("").strip()));
  }

  private void handles(Context context) {
    show(context, "handles.jte", desk.handles(ask(context), section(context)));
  }

  private static OptionalInt section(Context context) {
    String index = value(context, "section");
    if (!index.matches("\\d{0,4}")) {
      throw new BadRequestResponse("There is no such section.");
    }
    return index.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(index));
  }

  private void step(Context context, boolean back) throws IOException {
    answer(context, desk.step(ask(context), revision(context), back));
  }

  private void answer(Context context, Desk.Changed changed) {
    context.status(
        switch (changed.end()) {
          case DONE -> 200;
          case WRONG -> 422;
          case BESIDE -> 409;
        });
    showWork(context, changed.page());
  }

  private static String revision(Context context) {
    return Optional.ofNullable(context.formParam("revision")).orElse("");
  }

  private void head(Context context) {
    Plan plan =
        desk.plan(ask(context)).orElseThrow(() -> new NoSuchElementException("There is no plan."));
    context.contentType("application/json; charset=utf-8").result(HeadModel.json(plan));
  }

  private void calendar(Context context) {
    String start = Optional.ofNullable(context.queryParam("start")).orElse("");
    LocalDateTime begins;
    try {
      begins = LocalDateTime.parse(start);
    } catch (DateTimeParseException e) {
      throw new BadRequestResponse("Choose the day and the hour of the visit first.");
    }
    Plan plan =
        desk.plan(ask(context)).orElseThrow(() -> new NoSuchElementException("There is no plan."));
    if (plan.times().map(t -> t.visits().isEmpty()).orElse(true)) {
      throw new NoSuchElementException("The plan has no visit in this way.");
    }
    context
        .contentType("text/calendar; charset=utf-8")
        .header("Content-Disposition", "attachment; filename=\"" + plan.name() + ".ics\"")
        .result(VisitEntry.calendar(plan, begins));
  }
}
