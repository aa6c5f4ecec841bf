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

  T get() {
    T known = value.get();
    if (known == null) {
      // Two threads may compute it twice; both get the one that came first.
      value.compareAndSet(null, source.get());
      known = value.get();
    }
    return known;
  }
}
