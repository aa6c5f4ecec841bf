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
 * answer, as the page asks it. No test of the usual run; {@code mvn -q -Pload test}.
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

  /** One person's changes; how long each took, milliseconds. */
  private static List<Double> edit(String address, int who, long begins) throws Exception {
    HttpClient client = HttpClient.newHttpClient();
    String ask = "?pattern=full-head-" + who + "&guest=" + GUESTS.get(who % GUESTS.size());
    String page =
        client
            .send(
                HttpRequest.newBuilder(URI.create(address + ask)).build(), BodyHandlers.ofString())
            .body();
    List<Double> took = new ArrayList<>();
    for (int i = 0; i < WARM_UP + EDITS; i++) {
      long at = begins + i * EVERY_MS + who * EVERY_MS / EDITORS;
      Thread.sleep(Math.max(0, at - System.currentTimeMillis()));
      Map<String, String> form = new HashMap<>();
      for (String name : List.of("token", "revision", "pattern", "guest")) {
        form.put(name, hidden(page, name));
      }
      form.put("slice", Integer.toString(3 + (i + who) % 3));
      form.put("have", "later");
      String body =
          form.entrySet().stream()
              .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
              .collect(Collectors.joining("&"));
      long from = System.nanoTime();
      HttpResponse<String> answer =
          client.send(
              HttpRequest.newBuilder(URI.create(address).resolve("/section/" + i % 3))
                  .header("Content-Type", "application/x-www-form-urlencoded")
                  .POST(BodyPublishers.ofString(body))
                  .build(),
              BodyHandlers.ofString());
      double ms = (System.nanoTime() - from) / 1e6;
      assertEquals(200, answer.statusCode());
      page = answer.body();
      if (i >= WARM_UP) {
        took.add(ms);
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
      List<Callable<List<Double>>> tasks = new ArrayList<>();
      for (int who = 0; who < EDITORS; who++) {
        int her = who;
        tasks.add(() -> edit(server.address(), her, begins));
      }
      List<Double> all = new ArrayList<>();
      for (Future<List<Double>> each : people.invokeAll(tasks)) {
        all.addAll(each.get());
      }
      double[] sorted = all.stream().mapToDouble(Double::doubleValue).toArray();
      Arrays.sort(sorted);
      System.out.printf(
          Locale.ROOT,
          "%d people, one change every %.0f s: median %.0f ms, 95 %% under %.0f ms, most %.0f ms"
              + " of %d changes%n",
          EDITORS,
          EVERY_MS / 1000.0,
          sorted[sorted.length / 2],
          sorted[(int) Math.ceil(0.95 * sorted.length) - 1],
          sorted[sorted.length - 1],
          sorted.length);
    } finally {
      people.shutdownNow();
      server.stop();
    }
  }
}
