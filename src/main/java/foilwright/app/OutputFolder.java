package foilwright.app;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/**
 * A folder for sheets. Each file is written under a temporary name and then moved into place, so
 * that nothing half written is ever found under its name.
 */
public final class OutputFolder {
  private final Path folder;

  private OutputFolder(Path folder) {
    this.folder = folder;
  }

  /**
   * Opens a folder and makes it where it is missing.
   *
   * @throws IOException when it cannot be made, or is no folder
   */
  public static OutputFolder open(Path folder) throws IOException {
    Files.createDirectories(folder);
    return new OutputFolder(folder);
  }

  /**
   * Writes one file; a file of that name is replaced.
   *
   * @return where it lies
   * @throws IOException when it cannot be written; what was there before is then still there
   */
  public Path write(String name, byte[] bytes) throws IOException {
    Path target = folder.resolve(name);
    long process = ProcessHandle.current().pid();
    Path unfinished = folder.resolve("." + name + "." + process + ".unfinished");
    try {
      Files.write(unfinished, bytes);
      try {
        Files.move(
            unfinished,
            target,
            StandardCopyOption.ATOMIC_MOVE,
            StandardCopyOption.REPLACE_EXISTING);
      } catch (AtomicMoveNotSupportedException e) {
        Files.move(unfinished, target, StandardCopyOption.REPLACE_EXISTING);
      }
    } finally {
      Files.deleteIfExists(unfinished);
    }
    return target;
  }
}
