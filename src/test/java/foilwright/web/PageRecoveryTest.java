package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import foilwright.app.Workspace;
import foilwright.document.Documents;
import foilwright.document.ReadResult;
import java.io.BufferedReader;
import java.io.IOException;
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
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is left of a person's work when the program, the disk or a right to write gives out. */
class PageRecoveryTest {
  private static final String OWN = "patterns/dark-rim-own.json";

  @TempDir Path folder;
  private final HttpClient client = HttpClient.newHttpClient();

  private HttpResponse<String> get(String address) throws IOException, InterruptedException {
    return client.send(
        HttpRequest.newBuilder(URI.create(address)).build(), BodyHandlers.ofString());
  }

  private static HttpRequest slice(String address, String page, String millimetres) {
    Map<String, String> form = new HashMap<>();
    for (String name : List.of("token", "revision", "pattern", "guest")) {
      Matcher hidden = Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(page);
      assertTrue(hidden.find(), name);
      form.put(name, hidden.group(1));
    }
    form.put("slice", millimetres);
    return HttpRequest.newBuilder(URI.create(address).resolve("/section/0"))
        .header("Content-Type", "application/x-www-form-urlencoded")
        .POST(
            BodyPublishers.ofString(
                form.entrySet().stream()
                    .map(
                        e ->
                            e.getKey()
                                + "="
                                + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
                    .collect(Collectors.joining("&"))))
        .build();
  }

  private HttpResponse<String> send(HttpRequest change) throws IOException, InterruptedException {
    return client.send(change, BodyHandlers.ofString());
  }

  private static String problems(Path file) {
    ReadResult<?> read = Documents.readPattern(file);
    return read.value().isPresent() ? "" : file + ": " + read.problems();
  }

  /** Every document in the folder, kept ones too, by its path in it. */
  private static Map<String, String> documents(Path folder) throws IOException {
    Map<String, String> all = new HashMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file :
          files.filter(f -> Files.isRegularFile(f) && !f.endsWith("filling")).toList()) {
        all.put(folder.relativize(file).toString(), Files.readString(file));
      }
    }
    return all;
  }

  /** A program of its own, so that it can be ended as a power cut ends it. */
  private Process serve() throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            "-Djava.awt.headless=true",
            "foilwright.cli.Foilwright",
            "serve",
            "--port",
            "0",
            "--workspace",
            folder.toString())
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private static String address(Process program) throws IOException {
    BufferedReader out = program.inputReader(StandardCharsets.UTF_8);
    for (String line = out.readLine(); line != null; line = out.readLine()) {
      Matcher address = Pattern.compile("http://\\S+").matcher(line);
      if (address.find()) {
        return address.group();
      }
    }
    throw new IOException("the program ended without saying where its page is");
  }

  @Test
  void whatWasAnsweredOutlivesTheProgramBeingKilled() throws Exception {
    Process program = serve();
    try {
      String address = address(program);
      HttpResponse<String> answer = send(slice(address, get(address).body(), "11"));
      answer = send(slice(address, answer.body(), "10"));
      assertEquals(200, answer.statusCode());
      // Killed while further changes are under way.
      HttpRequest under = slice(address, answer.body(), "9");
      CompletableFuture<HttpResponse<String>> last =
          client.sendAsync(under, BodyHandlers.ofString());
      Thread.sleep(3);
      program.destroyForcibly();
      assertTrue(program.waitFor(10, TimeUnit.SECONDS));
      String kept = "10 mm";
      try {
        last.join();
        kept = "9 mm";
      } catch (CompletionException e) {
        // It never answered: both states are allowed.
      }
      String saved = Files.readString(folder.resolve(OWN));
      assertTrue(
          saved.contains("\"slice\": \"" + kept + "\"") || saved.contains("\"slice\": \"9 mm\""),
          saved);
      for (String name : documents(folder).keySet()) {
        if (name.endsWith(".json") || name.contains(".kept")) {
          assertEquals("", problems(folder.resolve(name)));
        }
      }
    } finally {
      program.destroyForcibly();
      program.waitFor(10, TimeUnit.SECONDS);
    }
    PageServer again = PageServer.start(Workspace.in(folder), () -> LocalDate.of(2026, 12, 1), 0);
    try {
      String page = get(again.address() + "?pattern=dark-rim-own").body();
      HttpResponse<String> next = send(slice(again.address(), page, "8"));
      assertEquals(200, next.statusCode());
      assertTrue(Files.readString(folder.resolve(OWN)).contains("\"slice\": \"8 mm\""));
      assertFalse(page.contains(".saving"), "a half-written file is offered");
    } finally {
      again.stop();
    }
  }

  /** A change that cannot be written is told in words, and everything stays as it was. */
  private void refusedInWords(Path where) throws Exception {
    PageServer server = PageServer.start(Workspace.in(where), () -> LocalDate.of(2026, 12, 1), 0);
    try {
      String page = get(server.address() + "?pattern=dark-rim-own").body();
      Map<String, String> before = documents(where);
      HttpResponse<String> answer = send(slice(server.address(), page, "7"));
      assertEquals(500, answer.statusCode());
      assertTrue(answer.body().contains("Nothing was changed"), answer.body());
      assertFalse(answer.body().contains("Exception"), answer.body());
      assertEquals(before, documents(where));
      String shown = get(server.address() + "?pattern=dark-rim-own").body();
      assertTrue(shown.contains("2 slices of 11 mm"), "the page no longer shows what is saved");
    } finally {
      server.stop();
    }
  }

  /** A folder with an own pattern in it. */
  private void begin(Path where) throws Exception {
    PageServer server = PageServer.start(Workspace.in(where), () -> LocalDate.of(2026, 12, 1), 0);
    try {
      String page = get(server.address()).body();
      assertEquals(200, send(slice(server.address(), page, "11")).statusCode());
    } finally {
      server.stop();
    }
  }

  @Test
  void aFullDiskIsToldAndSpoilsNothing() throws Exception {
    Path disk = Files.createDirectory(folder.resolve("disk"));
    assumeTrue(
        run("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", disk.toString()),
        "no small disk can be mounted here, so a full one is not tried");
    try {
      begin(disk);
      fill(disk.resolve("filling"));
      refusedInWords(disk);
    } finally {
      assertTrue(run("umount", disk.toString()), "the small disk stays mounted at " + disk);
    }
  }

  private static void fill(Path file) throws IOException {
    byte[] block = new byte[512];
    Arrays.fill(block, (byte) 'x');
    try (var out = Files.newOutputStream(file)) {
      while (true) {
        out.write(block);
      }
    } catch (IOException e) {
      // Full.
    }
  }

  private static boolean run(String... command) throws InterruptedException {
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void aFolderThatMayNotBeWrittenIsToldAndSpoilsNothing() throws Exception {
    begin(folder);
    Path patterns = folder.resolve("patterns");
    Files.setPosixFilePermissions(patterns, PosixFilePermissions.fromString("r-xr-xr-x"));
    try {
      boolean mounted = false;
      if (Files.isWritable(patterns)) {
        // A person who may write everywhere: only a disk that may not be written is one for her.
        mounted =
            run("mount", "--bind", patterns.toString(), patterns.toString())
                && run("mount", "-o", "remount,bind,ro", patterns.toString());
        assumeTrue(mounted, "nothing can be made read-only for this user, so it is not tried");
      }
      try {
        refusedInWords(folder);
      } finally {
        if (mounted) {
          assertTrue(run("umount", patterns.toString()));
        }
      }
    } finally {
      Files.setPosixFilePermissions(patterns, PosixFilePermissions.fromString("rwxr-xr-x"));
    }
  }

  @Test
  void twoTabsThatSaveAtOnceBothKeepTheirChange() throws Exception {
    PageServer server = PageServer.start(Workspace.in(folder), () -> LocalDate.of(2026, 12, 1), 0);
    try {
      String page = get(server.address()).body();
      String own = send(slice(server.address(), page, "11")).body();
      List<CompletableFuture<HttpResponse<String>>> both =
          Stream.of("8.5", "9.5")
              .map(
                  value ->
                      client.sendAsync(
                          slice(server.address(), own, value), BodyHandlers.ofString()))
              .toList();
      List<Integer> ends = both.stream().map(f -> f.join().statusCode()).sorted().toList();
      assertEquals(List.of(200, 409), ends);
      String saved = Files.readString(folder.resolve(OWN));
      String beside = Files.readString(folder.resolve("patterns/dark-rim-own-other.json"));
      assertNotEquals(saved, beside);
      for (String value : List.of("\"slice\": \"8.5 mm\"", "\"slice\": \"9.5 mm\"")) {
        assertTrue(saved.contains(value) != beside.contains(value), value);
      }
    } finally {
      server.stop();
    }
  }
}
