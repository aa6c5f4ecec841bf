package foilwright.document;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Files of documents. A save writes beside the document under a temporary name and then moves it
 * into place, so that the document is whole at every moment; what it replaces is first kept in the
 * folder {@code .kept} beside it, there in a folder of the document's name, numbered upwards, with
 * the time at which it was saved. The newest {@value #MOST_VERSIONS} are kept.
 */
public final class DocumentFiles {
  /** How many replaced states of a document are kept. */
  public static final int MOST_VERSIONS = 100;

  private static final String KEPT = ".kept";
  private static final Pattern NUMBERED = Pattern.compile("(\\d{1,9})\\.json");

  private DocumentFiles() {}

  /** The bytes of a document, or a problem in the log. */
  static Optional<byte[]> load(Path file, ProblemLog problems) {
    String name = file.getFileName() == null ? file.toString() : file.getFileName().toString();
    try {
      if (Files.isDirectory(file)) {
        refuse(problems, "is-folder", "\"" + name + "\" is a folder", "name a document in it");
        return Optional.empty();
      }
      try (InputStream in = Files.newInputStream(file)) {
        return Optional.of(in.readNBytes(Limits.SIZE + 1));
      }
    } catch (NoSuchFileException e) {
      refuse(problems, "missing-file", "there is no \"" + name + "\"", "check the name");
    } catch (AccessDeniedException e) {
      refuse(
          problems,
          "no-permission",
          "\"" + name + "\" may not be read",
          "ask for the right to read it, or copy it to your own folder");
    } catch (IOException e) {
      refuse(
          problems,
          "not-readable",
          "\"" + name + "\" cannot be read from the disk",
          "check that the disk is there and try again");
    }
    return Optional.empty();
  }

  private static void refuse(ProblemLog problems, String code, String message, String cure) {
    problems.error(code, "", Place.WHOLE, message, cure);
  }

  /**
   * Saves a document and keeps what was there before. Nothing happens when the bytes are the same.
   *
   * @return where the replaced document is now kept, if there was one
   * @throws IOException when the folder cannot be written; the document is then as it was
   */
  public static Optional<Path> save(Path file, byte[] bytes) throws IOException {
    Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
    Path folder = target.getParent();
    Files.createDirectories(folder);
    boolean replaces = Files.exists(target);
    byte[] before = replaces ? Files.readAllBytes(target) : new byte[0];
    if (replaces && Arrays.equals(before, bytes)) {
      return Optional.empty();
    }
    Optional<Path> kept = Optional.empty();
    Path temporary = writeThrough(target, bytes);
    try {
      if (replaces) {
        kept = Optional.of(keep(target, before));
        copyPermissions(target, temporary);
      }
      Files.move(
          temporary, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(temporary);
    }
    return kept;
  }

  /** A new file beside the target, its bytes on the disk. */
  private static Path writeThrough(Path target, byte[] bytes) throws IOException {
    for (int number = 0; ; number++) {
      Path file = target.resolveSibling("." + target.getFileName() + "." + number + ".saving");
      try (FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
          channel.write(buffer);
        }
        channel.force(true);
        return file;
      } catch (FileAlreadyExistsException e) {
        // Left over from a save that was cut short, or another one under way: take the next.
      } catch (IOException e) {
        takeAway(file, e);
        throw e;
      }
    }
  }

  /** Takes away a file of which only a part could be written. */
  private static void takeAway(Path file, IOException why) {
    try {
      Files.deleteIfExists(file);
    } catch (IOException e) {
      why.addSuppressed(e);
    }
  }

  private static void copyPermissions(Path from, Path to) throws IOException {
    if (Files.getFileStore(from).supportsFileAttributeView(PosixFileAttributeView.class)) {
      Files.setPosixFilePermissions(to, Files.getPosixFilePermissions(from));
    }
  }

  private static Path keep(Path target, byte[] bytes) throws IOException {
    Path folder = keptOf(target);
    Files.createDirectories(folder);
    List<Path> earlier = versions(target);
    int number = earlier.isEmpty() ? 1 : 1 + number(earlier.get(earlier.size() - 1));
    while (true) {
      Path kept = folder.resolve(number + ".json");
      try {
        Files.write(kept, bytes, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        Files.setLastModifiedTime(kept, Files.getLastModifiedTime(target));
        for (Path old : earlier.subList(0, Math.max(0, earlier.size() + 1 - MOST_VERSIONS))) {
          Files.deleteIfExists(old);
        }
        return kept;
      } catch (FileAlreadyExistsException e) {
        number++;
      } catch (IOException e) {
        takeAway(kept, e);
        throw e;
      }
    }
  }

  /** Where the versions of one document are kept. */
  private static Path keptOf(Path target) {
    return target.resolveSibling(KEPT).resolve(target.getFileName());
  }

  /** The kept versions of a document, oldest first. */
  public static List<Path> versions(Path file) throws IOException {
    Path folder = keptOf(Files.exists(file) ? file.toRealPath() : file.toAbsolutePath());
    gather(folder);
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(kept -> NUMBERED.matcher(kept.getFileName().toString()).matches())
          .sorted(Comparator.comparingInt(DocumentFiles::number))
          .toList();
    }
  }

  /**
   * Takes versions into their document's folder that lay beside those of all others, as they once
   * did. What cannot be moved stays where it is.
   */
  private static void gather(Path folder) throws IOException {
    Path all = folder.getParent();
    if (!Files.isDirectory(all)) {
      return;
    }
    Pattern flat = Pattern.compile(Pattern.quote(folder.getFileName() + ".") + "(\\d{1,9})");
    List<Path> found;
    try (Stream<Path> files = Files.list(all)) {
      found = files.filter(f -> flat.matcher(f.getFileName().toString()).matches()).toList();
    }
    for (Path version : found) {
      Matcher name = flat.matcher(version.getFileName().toString());
      if (name.matches()) {
        try {
          Files.createDirectories(folder);
          Files.move(version, folder.resolve(name.group(1) + ".json"));
        } catch (FileAlreadyExistsException | AccessDeniedException e) {
          // It stays where it is.
        }
      }
    }
  }

  /**
   * The number of a kept version; it rises with every version of the document.
   *
   * @throws IllegalArgumentException when it is none
   */
  public static int number(Path kept) {
    Matcher name = NUMBERED.matcher(kept.getFileName().toString());
    if (!name.matches()) {
      throw new IllegalArgumentException(kept + " is no kept version of a document");
    }
    return Integer.parseInt(name.group(1));
  }
}
