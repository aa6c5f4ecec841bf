package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DocumentFilesTest {
  @TempDir Path folder;

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static String code(ReadResult<?> result) {
    assertEquals(1, result.problems().size());
    assertEquals(Place.WHOLE, result.problems().get(0).place());
    return result.problems().get(0).problem().code();
  }

  @Test
  void missingFileAndFolderAreProblems() {
    assertEquals("missing-file", code(Documents.readPattern(folder.resolve("none.json"))));
    assertEquals("missing-file", code(Documents.readGuest(folder.resolve("no/none.json"))));
    assertEquals("is-folder", code(Documents.readHouse(folder)));
  }

  @Test
  void aFileThatMayNotBeReadIsAProblem() throws IOException {
    Path file = folder.resolve("locked.json");
    Files.write(file, bytes("{}"));
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("---------"));
    assumeFalse(Files.isReadable(file), "this user may read everything");
    assertEquals("no-permission", code(Documents.readPattern(file)));
  }

  @Test
  void aNewDocumentIsWritten() throws IOException {
    Path file = folder.resolve("new/low.json");
    assertEquals(Optional.empty(), DocumentFiles.save(file, bytes("one")));
    assertArrayEquals(bytes("one"), Files.readAllBytes(file));
    assertEquals(List.of(), DocumentFiles.versions(file));
  }

  @Test
  void everyReplacedVersionIsKept() throws IOException {
    Path file = folder.resolve("low.json");
    for (int i = 1; i <= 12; i++) {
      DocumentFiles.save(file, bytes("version " + i));
    }
    assertArrayEquals(bytes("version 12"), Files.readAllBytes(file));
    List<Path> kept = DocumentFiles.versions(file);
    assertEquals(11, kept.size());
    for (int i = 1; i <= 11; i++) {
      assertArrayEquals(bytes("version " + i), Files.readAllBytes(kept.get(i - 1)));
    }
    assertEquals(Optional.empty(), DocumentFiles.save(file, bytes("version 12")));
    assertEquals(11, DocumentFiles.versions(file).size());
    assertEquals(List.of(), DocumentFiles.versions(folder.resolve("other.json")));
  }

  @Test
  void nothingElseIsLeftBehind() throws IOException {
    Path file = folder.resolve("low.json");
    Files.write(folder.resolve(".low.json.0.saving"), bytes("cut short by a power failure"));
    DocumentFiles.save(file, bytes("one"));
    DocumentFiles.save(file, bytes("two"));
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(
          List.of(".kept", ".low.json.0.saving", "low.json"),
          files.map(f -> f.getFileName().toString()).sorted().toList());
    }
  }

  @Test
  void permissionsStay() throws IOException {
    Path file = folder.resolve("low.json");
    DocumentFiles.save(file, bytes("one"));
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
    DocumentFiles.save(file, bytes("two"));
    assertEquals("rw-r--r--", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
  }

  @Test
  void aLinkStaysALink() throws IOException {
    Path real = folder.resolve("real.json");
    Path link = folder.resolve("link.json");
    DocumentFiles.save(real, bytes("one"));
    Files.createSymbolicLink(link, real);
    DocumentFiles.save(link, bytes("two"));
    assertTrue(Files.isSymbolicLink(link));
    assertArrayEquals(bytes("two"), Files.readAllBytes(real));
  }

  @Test
  void aFailedSaveLeavesTheDocument() throws IOException {
    Path blocked = folder.resolve("file");
    Files.write(blocked, bytes("not a folder"));
    assertThrows(
        IOException.class, () -> DocumentFiles.save(blocked.resolve("x.json"), bytes("1")));
    assertArrayEquals(bytes("not a folder"), Files.readAllBytes(blocked));
  }

  @Test
  void exactlyTheNewestHundredReplacedStatesAreKept() throws IOException {
    Path file = folder.resolve("often.json");
    for (int state = 1; state <= 101; state++) {
      DocumentFiles.save(file, ("state " + state).getBytes(StandardCharsets.UTF_8));
    }
    List<Path> kept = DocumentFiles.versions(file);
    assertEquals(100, kept.size());
    assertEquals("state 1", Files.readString(kept.get(0)));
    assertEquals("state 100", Files.readString(kept.get(99)));
    DocumentFiles.save(file, "state 102".getBytes(StandardCharsets.UTF_8));
    kept = DocumentFiles.versions(file);
    assertEquals(100, kept.size());
    assertEquals("state 2", Files.readString(kept.get(0)));
    assertEquals("state 101", Files.readString(kept.get(99)));
  }

  @Test
  void versionsThatLayBesideThoseOfOtherDocumentsAreFound() throws IOException {
    Path file = Files.writeString(folder.resolve("one.json"), "now");
    Path all = Files.createDirectories(folder.resolve(".kept"));
    Files.writeString(all.resolve("one.json.9"), "ninth");
    Files.writeString(all.resolve("one.json.10"), "tenth");
    Files.writeString(all.resolve("another-one.json.1"), "of another");
    List<Path> kept = DocumentFiles.versions(file);
    assertEquals(List.of(9, 10), kept.stream().map(DocumentFiles::number).toList());
    assertEquals("tenth", Files.readString(kept.get(1)));
    assertEquals(kept, DocumentFiles.versions(file));
  }
}
