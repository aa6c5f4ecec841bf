package foilwright.cli;

import java.io.PrintStream;
import java.util.function.Consumer;

/**
 * Says what is being done once a command has run for half a second, and each step from then on; a
 * quick command says nothing.
 */
final class Progress implements Consumer<String>, AutoCloseable {
  private static final long PATIENCE_MS = 500;

  private final PrintStream err;
  private final Thread waiting;
  private String step = "starting";
  private boolean speaking;
  private boolean closed;

  private Progress(PrintStream err) {
    this.err = err;
    waiting = new Thread(this::waitThenSpeak, "progress");
    waiting.setDaemon(true);
  }

  static Progress start(PrintStream err) {
    Progress progress = new Progress(err);
    progress.waiting.start();
    return progress;
  }

  private void waitThenSpeak() {
    try {
      Thread.sleep(PATIENCE_MS);
    } catch (InterruptedException e) {
      return;
    }
    synchronized (this) {
      speaking = true;
      say();
    }
  }

  /** The step that begins now, such as {@code placing foils}. */
  @Override
  public synchronized void accept(String words) {
    step = words;
    if (speaking) {
      say();
    }
  }

  private void say() {
    if (!closed) {
      err.println(step + " ...");
    }
  }

  @Override
  public synchronized void close() {
    closed = true;
    waiting.interrupt();
  }
}
