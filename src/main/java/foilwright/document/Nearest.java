package foilwright.document;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that was probably meant. */
final class Nearest {
  private Nearest() {}

  /**
   * The known word with the fewest changes (insert, remove, exchange, swap of neighbours; case does
   * not count), when no more than two or a third of the word are needed.
   */
  static Optional<String> find(String word, Collection<String> known) {
    String lower = word.toLowerCase(Locale.ROOT);
    if (lower.length() > 60) {
      return Optional.empty();
    }
    int most = Math.max(2, word.length() / 3);
    return known.stream()
        .filter(k -> distance(lower, k.toLowerCase(Locale.ROOT)) <= Math.min(most, k.length() - 1))
        .min(
            Comparator.<String>comparingInt(k -> distance(lower, k.toLowerCase(Locale.ROOT)))
                .thenComparing(Comparator.naturalOrder()));
  }

  /** Optimal string alignment distance. */
  static int distance(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      d[i][0] = i;
    }
    for (int j = 0; j <= b.length(); j++) {
      d[0][j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      for (int j = 1; j <= b.length(); j++) {
        int exchange = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(Math.min(d[i - 1][j] + 1, d[i][j - 1] + 1), d[i - 1][j - 1] + exchange);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
