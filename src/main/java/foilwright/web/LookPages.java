package foilwright.web;

import foilwright.app.Plan;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.util.Locale;
import java.util.NoSuchElementException;
import java.util.concurrent.CancellationException;

/** Answers what the look's panel asks. */
final class LookPages {
  private final Desk desk;
  private final Template template;
  private final LookDesk looks;

  /** Writes a template into an answer. */
  interface Template {
    void show(Context context, String name, Object page);
  }

  LookPages(Desk desk, int hairs, Template template) {
    looks = new LookDesk(hairs);
    this.desk = desk;
    this.template = template;
  }

  void register(JavalinConfig config) {
    config.routes.get("/look", unlessLeft(this::look));
    config.routes.get("/look/beside", unlessLeft(this::beside));
    config.routes.get("/look/done", this::done);
    config.routes.get("/look/leave", this::leave);
    config.routes.get("/look/picture/{name}", this::picture);
  }

  void stop() {
    looks.stop();
  }

  /** Nobody reads the answer to a look that was left for a newer one. */
  private static Handler unlessLeft(Handler handler) {
    return context -> {
      try {
        handler.handle(context);
      } catch (CancellationException e) {
        context.status(204);
      }
    };
  }

  private Plan plan(Ask ask) {
    return desk.plan(ask)
        .orElseThrow(() -> new NoSuchElementException("There is no plan to look at."));
  }

  private void look(Context context) {
    LookAsk ask = LookAsk.of(context::queryParam);
    template.show(context, "looked.jte", looks.look(plan(PageServer.ask(context)), ask));
  }

  private void beside(Context context) {
    Ask ask = PageServer.ask(context);
    String other = context.queryParam("other");
    if (other == null) {
      throw new NoSuchElementException("Choose a pattern to compare with first.");
    }
    template.show(
        context,
        "beside.jte",
        looks.beside(plan(ask), plan(ask.withPattern(other)), LookAsk.of(context::queryParam)));
  }

  private void done(Context context) {
    double done = looks.done(LookAsk.viewer(context::queryParam));
    context.result(String.format(Locale.ROOT, "%.2f", done));
  }

  private void leave(Context context) {
    looks.leave(LookAsk.viewer(context::queryParam));
    context.status(204);
  }

  private void picture(Context context) {
    context.contentType("image/png").result(looks.picture(context.pathParam("name")));
  }
}
