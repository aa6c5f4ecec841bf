package foilwright.head;

import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;

/** A value computed when it is first asked for; always the same for the same head. */
final class Lazy<T> {
  private final Supplier<T> source;
  private final AtomicReference<T> value = new AtomicReference<>();

  Lazy(Supplier<T> source) {
    this.source = source;
  }

  /** Two threads that ask at once wait for one computation. */
  T get() {
    T known = value.get();
    if (known == null) {
      synchronized (this) {
        known = value.get();
        if (known == null) {
          known = source.get();
          value.set(known);
        }
      }
    }
    return known;
  }
}
