package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.app.SheetKind;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
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
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the server lets through, and what becomes of changes. */
class PageServerTest {
  @TempDir Path folder;
  private PageServer server;
  private final HttpClient client = HttpClient.newHttpClient();

  @BeforeEach
  void start() {
    server = PageServer.start(PageTrial.MADE.elsewhere(folder), () -> LocalDate.of(2026, 12, 1), 0);
  }

  @AfterEach
  void stop() {
    server.stop();
  }

  private HttpResponse<String> get(String path) throws IOException, InterruptedException {
    return client.send(
        HttpRequest.newBuilder(URI.create(server.address()).resolve(path)).build(),
        BodyHandlers.ofString());
  }

  private HttpResponse<String> post(String path, Map<String, String> form)
      throws IOException, InterruptedException {
    String body =
        form.entrySet().stream()
            .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
            .collect(Collectors.joining("&"));
    return client.send(
        HttpRequest.newBuilder(URI.create(server.address()).resolve(path))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(BodyPublishers.ofString(body))
            .build(),
        BodyHandlers.ofString());
  }

  private static String hidden(String html, String name) {
    Matcher matcher = Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(html);
    assertTrue(matcher.find(), name);
    return matcher.group(1);
  }

  /** One request as bytes, for what a well-behaved client will not send. */
  private String raw(String request) throws IOException {
    try (Socket socket =
        new Socket(InetAddress.getLoopbackAddress(), URI.create(server.address()).getPort())) {
      OutputStream out = socket.getOutputStream();
      out.write(request.getBytes(StandardCharsets.ISO_8859_1));
      out.flush();
      InputStream in = socket.getInputStream();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void thePageTellsItsCharsetAndForbidsWhatIsNotItsOwn() throws Exception {
    HttpResponse<String> page = get("/");
    assertEquals(200, page.statusCode());
    assertEquals("text/html;charset=utf-8", type(page));
    String policy = page.headers().firstValue("Content-Security-Policy").orElse("");
    assertTrue(policy.startsWith("default-src 'none'; script-src 'self'; style-src 'self'"));
    assertFalse(policy.contains("unsafe"), policy);
    assertEquals("nosniff", page.headers().firstValue("X-Content-Type-Options").orElse(""));
    assertFalse(page.body().contains("<style"), "a style inside the page");
    assertFalse(page.body().contains(" style="), "a style inside the page");
    assertFalse(page.body().contains(" onclick="), "a script inside the page");
  }

  @Test
  void anotherHostNameIsRefused() throws IOException {
    assertTrue(
        raw("GET / HTTP/1.1\r\nHost: foils.example\r\nConnection: close\r\n\r\n")
            .startsWith("HTTP/1.1 403"));
    assertTrue(
        raw("GET /assets/page.css HTTP/1.1\r\nHost: LocalHost:1\r\nConnection: close\r\n\r\n")
            .startsWith("HTTP/1.1 200"));
  }

  @Test
  void anotherSitesFormIsRefused() throws IOException {
    assertTrue(
        raw(String.join(
                "\r\n",
                "GET / HTTP/1.1",
                "Host: localhost",
                "Origin: http://a.example",
                "Connection: close",
                "",
                ""))
            .startsWith("HTTP/1.1 403"));
  }

  @Test
  void pathsLeadNowhereElse() throws Exception {
    for (String path :
        new String[] {
          "/assets/..%2f..%2fpage.jte",
          "/assets/%2e%2e/%2e%2e/etc/passwd",
          "/assets//etc/passwd",
          "/?pattern=..%2F..%2Fetc%2Fpasswd",
          "/?pattern=" + URLEncoder.encode(folder.toString(), StandardCharsets.UTF_8),
          "/?guest=..%2Fguest-07",
          "/drawn/..%2F..%2Fpage/1.svg",
          "/drawn/00/1.exe",
          "/sheets?sheet=..%2Fmap&pattern=dark-rim",
          "/?pace=nobody"
        }) {
      int status = get(path).statusCode();
      assertTrue(status == 400 || status == 404, path + " gave " + status);
    }
  }

  @Test
  void aChangeNeedsTheToken() throws Exception {
    Map<String, String> form = Map.of("pattern", "dark-rim", "slice", "9");
    assertEquals(403, post("/section/0", form).statusCode());
    assertEquals(403, post("/undo", Map.of("token", "0".repeat(48))).statusCode());
    assertFalse(Files.exists(folder.resolve("patterns")));
  }

  @Test
  void aRequestThatIsTooLargeIsRefused() throws Exception {
    int status = post("/section/0", Map.of("slice", "9".repeat(100_000))).statusCode();
    assertTrue(status == 413 || status == 403, "gave " + status);
    assertFalse(Files.exists(folder.resolve("patterns")));
  }

  private static String type(HttpResponse<String> answer) {
    return answer.headers().firstValue("Content-Type").orElse("");
  }

  private Map<String, String> form(String html, String field, String value) {
    return Map.of(
        "token",
        hidden(html, "token"),
        "revision",
        hidden(html, "revision"),
        "pattern",
        hidden(html, "pattern"),
        "guest",
        hidden(html, "guest"),
        field,
        value);
  }

  @Test
  void aChangeOfAShippedPatternIsSavedAsACopy() throws Exception {
    String page = get("/").body();
    HttpResponse<String> changed = post("/section/0", form(page, "slice", "0.4 in"));
    assertEquals(200, changed.statusCode());
    assertEquals("dark-rim-own", hidden(changed.body(), "pattern"));
    String saved = Files.readString(folder.resolve("patterns/dark-rim-own.json"));
    assertTrue(saved.contains("\"slice\": \"10.16 mm\""), saved);
    HttpResponse<String> undone = post("/undo", form(changed.body(), "nothing", ""));
    assertEquals(200, undone.statusCode());
    assertTrue(
        Files.readString(folder.resolve("patterns/dark-rim-own.json"))
            .contains("\"slice\": \"12 mm\""));
    HttpResponse<String> redone = post("/redo", form(undone.body(), "nothing", ""));
    assertEquals(saved, Files.readString(folder.resolve("patterns/dark-rim-own.json")));
    assertEquals(200, redone.statusCode());
    try (Stream<Path> kept = Files.list(folder.resolve("patterns/.kept/dark-rim-own.json"))) {
      assertEquals(2, kept.count());
    }
  }

  @Test
  void theSecondOfTwoTabsIsRefusedAndBothAreKept() throws Exception {
    String own = post("/section/0", form(get("/").body(), "slice", "11")).body();
    String first = post("/section/0", form(own, "slice", "10")).body();
    HttpResponse<String> second = post("/section/0", form(own, "angle", "40"));
    assertEquals(409, second.statusCode());
    assertTrue(second.body().contains("role=\"alert\""));
    assertEquals(hidden(first, "revision"), hidden(second.body(), "revision"));
    assertTrue(
        Files.readString(folder.resolve("patterns/dark-rim-own.json"))
            .contains("\"slice\": \"10 mm\""));
    assertTrue(
        Files.readString(folder.resolve("patterns/dark-rim-own-other.json"))
            .contains("\"angle\": \"40 deg\""));
  }

  @Test
  void aStepThatCannotBeSavedIsNotLost() throws Exception {
    Path own = folder.resolve("patterns/dark-rim-own.json");
    String page = post("/section/0", form(get("/").body(), "slice", "11")).body();
    page = post("/section/0", form(page, "slice", "10")).body();
    Path kept = folder.resolve("patterns/.kept/dark-rim-own.json");
    Path aside = Files.move(kept, folder.resolve("aside"));
    Files.writeString(kept, "a file where a folder must be");
    assertEquals(500, post("/undo", form(page, "nothing", "")).statusCode());
    assertTrue(Files.readString(own).contains("\"slice\": \"10 mm\""));
    Files.delete(kept);
    Files.move(aside, kept);
    page = post("/undo", form(get("/?pattern=dark-rim-own").body(), "nothing", "")).body();
    assertTrue(Files.readString(own).contains("\"slice\": \"11 mm\""));
    page = post("/undo", form(page, "nothing", "")).body();
    assertTrue(Files.readString(own).contains("\"slice\": \"12 mm\""));
    page = post("/redo", form(page, "nothing", "")).body();
    post("/redo", form(page, "nothing", ""));
    assertTrue(Files.readString(own).contains("\"slice\": \"10 mm\""));
  }

  @Test
  void bringingAStateBackIsAStepLikeAnother() throws Exception {
    Path own = folder.resolve("patterns/dark-rim-own.json");
    String page = post("/section/0", form(get("/").body(), "slice", "11")).body();
    post("/section/0", form(page, "slice", "10"));
    String earlier = get("/earlier?kind=pattern&name=dark-rim-own").body();
    Map<String, String> back =
        Map.of(
            "token", hidden(earlier, "token"),
            "kind", "pattern",
            "name", "dark-rim-own",
            "now", hidden(earlier, "now"),
            "number", "1");
    assertEquals(200, post("/earlier", back).statusCode());
    assertTrue(Files.readString(own).contains("\"slice\": \"12 mm\""));
    post("/undo", form(get("/?pattern=dark-rim-own").body(), "nothing", ""));
    assertTrue(Files.readString(own).contains("\"slice\": \"10 mm\""));
  }

  @Test
  void aHouseThatIsKeptBesideCanBeOpenedAndPlannedWith() throws Exception {
    String shown = get("/house").body();
    Map<String, String> first = form(shown, "paces[0].times.foil.usual", "0.35");
    Map<String, String> second = form(shown, "paces[0].times.foil.usual", "0.45");
    assertEquals(200, post("/house", first).statusCode());
    HttpResponse<String> refused = post("/house", second);
    assertEquals(409, refused.statusCode());
    assertTrue(refused.body().contains("Open practice-room-other"), refused.body());
    String query = "?pattern=dark-rim&house=practice-room-other";
    String house = get("/house" + query).body();
    assertTrue(house.contains("value=\"0.45\""), "the other change is not shown");
    assertEquals(200, post("/house", form(house, "house", "practice-room-other")).statusCode());
    String plan = get("/" + query).body();
    assertTrue(options(plan, "pick-house").contains("practice-room-other"));
    assertEquals(404, get("/?house=..%2Fpractice-room").statusCode());
    assertEquals(200, get("/work?pace=nobody&house=practice-room-other").statusCode());
  }

  @Test
  void whatCannotStandInAFieldIsToldThereAndChangesNothing() throws Exception {
    String page = get("/").body();
    for (String[] wrong :
        new String[][] {
          {"slice", "twelve"},
          {"slice", "0"},
          {"angle", "200"},
          {"slices", "0"},
          {"inset", "-3"},
          {"slice", "120"},
          {"slices", "3.5"}
        }) {
      HttpResponse<String> answer = post("/section/0", form(page, wrong[0], wrong[1]));
      assertEquals(422, answer.statusCode(), wrong[0] + " " + wrong[1]);
      assertTrue(answer.body().contains("field-0-" + wrong[0] + "-error"), wrong[0]);
    }
    assertFalse(Files.exists(folder.resolve("patterns")));
  }

  @Test
  void aSectionWithoutHairIsToldThoughOthersReferToIt() throws Exception {
    HttpResponse<String> changed = post("/section/0", form(get("/").body(), "inset", "200"));
    assertEquals(200, changed.statusCode());
    assertTrue(changed.body().contains("has no hair"), "nothing is said of it");
    assertEquals(200, get("/?pattern=dark-rim-own").statusCode());
    post("/undo", form(changed.body(), "nothing", ""));
    assertFalse(get("/?pattern=dark-rim-own").body().contains("has no hair"));
  }

  @Test
  void aDamagedDocumentIsToldWithItsFileLineAndCure() throws Exception {
    Files.createDirectories(folder.resolve("patterns"));
    Files.writeString(
        folder.resolve("patterns/mine.json"), "{\n  \"kind\": \"pattern\",\n  oops\n}\n");
    HttpResponse<String> answer = get("/?pattern=mine");
    assertEquals(303, answer.statusCode());
    HttpResponse<String> told = get(answer.headers().firstValue("Location").orElseThrow());
    assertEquals(200, told.statusCode());
    assertTrue(told.body().contains("mine.json. Line 3: "), told.body());
    assertEquals(200, get("/?pattern=dark-rim").statusCode());
  }

  @Test
  void aShareOfTheHeadStaysAShare() throws Exception {
    String page = get("/").body();
    post("/section/0", form(page, "inset", "28"));
    String saved = Files.readString(folder.resolve("patterns/dark-rim-own.json"));
    assertTrue(
        Pattern.compile("\"insetFromHairline\": \"0\\.0[45]\\d+ of around\"").matcher(saved).find(),
        saved);
  }

  @Test
  void sheetsComeAsFiles() throws Exception {
    String query = "?pattern=dark-rim&guest=guest-07";
    for (SheetKind kind : SheetKind.values()) {
      String drawn = get("/sheets/drawn" + query + "&sheet=" + kind.words()).body();
      Matcher picture = Pattern.compile("src=\"(/drawn/[0-9a-f]+/)1\\.svg\"").matcher(drawn);
      assertTrue(picture.find(), kind + "\n" + drawn);
      assertTrue(get(picture.group(1) + "1.svg").body().contains("<svg"), kind.words());
      // Every sheet is painted and printed in RendererAgreementTest; here, that it is sent as such.
      if (kind == SheetKind.MAP || kind == SheetKind.STEPS) {
        assertTrue(type(get(picture.group(1) + "1.png")).startsWith("image/png"), kind.words());
        assertTrue(get(picture.group(1) + "1.pdf").body().startsWith("%PDF"), kind.words());
      }
      assertEquals(404, get(picture.group(1) + "99.svg").statusCode());
    }
    assertEquals(404, get("/drawn/0123456789abcdef01234567/1.svg").statusCode());
    HttpResponse<String> entry = get("/visit.ics" + query + "&start=2026-12-02T09:30");
    assertEquals(200, entry.statusCode());
    assertTrue(entry.body().startsWith("BEGIN:VCALENDAR"), entry.body());
    assertEquals(400, get("/visit.ics" + query + "&start=soon").statusCode());
  }

  @Test
  void everyShippedPatternShowsOnEveryGuest() throws Exception {
    String page = get("/").body();
    for (String pattern : options(page, "pick-pattern")) {
      HttpResponse<String> shown = get("/?guest=guest-12&unit=in&pattern=" + pattern);
      assertEquals(200, shown.statusCode(), pattern);
      assertTrue(shown.body().contains("id='view-back'"), pattern);
    }
    for (String guest : options(page, "pick-guest")) {
      assertEquals(200, get("/?pattern=v-back&guest=" + guest).statusCode(), guest);
    }
  }

  private static java.util.List<String> options(String page, String id) {
    int from = page.indexOf("id=\"" + id + "\"");
    String part = page.substring(from, page.indexOf("</select>", from));
    return Pattern.compile("value=\"([^\"]*)\"")
        .matcher(part)
        .results()
        .map(m -> m.group(1))
        .toList();
  }
}
