package foilwright.app;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Short names for content: the same for the same and, but for chance, for no other. */
public final class Mark {
  private static final int BYTES = 12;

  private Mark() {}

  /** The mark of some bytes: 24 hexadecimal digits, the first half of them of a SHA-256 digest. */
  public static String of(byte[] content) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(content);
      return HexFormat.of().formatHex(digest, 0, BYTES);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** The mark of a text. */
  public static String of(String text) {
    return of(text.getBytes(StandardCharsets.UTF_8));
  }
}
