package foilwright.document;

import foilwright.pattern.Pattern;
import foilwright.service.marking.Attempt;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;

/** Reads documents, with every problem at once, and writes them so that they read back equal. */
public final class Documents {
  private Documents() {}

  public static ReadResult<Pattern> readPattern(Path file) {
    return read(file, Format.PATTERN, PatternReader::read);
  }

  public static ReadResult<Pattern> readPattern(byte[] bytes) {
    return read(bytes, Format.PATTERN, PatternReader::read);
  }

  public static ReadResult<GuestDocument> readGuest(Path file) {
    return read(file, Format.GUEST, GuestReader::read);
  }

  public static ReadResult<GuestDocument> readGuest(byte[] bytes) {
    return read(bytes, Format.GUEST, GuestReader::read);
  }

  public static ReadResult<HouseDocument> readHouse(Path file) {
    return read(file, Format.HOUSE, HouseReader::read);
  }

  public static ReadResult<HouseDocument> readHouse(byte[] bytes) {
    return read(bytes, Format.HOUSE, HouseReader::read);
  }

  public static ReadResult<Attempt> readAttempt(Path file) {
    return read(file, Format.ATTEMPT, AttemptDocument::read);
  }

  public static ReadResult<Attempt> readAttempt(byte[] bytes) {
    return read(bytes, Format.ATTEMPT, AttemptDocument::read);
  }

  /**
   * Reads a document of the kind that it says it is; one that does not say is read as a pattern.
   *
   * @return a {@link Pattern}, a {@link GuestDocument}, a {@link HouseDocument} or an {@link
   *     Attempt}
   */
  public static ReadResult<?> readAny(Path file) {
    ProblemLog problems = new ProblemLog();
    Optional<byte[]> bytes = DocumentFiles.load(file, problems);
    return bytes.isPresent()
        ? readAny(bytes.get())
        : new ReadResult<>(Optional.empty(), problems.toList(), Places.none());
  }

  public static ReadResult<?> readAny(byte[] bytes) {
    Optional<String> kind = TextReader.read(bytes, new ProblemLog()).flatMap(Format::findName);
    if (kind.equals(Optional.of(Format.ATTEMPT.name()))) {
      return readAttempt(bytes);
    }
    if (kind.equals(Optional.of(Format.GUEST.name()))) {
      return readGuest(bytes);
    }
    return kind.equals(Optional.of(Format.HOUSE.name())) ? readHouse(bytes) : readPattern(bytes);
  }

  /** UTF-8 text, in the current version of the format. */
  public static byte[] write(GuestDocument guest) {
    return Json.bytes(GuestWriter.write(guest));
  }

  /** UTF-8 text, in the current version of the format. */
  public static byte[] write(Attempt attempt) {
    return Json.bytes(AttemptDocument.write(attempt));
  }

  /** UTF-8 text, in the current version of the format. */
  public static byte[] write(HouseDocument house) {
    return Json.bytes(HouseWriter.write(house));
  }

  /** UTF-8 text, in the current version of the format. */
  public static byte[] write(Pattern pattern) {
    return Json.bytes(PatternWriter.write(pattern));
  }

  /**
   * The JSON Schema (2020-12) of a document: what can be said of it without knowing the trade.
   *
   * @param document {@code pattern}, {@code guest}, {@code house}, {@code attempt} or {@code plan}
   */
  public static String schema(String document) {
    String name = "schema/" + document + ".json";
    try (InputStream in = Documents.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalArgumentException("there is no document called " + document);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("reading " + name + " failed", e);
    }
  }

  /**
   * UTF-8 text of a result that is written but never read back: groups, lists, texts, numbers and
   * truth values, as JSON.
   */
  public static byte[] write(Map<String, Object> tree) {
    return Json.bytes(tree);
  }

  /**
   * The bare tree of a document: groups, lists, texts, numbers and truth values; empty where the
   * writing itself is broken. Nothing of it is checked.
   */
  public static Optional<Map<String, Object>> tree(byte[] bytes) {
    return TextReader.read(bytes, new ProblemLog())
        .filter(Node.ObjectNode.class::isInstance)
        .map(root -> group((Node.ObjectNode) root));
  }

  private static Map<String, Object> group(Node.ObjectNode node) {
    Map<String, Object> group = new LinkedHashMap<>();
    node.members().forEach((key, member) -> group.put(key, plain(member.value())));
    return group;
  }

  private static Object plain(Node node) {
    if (node instanceof Node.ObjectNode object) {
      return group(object);
    } else if (node instanceof Node.ArrayNode array) {
      return array.items().stream().map(Documents::plain).toList();
    } else if (node instanceof Node.TextNode text) {
      return text.text();
    } else if (node instanceof Node.NumberNode number) {
      return new BigDecimal(number.text());
    }
    return node instanceof Node.BooleanNode truth ? truth.value() : "";
  }

  private static <T> ReadResult<T> read(
      Path file, Format format, BiFunction<Node.ObjectNode, ProblemLog, T> reader) {
    ProblemLog problems = new ProblemLog();
    Optional<byte[]> bytes = DocumentFiles.load(file, problems);
    return bytes
        .map(b -> read(b, format, reader))
        .orElseGet(() -> new ReadResult<>(Optional.empty(), problems.toList(), Places.none()));
  }

  private static <T> ReadResult<T> read(
      byte[] bytes, Format format, BiFunction<Node.ObjectNode, ProblemLog, T> reader) {
    ProblemLog problems = new ProblemLog();
    Optional<Node.ObjectNode> root =
        TextReader.read(bytes, problems).flatMap(node -> format.bringUpToDate(node, problems));
    Optional<T> value = root.map(node -> reader.apply(node, problems));
    return new ReadResult<>(
        problems.hasErrors() ? Optional.empty() : value,
        problems.toList(),
        new Places(root.map(node -> node)));
  }
}
