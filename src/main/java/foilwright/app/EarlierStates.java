package foilwright.app;

import foilwright.document.DocumentFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The last states of a person's own document: looked at, held against each other, brought back. */
public final class EarlierStates {
  private static final Pattern IN_SECTION = Pattern.compile("sections\\[(\\d{1,4})\\]\\.?(.*)");
  private static final int TOLD = 3;

  private final DocumentKind kind;
  private final Path file;

  private EarlierStates(DocumentKind kind, Path file) {
    this.kind = kind;
    this.file = file;
  }

  /** Those of a document; it need not be readable, nor there. */
  public static EarlierStates of(Workspace workspace, DocumentKind kind, String name) {
    return new EarlierStates(
        kind,
        kind == DocumentKind.HOUSE ? workspace.houseFile(name) : workspace.ownFile(kind, name));
  }

  /**
   * One state.
   *
   * @param number rises with every state of the document; 0 for the one that is in use
   * @param saved when it was saved
   * @param draft empty when its writing is broken
   */
  public record State(int number, Instant saved, Optional<Draft> draft) {
    /** Whether it can be used as it is. */
    public boolean isSound() {
      return draft.map(d -> d.errors().isEmpty()).orElse(false);
    }
  }

  /** The one in use first, then the newest {@value DocumentFiles#MOST_VERSIONS} before it. */
  public List<State> all() throws IOException {
    List<State> states = new ArrayList<>();
    if (Files.isRegularFile(file)) {
      states.add(state(0, file));
    }
    List<Path> kept = DocumentFiles.versions(file);
    for (int i = kept.size() - 1; i >= 0; i--) {
      states.add(state(DocumentFiles.number(kept.get(i)), kept.get(i)));
    }
    return states;
  }

  private State state(int number, Path from) throws IOException {
    return new State(
        number,
        Files.getLastModifiedTime(from).toInstant(),
        Draft.of(kind, Files.readAllBytes(from)));
  }

  /** One earlier state. */
  public Optional<State> find(int number) throws IOException {
    for (Path kept : DocumentFiles.versions(file)) {
      if (DocumentFiles.number(kept) == number) {
        return Optional.of(state(number, kept));
      }
    }
    return Optional.empty();
  }

  /**
   * Makes an earlier state the one in use; the one that was is kept as the newest earlier one.
   *
   * @throws IOException when the folder cannot be written; nothing is then changed
   * @throws NoSuchElementException when it is not kept, or not sound
   */
  public void bringBack(int number) throws IOException {
    Draft draft =
        find(number)
            .filter(State::isSound)
            .flatMap(State::draft)
            .orElseThrow(
                () -> new NoSuchElementException("That state is not kept, or is damaged itself."));
    DocumentFiles.save(file, draft.bytes());
  }

  /** What is in a state and was not so in an older one, in few words. */
  public static String changes(State newer, State older) {
    if (newer.draft().isEmpty()) {
      return "damaged: it cannot be read";
    }
    if (older.draft().isEmpty()) {
      return "whole again";
    }
    Map<String, String> now = newer.draft().get().leaves();
    Map<String, String> before = older.draft().get().leaves();
    Set<String> paths = new LinkedHashSet<>(now.keySet());
    paths.addAll(before.keySet());
    List<String> told = new ArrayList<>();
    for (String path : paths) {
      String a = before.getOrDefault(path, "");
      String b = now.getOrDefault(path, "");
      if (!a.equals(b)) {
        told.add(
            words(path, newer.draft().get(), older.draft().get())
                + " "
                + (a.isEmpty() ? b : b.isEmpty() ? "left out" : a + " \u2192 " + b));
      }
    }
    if (told.isEmpty()) {
      return "nothing";
    }
    String first = String.join("; ", told.subList(0, Math.min(TOLD, told.size())));
    return told.size() > TOLD ? first + "; and " + (told.size() - TOLD) + " more" : first;
  }

  private static String words(String path, Draft newer, Draft older) {
    Matcher inSection = IN_SECTION.matcher(path);
    if (!inSection.matches()) {
      return plain(path);
    }
    String name = "sections[" + inSection.group(1) + "].name";
    String section = newer.text(name).isEmpty() ? older.text(name) : newer.text(name);
    return section + ", " + plain(inSection.group(2));
  }

  /** A path as words: {@code fill.background.wideEnd} is the fill's background, wide end. */
  private static String plain(String path) {
    return path.replaceAll("\\[(\\d+)\\]", " ")
        .replaceAll("([a-z])([A-Z])", "$1 $2")
        .toLowerCase(Locale.ROOT)
        .replace('.', ' ')
        .replaceAll(" +", " ")
        .strip();
  }
}
