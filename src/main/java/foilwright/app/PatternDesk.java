package foilwright.app;

import foilwright.document.DocumentFiles;
import foilwright.document.Documents;
import foilwright.document.LocatedProblem;
import foilwright.pattern.Pattern;
import foilwright.problem.Severity;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Patterns that are changed step by step and saved at each. A shipped pattern is never written
 * over: its first change makes an own copy under a name of its own. A change that was made to an
 * older state than the one on the disk does not replace it: it is saved beside it.
 */
public final class PatternDesk {
  private final Workspace workspace;

  public PatternDesk(Workspace workspace) {
    this.workspace = workspace;
  }

  /**
   * A pattern as it is on the disk.
   *
   * @param name by which it is planned
   * @param revision the same for equal patterns and, but for chance, for no others
   * @param own whether changes go into its own file
   */
  public record Open(String name, Pattern pattern, String revision, boolean own) {}

  /**
   * A change that was saved.
   *
   * @param open what is now on the disk
   * @param beside whether it lies beside the pattern that it was meant for, which had been changed
   *     by somebody else meanwhile
   */
  public record Saved(Open open, boolean beside) {}

  /** A pattern of the library by its name; empty when it cannot be read. */
  public Optional<Open> open(String name) {
    return workspace
        .pattern(name)
        .value()
        .map(
            pattern ->
                new Open(
                    name, pattern, revision(pattern), workspace.isOwn(DocumentKind.PATTERN, name)));
  }

  /**
   * Saves a change.
   *
   * @param name the pattern that was changed
   * @param revision its revision when the change was made
   * @throws IOException when the folder cannot be written; nothing is then changed
   * @throws IllegalArgumentException when the changed pattern is none; the message says why and
   *     what cures it
   */
  public synchronized Saved save(String name, String revision, Pattern changed) throws IOException {
    byte[] bytes = Documents.write(changed);
    check(bytes);
    Optional<Open> now = open(name);
    boolean own = now.map(Open::own).orElse(true);
    boolean beside = own && !now.map(Open::revision).equals(Optional.of(revision));
    String target = own && !beside ? name : free(name + (beside ? "-other" : "-own"));
    Path file = workspace.ownFile(DocumentKind.PATTERN, target);
    DocumentFiles.save(file, bytes);
    return new Saved(new Open(target, changed, revision(changed), true), beside);
  }

  /**
   * Saves a new pattern under a name made of its title.
   *
   * @throws IOException when the folder cannot be written
   * @throws IllegalArgumentException when the pattern is none; the message says why
   */
  public synchronized Open create(Pattern pattern) throws IOException {
    byte[] bytes = Documents.write(pattern);
    check(bytes);
    String name = free(FileNames.of(pattern.title()));
    DocumentFiles.save(workspace.ownFile(DocumentKind.PATTERN, name), bytes);
    return new Open(name, pattern, revision(pattern), true);
  }

  private static void check(byte[] bytes) {
    Documents.readPattern(bytes).problems().stream()
        .map(LocatedProblem::problem)
        .filter(problem -> problem.severity() == Severity.ERROR)
        .findFirst()
        .ifPresent(
            problem -> {
              throw new IllegalArgumentException(problem.message() + "; " + problem.cure());
            });
  }

  private String free(String wanted) {
    String name = wanted;
    for (int i = 2; workspace.names(DocumentKind.PATTERN).contains(name); i++) {
      name = wanted + "-" + i;
    }
    return name;
  }

  private static String revision(Pattern pattern) {
    return Mark.of(Documents.write(pattern));
  }
}
