package foilwright.document;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The keys of one group, read one by one; {@link #close} reports those that nobody asked for. Not
 * shared; lives as long as one reading.
 */
final class Fields {
  private final Map<String, Node.Member> members;
  private final Place place;
  private final String path;
  private final ProblemLog problems;
  private final Set<String> known = new LinkedHashSet<>();

  Fields(Node.ObjectNode node, String path, ProblemLog problems) {
    this.members = new LinkedHashMap<>(node.members());
    this.place = node.place();
    this.path = path;
    this.problems = problems;
  }

  Place place() {
    return place;
  }

  String path() {
    return path;
  }

  /** The value of the key, if the document has it. */
  Optional<Item> find(String key) {
    known.add(key);
    return Optional.ofNullable(members.get(key))
        .map(member -> new Item(member.value(), pathOf(key), problems));
  }

  /** The value of the key; its absence is a problem, and then every reading gives a fallback. */
  Item require(String key) {
    Optional<Item> found = find(key);
    if (found.isEmpty()) {
      problems.error(
          "missing-key", path, place, "\"" + key + "\" is missing here", "add \"" + key + "\"");
    }
    return found.orElseGet(() -> new Item(new Node.NullNode(place), pathOf(key), new ProblemLog()));
  }

  /** Reports a problem of the group as a whole. */
  void error(String code, String message, String cure) {
    problems.error(code, path, place, message, cure);
  }

  private String pathOf(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  /** Reports every key that was not asked for, with the known one that was probably meant. */
  void close() {
    members.forEach(
        (key, member) -> {
          if (!known.contains(key)) {
            Set<String> free = new LinkedHashSet<>(known);
            free.removeAll(members.keySet());
            String cure =
                Nearest.find(key, free)
                    .or(() -> Nearest.find(key, known))
                    .map(near -> "write \"" + near + "\" if that is what was meant")
                    .orElse("leave it out, or use one of: " + String.join(", ", known));
            problems.error(
                "unknown-key",
                pathOf(key),
                member.keyPlace(),
                "\"" + shortened(key) + "\" is not a key that belongs here",
                cure);
          }
        });
  }

  static String shortened(String text) {
    return text.length() <= 60 ? text : text.substring(0, 57) + "...";
  }
}
