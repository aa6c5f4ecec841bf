package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The schemas say yes and no where the reading does, as far as a schema can know. */
class SchemaTest {
  private static final Path FOLDER = Path.of("src/test/resources/documents");

  /** What a schema can see: form, not sense. Ranges of quantities in text it cannot. */
  private static final Set<String> FORM =
      Set.of(
          "missing-key",
          "unknown-key",
          "wrong-type",
          "unknown-word",
          "no-unit",
          "wrong-unit",
          "wrong-form",
          "wrong-format");

  private static String kind(Path file) {
    String folder = file.getParent().getFileName().toString();
    return switch (folder) {
      case "patterns" -> "pattern";
      case "guests" -> "guest";
      case "house" -> "house";
      default -> file.getFileName().toString();
    };
  }

  static List<Path> sound() {
    return Stream.of(
            Shipped.PATTERNS,
            Shipped.GUESTS,
            Shipped.HOUSES,
            FOLDER.resolve("valid"),
            FOLDER.resolve("on-a-head"))
        .flatMap(f -> Shipped.in(f).stream())
        .toList();
  }

  static List<Path> full() {
    return Shipped.in(FOLDER.resolve("valid"));
  }

  @ParameterizedTest
  @MethodSource("sound")
  void soundDocumentsAreAccepted(Path file) throws IOException {
    assertTrue(Schemas.accepts(kind(file), Files.readAllBytes(file)));
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/documents/invalid/expected.csv")
  void badDocumentsAreRefusedWhereASchemaCan(
      String file, String code, String path, int line, String refused) throws IOException {
    if (!refused.equals("cannot")) {
      byte[] bytes = Files.readAllBytes(FOLDER.resolve("invalid").resolve(file));
      assertEquals(refused.equals("no"), Schemas.accepts(file, bytes));
    }
  }

  /**
   * Every key of documents that hold every key is left out in turn, every group gets a stranger,
   * every value is replaced by others: whatever the schema refuses, the reading refuses, and what
   * the reading refuses for its form, the schema refuses.
   */
  @ParameterizedTest
  @MethodSource("full")
  void agreeOnEveryChange(Path file) throws IOException {
    String kind = kind(file);
    Node root = TextReader.read(Files.readAllBytes(file), new ProblemLog()).orElseThrow();
    int[] count = {0};
    changes(
        root,
        (what, changed) -> {
          byte[] bytes = Json.bytes(changed);
          boolean accepted = Schemas.accepts(kind, bytes);
          ReadResult<?> result = BadDocumentsTest.read(kind, bytes);
          List<String> words = result.problems().stream().map(LocatedProblem::words).toList();
          if (!accepted) {
            assertTrue(result.value().isEmpty(), "only the schema refuses " + what);
          }
          boolean form =
              result.problems().stream()
                  .anyMatch(
                      p ->
                          FORM.contains(p.problem().code())
                              && !p.problem().path().startsWith("slots."));
          if (form) {
            assertFalse(accepted, "only the reading refuses " + what + ": " + words);
          }
          count[0]++;
        });
    assertTrue(count[0] > 20, "only " + count[0] + " changes were tried");
  }

  private static void changes(Node root, BiConsumer<String, Map<String, Object>> use) {
    List<List<Object>> paths = new ArrayList<>();
    collect(root, List.of(), paths);
    for (List<Object> path : paths) {
      if (!path.isEmpty()) {
        if (path.get(path.size() - 1) instanceof String) {
          use.accept("without " + path, rebuilt(root, path, 0, null));
        }
        for (Object other : List.of("nonsense", 12345.5, true, Map.of(), List.of(), "3 mm")) {
          use.accept(other + " at " + path, rebuilt(root, path, 0, other));
        }
      }
      List<Object> stranger = new ArrayList<>(path);
      stranger.add("stranger");
      if (at(root, path) instanceof Node.ObjectNode) {
        use.accept("a stranger in " + path, rebuilt(root, stranger, 0, "x"));
      }
    }
  }

  private static Node at(Node root, List<Object> path) {
    Node node = root;
    for (Object step : path) {
      node =
          step instanceof String key
              ? node.findMember(key).orElseThrow()
              : node.findItem((Integer) step).orElseThrow();
    }
    return node;
  }

  private static void collect(Node node, List<Object> path, List<List<Object>> into) {
    into.add(path);
    if (node instanceof Node.ObjectNode object) {
      object.members().forEach((key, m) -> collect(m.value(), with(path, key), into));
    } else if (node instanceof Node.ArrayNode array) {
      for (int i = 0; i < array.items().size(); i++) {
        collect(array.items().get(i), with(path, i), into);
      }
    }
  }

  private static List<Object> with(List<Object> path, Object step) {
    List<Object> longer = new ArrayList<>(path);
    longer.add(step);
    return longer;
  }

  /** The document with the value at a path exchanged, added, or left out when it is null. */
  @SuppressWarnings("unchecked")
  private static Map<String, Object> rebuilt(
      Node node, List<Object> path, int depth, Object value) {
    return (Map<String, Object>) rebuild(node, path, depth, value);
  }

  private static Object rebuild(Node node, List<Object> path, int depth, Object value) {
    if (depth == path.size()) {
      return value;
    }
    Object step = depth < 0 ? "" : path.get(depth);
    if (node instanceof Node.ObjectNode object) {
      Map<String, Object> copy = new LinkedHashMap<>();
      object
          .members()
          .forEach(
              (key, member) -> {
                boolean here = key.equals(step);
                Object changed = here ? rebuild(member.value(), path, depth + 1, value) : null;
                if (!here) {
                  copy.put(key, rebuild(member.value(), path, -1, null));
                } else if (changed != null) {
                  copy.put(key, changed);
                }
              });
      if (depth == path.size() - 1 && !object.members().containsKey(step)) {
        copy.put((String) step, value);
      }
      return copy;
    } else if (node instanceof Node.ArrayNode array) {
      List<Object> copy = new ArrayList<>();
      for (int i = 0; i < array.items().size(); i++) {
        boolean here = step instanceof Integer index && index == i;
        copy.add(rebuild(array.items().get(i), path, here ? depth + 1 : -1, value));
      }
      return copy;
    } else if (node instanceof Node.NumberNode number) {
      return Double.valueOf(number.text());
    } else if (node instanceof Node.BooleanNode truth) {
      return truth.value();
    }
    return ((Node.TextNode) node).text();
  }

  @Test
  void thereIsNoOtherSchema() {
    assertThrows(IllegalArgumentException.class, () -> Documents.schema("nothing"));
    assertThrows(IllegalArgumentException.class, () -> Documents.schema("../../library/x"));
  }
}
