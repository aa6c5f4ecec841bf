package foilwright.app;

import foilwright.document.Documents;
import foilwright.document.GuestDocument;
import foilwright.document.HouseDocument;
import foilwright.document.ReadResult;
import foilwright.pattern.Pattern;
import foilwright.problem.Problem;
import foilwright.service.marking.Attempt;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * Where documents are found: a file that was named, else the person's own folders, else what ships
 * with the program. Works from any folder; own folders need not exist.
 */
public final class Workspace {
  static final String NO_SUCH_DOCUMENT = "no-such-document";
  private static final String LIBRARY = "foilwright/library/";
  private static final String ENDING = ".json";

  /** What ships with the program as it was read, which never changes while it runs. */
  private static final Map<String, byte[]> SHIPPED = new ConcurrentHashMap<>();

  private final Path folder;
  private final Kept kept;
  private final Map<DocumentKind, SortedSet<String>> shipped = new ConcurrentHashMap<>();

  private Workspace(Path folder, Kept kept) {
    this.folder = folder.toAbsolutePath();
    this.kept = kept;
  }

  /** What was read and made last: each by what it was made of, wherever that lay. */
  private static final class Kept {
    private final FittedHeads heads = new FittedHeads();
    private final KeptPlans plans = new KeptPlans();
    private final KeptDocuments<Pattern> patterns =
        new KeptDocuments<>(Documents::readPattern, Documents::readPattern);
    private final KeptDocuments<GuestDocument> guests =
        new KeptDocuments<>(Documents::readGuest, Documents::readGuest);
    private final KeptDocuments<HouseDocument> houses =
        new KeptDocuments<>(Documents::readHouse, Documents::readHouse);
    private final KeptDocuments<Attempt> attempts =
        new KeptDocuments<>(Documents::readAttempt, Documents::readAttempt);
  }

  /** A workspace whose own folders lie in {@code folder}; file names are read from there too. */
  public static Workspace in(Path folder) {
    return new Workspace(folder, new Kept());
  }

  /** A workspace in another folder that knows what was made in this one, and this one of it. */
  public Workspace elsewhere(Path other) {
    return new Workspace(other, kept);
  }

  /** The heads that were fitted for plans of this workspace. */
  FittedHeads heads() {
    return kept.heads;
  }

  /** The plans that were made last. */
  KeptPlans plans() {
    return kept.plans;
  }

  /** The same object as long as the document says the same; so with the other kinds. */
  Found<Pattern> pattern(String named) {
    return find(DocumentKind.PATTERN, named, kept.patterns);
  }

  /** A pattern by its name, its file or its title; the first of that title by name. */
  Optional<Pattern> findPattern(String nameOrTitle) {
    return pattern(nameOrTitle)
        .value()
        .or(
            () ->
                names(DocumentKind.PATTERN).stream()
                    .flatMap(name -> pattern(name).value().stream())
                    .filter(pattern -> pattern.title().equals(nameOrTitle))
                    .findFirst());
  }

  Found<GuestDocument> guest(String named) {
    return find(DocumentKind.GUEST, named, kept.guests);
  }

  Found<HouseDocument> house(String named) {
    return find(DocumentKind.HOUSE, named, kept.houses);
  }

  Found<Attempt> attempt(String named) {
    return find(DocumentKind.ATTEMPT, named, kept.attempts);
  }

  /**
   * Where a house is saved that was found by a name: in the file that it names, else in the
   * person's own folder, where it is found before one that ships under the same name.
   */
  Path houseFile(String named) {
    return findFile(DocumentKind.HOUSE, named)
        .orElseGet(() -> folder.resolve(DocumentKind.HOUSE.folder()).resolve(named + ENDING));
  }

  /** Where the person's own document of a name lies, whether it exists or not. */
  Path ownFile(DocumentKind kind, String name) {
    return folder.resolve(kind.folder()).resolve(name + ENDING);
  }

  /** A file as seen from the workspace's folder if it lies inside it, else its whole path. */
  Path fromHere(Path file) {
    Path absolute = real(file);
    Path here = real(folder);
    return absolute.startsWith(here) ? here.relativize(absolute) : absolute;
  }

  private static Path real(Path file) {
    try {
      return file.toRealPath();
    } catch (IOException e) {
      return file.toAbsolutePath().normalize();
    }
  }

  /**
   * A document of any kind: a file, or the name of a pattern, a guest or a house, in that order.
   */
  Found<?> any(String named) {
    for (DocumentKind kind : DocumentKind.values()) {
      Optional<Path> file = findFile(kind, named);
      if (file.isPresent()) {
        return new Found<>(named, Documents.readAny(file.get()));
      }
    }
    for (DocumentKind kind : DocumentKind.values()) {
      Optional<byte[]> shipped = readShipped(kind, named);
      if (shipped.isPresent()) {
        return new Found<>(named, Documents.readAny(shipped.get()));
      }
    }
    return new Found<>(
        named,
        ReadResult.refused(
            Problem.error(
                NO_SUCH_DOCUMENT,
                "",
                (isFolder(named) ? "there is only a folder, no document" : "there is no document")
                    + " called \""
                    + named
                    + "\"",
                "name a file, or a pattern, guest or house by its name")));
  }

