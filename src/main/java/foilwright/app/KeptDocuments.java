package foilwright.app;

import foilwright.document.ReadResult;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;

/**
 * Documents of one kind as they were read last. While a document's bytes stay the same, so does the
 * object that was read from them; the bytes are looked at each time.
 */
final class KeptDocuments<T> {
  private static final int MOST = 100;

  /** More than any document may have; a longer one is refused by its reader. */
  private static final int MOST_BYTES = 4 << 20;

  private record Kept<T>(ByteBuffer bytes, Found<T> found) {}

  private final Function<Path, ReadResult<T>> fromFile;
  private final Function<byte[], ReadResult<T>> fromBytes;
  private final Recent<String, Kept<T>> kept = new Recent<>(MOST);

  KeptDocuments(Function<Path, ReadResult<T>> fromFile, Function<byte[], ReadResult<T>> fromBytes) {
    this.fromFile = fromFile;
    this.fromBytes = fromBytes;
  }

  Found<T> file(String named, Path file) {
    byte[] bytes;
    try (InputStream in = Files.newInputStream(file)) {
      bytes = in.readNBytes(MOST_BYTES);
    } catch (IOException e) {
      // The reader says in words why it cannot be read.
      return new Found<>(named, fromFile.apply(file));
    }
    return text(named, bytes);
  }

  Found<T> text(String named, byte[] text) {
    ByteBuffer bytes = ByteBuffer.wrap(text);
    Optional<Kept<T>> before = kept.find(named);
    if (before.isPresent() && before.get().bytes().equals(bytes)) {
      return before.get().found();
    }
    Found<T> found = new Found<>(named, fromBytes.apply(text));
    kept.keep(named, new Kept<>(bytes, found));
    return found;
  }
}
