package foilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckCommandTest {
  @TempDir Path folder;

  private CommandRun run(String... args) {
    return CommandRun.in(folder, args);
  }

  private static void assertRefused(int code, String words, CommandRun run) {
    assertEquals(code, run.code(), run::err);
    String said = run.out() + run.err();
    assertTrue(said.contains(words), said);
    assertFalse(said.contains("\tat "), "a stack trace reached the user: " + said);
    assertFalse(said.contains("Exception"), said);
  }

  @Test
  void shippedDocumentsAreFoundByNameFromAnyFolder() {
    CommandRun run = run("check", "guest-07", "practice-room");
    assertEquals(0, run.code(), run.out());
    assertEquals("", run.err());
    assertTrue(run.out().contains("guest-07: guest, guest-07, nothing wrong"), run.out());
    assertTrue(run.out().contains("practice-room: house, practice room, nothing wrong"), run.out());
  }

  @Test
  void aPatternIsLaidOnAUsualHead() {
    CommandRun run = run("check", "fringe-veil");
    assertEquals(0, run.code(), run.out());
    assertTrue(
        run.out().matches("(?s)fringe-veil: pattern, Fringe veil, \\d+ foils on a usual head, .*"),
        run.out());
  }

  @Test
  void aMissingFileIsAFailureWithACure() {
    assertRefused(3, "there is no \"none.json\"", run("check", "none.json"));
    assertRefused(3, "there is no document called \"none\"", run("check", "none"));
  }

  @Test
  void aFolderIsSaidToBeOne() throws IOException {
    Files.createDirectory(folder.resolve("mine.json"));
    assertRefused(3, "is a folder", run("check", "mine.json"));
  }

  @Test
  void aFileThatMayNotBeReadIsSaid() throws IOException {
    Path file = Files.writeString(folder.resolve("mine.json"), "{}");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("---------"));
    assumeFalse(Files.isReadable(file), "this user may read everything");
    assertRefused(3, "may not be read", run("check", "mine.json"));
  }

  @Test
  void aFolderOfABareNameIsSaidToBeOne() throws IOException {
    Files.createDirectory(folder.resolve("mine"));
    assertRefused(3, "there is only a folder, no document called \"mine\"", run("check", "mine"));
  }

  @Test
  void aTapeThatNoHeadHasIsFoundInAGuest() throws IOException {
    Files.writeString(
        folder.resolve("mine.json"),
        """
        {
          "format": "foilwright guest 1",
          "number": "guest-44",
          "head": { "kind": "woman", "around": "22 in", "earToEar": "22 in" },
          "hair": { "length": "10 in" }
        }
        """);
    assertRefused(1, "line 4, column 61 (head.earToEar)", run("check", "mine.json"));
  }

  @Test
  void lengthsAsPeopleWriteThemAreToldHowToWrite() throws IOException {
    String guest =
        "{ \"format\": \"foilwright guest 1\", \"number\": \"guest-44\", \"head\": {},"
            + " \"hair\": { \"length\": \"%s\" } }";
    Files.writeString(folder.resolve("comma.json"), guest.formatted("30,5 cm"));
    assertRefused(1, "write 30.5 cm", run("check", "comma.json"));
    for (String length : new String[] {"1/2 in", "13 1/2 in", "13\u00bd in"}) {
      Files.writeString(folder.resolve("fraction.json"), guest.formatted(length));
      assertRefused(1, "as a decimal", run("check", "fraction.json"));
    }
    Files.writeString(folder.resolve("density.json"), guest.formatted("200 per cm2"));
    assertRefused(1, "\"per cm2\" is not a unit of a length", run("check", "density.json"));
  }

  @Test
  void curlyQuotesAndAMissingCommaAreShown() throws IOException {
    Files.writeString(
        folder.resolve("mine.json"), "{\n  \u201cformat\u201d: \"foilwright pattern 1\"\n}");
    assertRefused(
        1,
        "line 2, column 3: the writing cannot be read here, at '\u201c'",
        run("check", "mine.json"));
    assertRefused(1, "straight quotes", run("check", "mine.json"));
    Files.writeString(
        folder.resolve("mine.json"),
        "{\n  \"format\": \"foilwright pattern 1\"\n  \"title\": \"x\"\n}");
    assertRefused(
        1, "line 3, column 3: the writing cannot be read here, at '\"'", run("check", "mine.json"));
  }

  @Test
  void aHugeFileIsRefusedUnread() throws IOException {
    try (RandomAccessFile file = new RandomAccessFile(folder.resolve("big.json").toFile(), "rw")) {
      file.setLength(50_000_000);
    }
    assertRefused(1, "more than 1000000 bytes", run("check", "big.json"));
  }

  @Test
  void textThatIsNoDocumentSaysWhere() throws IOException {
    Files.writeString(
        folder.resolve("mine.json"), "{ \"format\": \"foilwright pattern 1\",\n  oops");
    assertRefused(1, "line 2", run("check", "mine.json"));
  }

  @Test
  void bytesThatAreNoTextAreRefused() throws IOException {
    Files.write(folder.resolve("mine.json"), new byte[] {(byte) 0xff, (byte) 0xfe, 0, 1});
    assertRefused(1, "problem in mine.json", run("check", "mine.json"));
  }

  @Test
  void everyDocumentIsCheckedAndTheWorstCounts() throws IOException {
    Files.writeString(folder.resolve("mine.json"), "[]", StandardCharsets.UTF_8);
    CommandRun run = run("check", "mine.json", "guest-07", "none.json");
    assertEquals(3, run.code());
    assertTrue(run.out().contains("guest-07: guest, guest-07, nothing wrong"), run.out());
  }

  @Test
  void aNameThatNoFileCanHaveIsNoSuchDocument() {
    assertRefused(3, "there is no document", run("check", "a\0b"));
  }

  @Test
  void withoutAFileItIsAUsageError() {
    assertRefused(2, "FILE", run("check"));
    assertRefused(2, "--help", run("check", "--nonsense", "x"));
    assertRefused(2, "command", run());
    assertRefused(2, "\"chekc\" is not a command", run("chekc"));
    assertRefused(2, "\"guest-07\" is not expected here", run("plan", "v-back", "guest-07"));
  }

  @Test
  void helpAndVersionGoToStandardOutput() {
    for (String[] args :
        new String[][] {{"--help"}, {"--version"}, {"check", "--help"}, {"patterns", "-h"}}) {
      CommandRun run = run(args);
      assertEquals(0, run.code());
      assertEquals("", run.err());
      assertFalse(run.out().isBlank());
    }
  }
}