  private boolean isFolder(String named) {
    try {
      return Files.isDirectory(folder.resolve(named));
    } catch (InvalidPathException e) {
      return false;
    }
  }

  private <T> Found<T> find(DocumentKind kind, String named, KeptDocuments<T> before) {
    Optional<Path> file = findFile(kind, named);
    if (file.isPresent()) {
      return before.file(named, file.get());
    }
    return readShipped(kind, named)
        .map(bytes -> before.text(named, bytes))
        .orElseGet(() -> new Found<>(named, ReadResult.refused(noSuchDocument(kind, named))));
  }

  /**
   * The file that a name means, whether it exists or not; nothing for the bare name of a document.
   */
  private Optional<Path> findFile(DocumentKind kind, String named) {
    try {
      Path asNamed = folder.resolve(named);
      boolean isPath = named.contains("/") || named.contains("\\") || named.endsWith(ENDING);
      Path own = folder.resolve(kind.folder()).resolve(named + ENDING);
      if (!isPath && Files.exists(own)) {
        return Optional.of(own);
      }
      return isPath || Files.isRegularFile(asNamed) ? Optional.of(asNamed) : Optional.empty();
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  private Optional<byte[]> readShipped(DocumentKind kind, String named) {
    if (!shippedOf(kind).contains(named)) {
      return Optional.empty();
    }
    return Optional.ofNullable(
        SHIPPED.computeIfAbsent(kind.shelf() + "/" + named, Workspace::readResource));
  }

  private static byte[] readResource(String named) {
    String resource = "/" + LIBRARY + named + ENDING;
    try (InputStream in = Workspace.class.getResourceAsStream(resource)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException("a shipped document cannot be read: " + resource, e);
    }
  }

  private Problem noSuchDocument(DocumentKind kind, String named) {
    return Problem.error(
        NO_SUCH_DOCUMENT,
        "",
        "there is no " + kind.words() + " called \"" + named + "\"",
        "name a file, or one of: " + String.join(", ", names(kind)));
  }

  private SortedSet<String> shippedOf(DocumentKind kind) {
    return shipped.computeIfAbsent(kind, Workspace::shippedNames);
  }

  /** Names of all documents of a kind, own and shipped, in alphabetical order. */
  SortedSet<String> names(DocumentKind kind) {
    SortedSet<String> names = new TreeSet<>(shippedOf(kind));
    names.addAll(names(folder.resolve(kind.folder())));
    return names;
  }

  /**
   * Whether the document of that name is a file of the person's that differs from a shipped one.
   */
  boolean isOwn(DocumentKind kind, String name) {
    Path file = folder.resolve(kind.folder()).resolve(name + ENDING);
    if (!Files.isRegularFile(file)) {
      return false;
    }
    Optional<byte[]> shipped = readShipped(kind, name);
    try {
      return shipped.isEmpty() || !Arrays.equals(shipped.get(), Files.readAllBytes(file));
    } catch (IOException e) {
      return true;
    }
  }

  private static SortedSet<String> names(Path folder) {
    if (!Files.isDirectory(folder)) {
      return new TreeSet<>();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return withoutEnding(files.map(file -> file.getFileName().toString()).toList());
    } catch (IOException e) {
      throw new UncheckedIOException("the folder " + folder + " cannot be listed", e);
    }
  }

  /** Names of the documents that ship with the program. */
  static SortedSet<String> shippedNames(DocumentKind kind) {
    Path program;
    try {
      program =
          Path.of(Workspace.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException("the program does not know its own place", e);
    }
    String shelf = LIBRARY + kind.shelf() + "/";
    if (Files.isDirectory(program)) {
      return names(program.resolve(shelf));
    }
    try (ZipFile jar = new ZipFile(program.toFile())) {
      List<String> files = new ArrayList<>();
      for (ZipEntry entry : (Iterable<ZipEntry>) jar.stream().map(ZipEntry.class::cast)::iterator) {
        if (entry.getName().startsWith(shelf)) {
          files.add(entry.getName().substring(shelf.length()));
        }
      }
      return withoutEnding(files);
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own file cannot be read", e);
    }
  }

  private static SortedSet<String> withoutEnding(List<String> files) {
    SortedSet<String> names = new TreeSet<>();
    for (String file : files) {
      if (file.endsWith(ENDING) && !file.contains("/")) {
        names.add(file.substring(0, file.length() - ENDING.length()));
      }
    }
    return names;
  }
}
