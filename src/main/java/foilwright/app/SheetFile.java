package foilwright.app;

import java.util.Arrays;

/** A drawn sheet as the file it becomes. */
public final class SheetFile {
  private final String name;
  private final byte[] bytes;

  SheetFile(String name, byte[] bytes) {
    this.name = name;
    this.bytes = bytes;
  }

  /** File name with its ending. */
  public String name() {
    return name;
  }

  public byte[] bytes() {
    return Arrays.copyOf(bytes, bytes.length);
  }
}
