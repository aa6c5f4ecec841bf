package foilwright.app;

import foilwright.document.Documents;
import foilwright.document.LocatedProblem;
import foilwright.document.ReadResult;
import foilwright.problem.Problem;
import foilwright.problem.Severity;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A document that is changed value by value: a tree of groups, lists, texts, numbers and truth
 * values, addressed by paths such as {@code sections[2].fill.slice}, and read by the same strict
 * reader as a file. Every change gives another draft; this one stays as it is.
 */
public final class Draft {
  private static final Pattern STEP = Pattern.compile("([^.\\[\\]]+)|\\[(\\d{1,9})\\]");

  private final DocumentKind kind;
  private final Map<String, Object> root;

  private Draft(DocumentKind kind, Map<String, Object> root) {
    this.kind = kind;
    this.root = root;
  }

  /** The draft of a document's text; empty where its writing is broken. */
  public static Optional<Draft> of(DocumentKind kind, byte[] bytes) {
    return Documents.tree(bytes).map(tree -> new Draft(kind, tree));
  }

  /** The draft of a pattern. */
  public static Draft of(foilwright.pattern.Pattern pattern) {
    return of(DocumentKind.PATTERN, Documents.write(pattern)).orElseThrow();
  }

  public DocumentKind kind() {
    return kind;
  }

  /** The document's text. */
  public byte[] bytes() {
    return Documents.write(root);
  }

  /** The same for the same text and, but for chance, for no other. */
  public String revision() {
    return Mark.of(bytes());
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Draft draft && kind == draft.kind && root.equals(draft.root);
  }

  @Override
  public int hashCode() {
    return root.hashCode();
  }

  // Reading it strictly.

  private ReadResult<?> read() {
    byte[] bytes = bytes();
    return switch (kind) {
      case PATTERN -> Documents.readPattern(bytes);
      case GUEST -> Documents.readGuest(bytes);
      case HOUSE -> Documents.readHouse(bytes);
      case ATTEMPT -> Documents.readAttempt(bytes);
    };
  }

  /** All that is wrong with it or worth knowing. */
  public List<Problem> problems() {
    return read().problems().stream().map(LocatedProblem::problem).toList();
  }

  /** What keeps it from being read. */
  public List<Problem> errors() {
    return problems().stream().filter(p -> p.severity() == Severity.ERROR).toList();
  }

  /** The pattern that it says; empty when it is none. */
  public Optional<foilwright.pattern.Pattern> pattern() {
    return Documents.readPattern(bytes()).value();
  }

  // Looking into it.

  /** What lies at a path. */
  public Optional<Object> find(String path) {
    Object here = root;
    for (Object step : steps(path)) {
      if (step instanceof Integer index) {
        here = here instanceof List<?> list && index < list.size() ? list.get(index) : null;
      } else {
        here = here instanceof Map<?, ?> group ? group.get(step) : null;
      }
      if (here == null) {
        return Optional.empty();
      }
    }
    return Optional.of(here);
  }

  /** The text or number at a path as it is written; empty where there is none. */
  public String text(String path) {
    return find(path)
        .filter(value -> !(value instanceof Map<?, ?>) && !(value instanceof List<?>))
        .map(Object::toString)
        .orElse("");
  }

  /** Texts of a list, or of one that stands alone; none where there is nothing. */
  public List<String> texts(String path) {
    return find(path)
        .map(
            value ->
                value instanceof Collection<?> all
                    ? all.stream().map(Object::toString).toList()
                    : List.of(value.toString()))
        .orElse(List.of());
  }

  /** Entries of a list; one that stands alone counts as one. */
  public int count(String path) {
    return find(path).map(v -> v instanceof List<?> list ? list.size() : 1).orElse(0);
  }

  /** Keys of a group, in the order in which they are written. */
  public List<String> keys(String path) {
    Optional<Object> found = path.isEmpty() ? Optional.of(root) : find(path);
    return found
        .map(
            v ->
                v instanceof Map<?, ?> g
                    ? g.keySet().stream().map(Object::toString).toList()
                    : null)
        .orElse(List.of());
  }

  /** Every text, number and truth value by its path, in the order in which they are written. */
  Map<String, String> leaves() {
    Map<String, String> leaves = new LinkedHashMap<>();
    gather("", root, leaves);
    return leaves;
  }

  private static void gather(String path, Object value, Map<String, String> leaves) {
    if (value instanceof Map<?, ?> group) {
      group.forEach((key, v) -> gather(path.isEmpty() ? "" + key : path + "." + key, v, leaves));
    } else if (value instanceof List<?> list) {
      for (int i = 0; i < list.size(); i++) {
        gather(path + "[" + i + "]", list.get(i), leaves);
      }
    } else {
      leaves.put(path, String.valueOf(value));
    }
  }

  // Changing it.

  /** With a value at a path; groups on the way are made where they are missing. */
  public Draft with(String path, Object value) {
    return new Draft(kind, group(put(root, steps(path), value)));
  }

  /** Without what lies at a path, and without groups that this leaves empty. */
  public Draft without(String path) {
    return new Draft(kind, group(put(root, steps(path), null)));
  }

  /** With an entry more in a list, before the one that stands at the place. */
  public Draft inserted(String list, int place, Object value) {
    List<Object> entries = entries(list);
    entries.add(place, value);
    return with(list, entries);
  }

  /** With one entry of a list taken to another place of it. */
  public Draft moved(String list, int from, int to) {
    List<Object> entries = entries(list);
    entries.add(to, entries.remove(from));
    return with(list, entries);
  }

  private List<Object> entries(String list) {
    return find(list)
        .map(
            v ->
                v instanceof List<?> l
                    ? new ArrayList<Object>(l)
                    : new ArrayList<Object>(List.of(v)))
        .orElseGet(ArrayList::new);
  }

  private static List<Object> steps(String path) {
    List<Object> steps = new ArrayList<>();
    Matcher step = STEP.matcher(path);
    while (step.find()) {
      steps.add(step.group(1) != null ? step.group(1) : (Object) Integer.valueOf(step.group(2)));
    }
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("\"" + path + "\" is no path");
    }
    return steps;
  }

  private static Map<String, Object> group(Object value) {
    Map<String, Object> group = new LinkedHashMap<>();
    if (value instanceof Map<?, ?> map) {
      map.forEach((key, v) -> group.put(key.toString(), v));
    }
    return group;
  }

  private static Object put(Object here, List<Object> steps, Object value) {
    Object step = steps.get(0);
    List<Object> rest = steps.subList(1, steps.size());
    if (step instanceof Integer index) {
      List<Object> list =
          new ArrayList<>(here instanceof List<?> l ? l : here == null ? List.of() : List.of(here));
      Object inner =
          rest.isEmpty() ? value : put(index < list.size() ? list.get(index) : null, rest, value);
      if (inner == null) {
        if (index < list.size()) {
          list.remove(index.intValue());
        }
      } else if (index < list.size()) {
        list.set(index, inner);
      } else {
        list.add(inner);
      }
      return list.isEmpty() ? null : list;
    }
    Map<String, Object> group = group(here);
    Object inner = rest.isEmpty() ? value : put(group.get(step), rest, value);
    if (inner == null) {
      group.remove(step);
    } else {
      group.put(step.toString(), inner);
    }
    return group.isEmpty() ? null : group;
  }
}
