package foilwright.fall;

import java.util.concurrent.CancellationException;

/**
 * Who follows a long calculation and may stop it.
 *
 * <p>It is called from several threads, with shares that need not rise.
 */
@FunctionalInterface
public interface Watch {
  /** Lets everything run to its end. */
  Watch NOBODY = share -> true;

  /**
   * Told now and then how much is done.
   *
   * @param share 0 to 1
   * @return whether to go on
   */
  boolean goOn(double share);

  /**
   * Tells how much is done.
   *
   * @throws CancellationException when the watcher wants no more
   */
  default void told(double share) {
    if (!goOn(share)) {
      throw new CancellationException("stopped on request");
    }
  }
}
