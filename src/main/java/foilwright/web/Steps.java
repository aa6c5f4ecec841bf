package foilwright.web;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What was done to documents and what was taken back, by the names of the documents, without limit
 * while the server runs. Safe for use by several threads.
 *
 * @param <T> what was there before a step
 */
final class Steps<T> {
  private static final class Both<T> {
    private final Deque<T> done = new ArrayDeque<>();
    private final Deque<T> takenBack = new ArrayDeque<>();

    Deque<T> from(boolean back) {
      return back ? done : takenBack;
    }
  }

  private final Map<String, Both<T>> all = new HashMap<>();

  private Both<T> of(String name) {
    return all.computeIfAbsent(name, n -> new Both<>());
  }

  /** Something was done; what was taken back before cannot be done again. */
  synchronized void done(String name, T before) {
    of(name).done.push(before);
    of(name).takenBack.clear();
  }

  synchronized boolean canUndo(String name) {
    return !of(name).done.isEmpty();
  }

  synchronized boolean canRedo(String name) {
    return !of(name).takenBack.isEmpty();
  }

  /**
   * What taking a step back, or doing it again, leads to. It stays the next until {@link #taken} is
   * told, so that a step that cannot be saved is not lost.
   */
  synchronized Optional<T> next(String name, boolean back) {
    return Optional.ofNullable(of(name).from(back).peek());
  }

  /**
   * The next step was taken.
   *
   * @param left what was there, to come back to
   */
  synchronized void taken(String name, boolean back, T left) {
    of(name).from(back).pop();
    of(name).from(!back).push(left);
  }
}
