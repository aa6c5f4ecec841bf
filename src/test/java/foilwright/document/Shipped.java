package foilwright.document;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The documents in a folder, in the order of their names. */
final class Shipped {
  static final Path PATTERNS = Path.of("patterns");
  static final Path GUESTS = Path.of("shared/guests");
  static final Path HOUSES = Path.of("shared/house");

  private Shipped() {}

  static List<Path> in(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      List<Path> found = files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
      if (found.isEmpty()) {
        throw new IllegalStateException("no document in " + folder);
      }
      return found;
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
