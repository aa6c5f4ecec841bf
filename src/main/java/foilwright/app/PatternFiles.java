package foilwright.app;

import foilwright.document.DocumentFiles;
import foilwright.document.Documents;
import foilwright.pattern.Pattern;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** Patterns as documents of the person's own. */
public final class PatternFiles {
  private PatternFiles() {}

  /**
   * Saves a pattern and keeps what was there before.
   *
   * @return where the replaced document is now kept, if there was one
   * @throws IOException when the folder cannot be written; the document is then as it was
   */
  public static Optional<Path> save(Path file, Pattern pattern) throws IOException {
    return DocumentFiles.save(file, Documents.write(pattern));
  }
}
