package foilwright.app;

import java.util.Locale;

/** Names of files that the program writes. */
final class FileNames {
  private static final int LONGEST = 60;

  private FileNames() {}

  /**
   * A name that is safe in any file system, from that of a document: its last part without the
   * ending, in small letters, figures and hyphens.
   */
  static String of(String document) {
    String last = document.substring(document.replace('\\', '/').lastIndexOf('/') + 1);
    String safe =
        last.replaceFirst("\\.json$", "")
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^\\p{L}\\p{N}]+", "-")
            .replaceAll("^-|-$", "");
    int end = safe.offsetByCodePoints(0, Math.min(LONGEST, safe.codePointCount(0, safe.length())));
    return end == 0 ? "unnamed" : safe.substring(0, end);
  }
}
