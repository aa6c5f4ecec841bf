package foilwright.app;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What was made last, by what it was made of; the eldest is forgotten. Shared between threads. */
final class Recent<K, V> {
  private final Map<K, V> kept;

  /**
   * @param most how many are kept
   */
  Recent(int most) {
    kept =
        new LinkedHashMap<>(16, 0.75f, true) {
          private static final long serialVersionUID = 1;

          @Override
          protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
            return size() > most;
          }
        };
  }

  synchronized Optional<V> find(K key) {
    return Optional.ofNullable(kept.get(key));
  }

  synchronized void keep(K key, V value) {
    kept.put(key, value);
  }
}
