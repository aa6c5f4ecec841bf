package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.app.Workspace;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Twenty people, each with a full head of 80 foils of her own on one of four guests, change
 * something every three seconds for a minute: measured on the loopback from request to whole
 * answer, as the page asks it, with what the page fetches afterwards. No test of the usual run;
 * {@code mvn -q -Pload test}.
 */
class ManyEditorsLoad {
  private static final int EDITORS = 20;
  private static final long EVERY_MS = 3000;
  private static final int EDITS = 20;
  private static final int WARM_UP = 5;
  private static final List<String> GUESTS = List.of("guest-07", "guest-12", "guest-07", "");

  @TempDir Path folder;

  private static String hidden(String page, String name) {
    Matcher matcher = Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(page);
    assertTrue(matcher.find(), name);
    return matcher.group(1);
  }

  private static final Pattern PART =
      Pattern.compile("id=\"([\\w-]+)\"(?: data-numbers=\"[^\"]*\")? data-mark=\"(\\w+)\"");

  /** What one person's page shows. */
  private static final class Shown {
    private final HttpClient client = HttpClient.newHttpClient();
    private final URI address;
    private final Map<String, String> marks = new HashMap<>();
    private final Map<String, String> now = new HashMap<>();

    Shown(String address, String query) throws Exception {
      this.address = URI.create(address);
      HttpRequest request = HttpRequest.newBuilder(this.address.resolve(query)).build();
      take(client.send(request, BodyHandlers.ofString()).body());
    }

    private void take(String answer) {
      PART.matcher(answer).results().forEach(part -> marks.put(part.group(1), part.group(2)));
      if (answer.contains("name=\"token\"")) {
        for (String name : List.of("token", "revision", "pattern", "guest")) {
          now.put(name, hidden(answer, name));
        }
      }
    }

    /** Sends a form as the page does; gives the milliseconds until the whole answer is there. */
    double send(String path, Map<String, String> typed) throws Exception {
      Map<String, String> form = new HashMap<>(now);
      form.putAll(typed);
      form.put("large", "view-back");
      form.put(
          "have",
          marks.entrySet().stream()
              .map(part -> part.getKey() + ":" + part.getValue())
              .collect(Collectors.joining(" ")));
      String body =
          form.entrySet().stream()
              .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
              .collect(Collectors.joining("&"));
      long from = System.nanoTime();
      HttpResponse<String> answer =
          client.send(
              HttpRequest.newBuilder(address.resolve(path))
                  .header("Content-Type", "application/x-www-form-urlencoded")
                  .POST(BodyPublishers.ofString(body))
                  .build(),
              BodyHandlers.ofString());
      double ms = (System.nanoTime() - from) / 1e6;
      assertEquals(200, answer.statusCode(), answer.body());
      take(answer.body());
      return ms;
    }
  }

  /** One person's changes; how long each took, milliseconds, and all that comes with it. */
  private static List<double[]> edit(String address, int who, long begins) throws Exception {
    String ask = "?pattern=full-head-" + who + "&guest=" + GUESTS.get(who % GUESTS.size());
    Shown shown = new Shown(address, ask);
    List<double[]> took = new ArrayList<>();
    for (int i = 0; i < WARM_UP + EDITS; i++) {
      long at = begins + i * EVERY_MS + who * EVERY_MS / EDITORS;
      Thread.sleep(Math.max(0, at - System.currentTimeMillis()));
      Map<String, String> typed = Map.of("slice", Integer.toString(3 + (i + who) % 3));
      double ms = shown.send("/section/" + i % 3, typed);
      double later = shown.send("/later", Map.of());
      if (i >= WARM_UP) {
        took.add(new double[] {ms, ms + later});
      }
    }
    return took;
  }

  @Test
  void twentyPeopleChangeAFullHeadEveryThreeSeconds() throws Exception {
    Path patterns = Files.createDirectories(folder.resolve("patterns"));
    String shipped = Files.readString(Path.of("patterns", "full-head-fine-weave.json"));
    for (int who = 0; who < EDITORS; who++) {
      Files.writeString(
          patterns.resolve("full-head-" + who + ".json"),
          shipped.replace("Full head, fine weave", "Full head " + who));
    }
    PageServer server = PageServer.start(Workspace.in(folder), () -> LocalDate.of(2026, 12, 1), 0);
    ExecutorService people = Executors.newFixedThreadPool(EDITORS);
    try {
      long begins = System.currentTimeMillis() + 5000;
      List<Callable<List<double[]>>> tasks = new ArrayList<>();
      for (int who = 0; who < EDITORS; who++) {
        int her = who;
        tasks.add(() -> edit(server.address(), her, begins));
      }
      List<double[]> all = new ArrayList<>();
      for (Future<List<double[]>> each : people.invokeAll(tasks)) {
        all.addAll(each.get());
      }
      System.out.printf(
          Locale.ROOT, "%d people, one change every %.0f s%n", EDITORS, EVERY_MS / 1000.0);
      tell("answer to a change", all.stream().mapToDouble(ms -> ms[0]).toArray());
      tell("with clocks and all views", all.stream().mapToDouble(ms -> ms[1]).toArray());
    } finally {
      people.shutdownNow();
      server.stop();
    }
  }

  private static void tell(String what, double[] took) {
    Arrays.sort(took);
    System.out.printf(
        Locale.ROOT,
        "%-26s median %.0f ms, 95 %% under %.0f ms, most %.0f ms of %d%n",
        what,
        took[took.length / 2],
        took[(int) Math.ceil(0.95 * took.length) - 1],
        took[took.length - 1],
        took.length);
  }
}
