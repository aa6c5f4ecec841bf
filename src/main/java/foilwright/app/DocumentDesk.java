package foilwright.app;

import foilwright.document.DocumentFiles;
import foilwright.document.Documents;
import foilwright.document.GuestDocument;
import foilwright.document.ReadResult;
import foilwright.problem.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Guests and houses that are changed step by step and saved at each. What ships is never written
 * over: the first change of a shipped guest makes one of the person's own under the next free
 * number; the house keeps its name and lies in the person's own folder from then on. A change that
 * was made to an older state than the one on the disk does not replace it: it is saved beside it.
 */
public final class DocumentDesk {
  private static final int LEAST_OWN_NUMBER = 31;

  private final Workspace workspace;
  private final DocumentKind kind;

  public DocumentDesk(Workspace workspace, DocumentKind kind) {
    this.workspace = workspace;
    this.kind = kind;
  }

  /**
   * A document as it is on the disk.
   *
   * @param own whether changes go into its own file
   */
  public record Open(String name, Draft draft, boolean own) {
    public String revision() {
      return draft.revision();
    }
  }

  /**
   * A change that was saved.
   *
   * @param beside whether it lies beside the document that it was meant for, which had been changed
   *     by somebody else meanwhile
   */
  public record Saved(Open open, boolean beside) {}

  /** A document by its name, in the form in which the program writes it; empty when unreadable. */
  public Optional<Open> open(String name) {
    return written(name)
        .flatMap(bytes -> Draft.of(kind, bytes))
        .map(draft -> new Open(name, draft, workspace.isOwn(kind, name)));
  }

  private Optional<byte[]> written(String name) {
    return switch (kind) {
      case PATTERN -> workspace.pattern(name).value().map(Documents::write);
      case GUEST -> workspace.guest(name).value().map(Documents::write);
      case HOUSE -> workspace.house(name).value().map(Documents::write);
      case ATTEMPT -> workspace.attempt(name).value().map(Documents::write);
    };
  }

  /** The same document in the form in which the program writes it. */
  private Draft tidy(Draft draft) {
    byte[] bytes = draft.bytes();
    Optional<byte[]> tidy =
        switch (kind) {
          case PATTERN -> tidy(Documents.readPattern(bytes)).map(Documents::write);
          case GUEST -> tidy(Documents.readGuest(bytes)).map(Documents::write);
          case HOUSE -> tidy(Documents.readHouse(bytes)).map(Documents::write);
          case ATTEMPT -> tidy(Documents.readAttempt(bytes)).map(Documents::write);
        };
    return tidy.flatMap(b -> Draft.of(kind, b)).orElseThrow();
  }

  private static <T> Optional<T> tidy(ReadResult<T> read) {
    read.problems().stream()
        .map(located -> located.problem())
        .filter(problem -> read.value().isEmpty())
        .findFirst()
        .ifPresent(
            (Problem problem) -> {
              throw new IllegalArgumentException(problem.message() + "; " + problem.cure());
            });
    return read.value();
  }

  /**
   * Saves a change.
   *
   * @param name the document that was changed
   * @param revision its revision when the change was made
   * @throws IOException when the folder cannot be written; nothing is then changed
   * @throws IllegalArgumentException when the changed document is none; the message says why
   */
  public synchronized Saved save(String name, String revision, Draft changed) throws IOException {
    Draft tidy = tidy(changed);
    Optional<Open> now = open(name);
    boolean own = now.map(Open::own).orElse(true);
    boolean beside = own && !now.map(Open::revision).equals(Optional.of(revision));
    String target = own && !beside ? name : copyName(name, beside);
    if (kind == DocumentKind.GUEST && !target.equals(name)) {
      tidy = tidy(tidy.with("number", target));
    }
    DocumentFiles.save(file(target), tidy.bytes());
    return new Saved(new Open(target, tidy, true), beside);
  }

  /**
   * Saves a new document under a name that no other has.
   *
   * @throws IllegalArgumentException when the name is taken or the draft is no document
   */
  public synchronized Open create(String name, Draft draft) throws IOException {
    if (workspace.names(kind).contains(name)) {
      throw new IllegalArgumentException(
          "there is a " + kind.words() + " \"" + name + "\" already");
    }
    Draft tidy = tidy(draft);
    DocumentFiles.save(file(name), tidy.bytes());
    return new Open(name, tidy, true);
  }

  private Path file(String name) {
    return kind == DocumentKind.HOUSE ? workspace.houseFile(name) : workspace.ownFile(kind, name);
  }

  private String copyName(String name, boolean beside) {
    if (kind == DocumentKind.GUEST) {
      return freeGuest();
    }
    return kind == DocumentKind.HOUSE && !beside ? name : free(name + (beside ? "-other" : "-own"));
  }

  /** Names of all documents of the kind, own and shipped. */
  public List<String> names() {
    return List.copyOf(workspace.names(kind));
  }

  /** The name itself, or with a number behind it when it is taken. */
  public String free(String wanted) {
    String name = wanted;
    for (int i = 2; workspace.names(kind).contains(name); i++) {
      name = wanted + "-" + i;
    }
    return name;
  }

  /** The next number that no guest has. */
  public String freeGuest() {
    for (int i = LEAST_OWN_NUMBER; ; i++) {
      String number = "guest-" + i;
      if (!workspace.names(DocumentKind.GUEST).contains(number)) {
        return number;
      }
    }
  }

  /** A usual head with nothing known of the hair but a usual length. */
  public static Draft newGuest(String number) {
    GuestDocument usual = Nobody.GUEST;
    return Draft.of(DocumentKind.GUEST, Documents.write(usual))
        .orElseThrow()
        .with("number", number);
  }

  /** Whether the person has a file of that name, readable or not. */
  public boolean hasFile(String name) {
    return Files.isRegularFile(file(name));
  }

  /** What is wrong with a document, each problem with its line; empty when it can be used. */
  public List<FoundProblem> problems(String name) {
    return switch (kind) {
      case PATTERN -> workspace.pattern(name).problems();
      case GUEST -> workspace.guest(name).problems();
      case HOUSE -> workspace.house(name).problems();
      case ATTEMPT -> workspace.attempt(name).problems();
    };
  }
}
