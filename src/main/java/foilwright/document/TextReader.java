package foilwright.document;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Bytes to a tree with places. Strict: UTF-8 only (a byte order mark at the start is passed over),
 * no comments, no repeated key, nothing after the end.
 */
final class TextReader {
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
          .streamReadConstraints(
              StreamReadConstraints.builder()
                  .maxDocumentLength(Limits.SIZE)
                  .maxNestingDepth(Limits.DEPTH + 1)
                  .maxStringLength(Limits.SIZE)
                  .maxNumberLength(60)
                  .maxNameLength(1000)
                  .build())
          .build();

  private static final Set<String> CURLY = Set.of("\u201c", "\u201d", "\u201e", "\u2018", "\u2019");

  private final ProblemLog problems;
  private final String text;

  private TextReader(String text, ProblemLog problems) {
    this.text = text;
    this.problems = problems;
  }

  /** The tree, or nothing when the writing itself is broken; what is wrong goes to the log. */
  static Optional<Node> read(byte[] bytes, ProblemLog problems) {
    if (bytes.length > Limits.SIZE) {
      problems.error(
          "too-large",
          "",
          Place.WHOLE,
          "the document has more than " + Limits.SIZE + " bytes",
          "a document is a page of writing; check that this is the right file");
      return Optional.empty();
    }
    Optional<String> decoded = decode(bytes, problems);
    if (decoded.isEmpty()) {
      return Optional.empty();
    }
    String text = decoded.get();
    if (text.isBlank()) {
      problems.error(
          "empty",
          "",
          Place.WHOLE,
          "the document is empty",
          "start from a shipped document, or restore an earlier version");
      return Optional.empty();
    }
    return new TextReader(text, problems).parse();
  }

  private static Optional<String> decode(byte[] bytes, ProblemLog problems) {
    int start =
        bytes.length >= 3
                && bytes[0] == (byte) 0xEF
                && bytes[1] == (byte) 0xBB
                && bytes[2] == (byte) 0xBF
            ? 3
            : 0;
    ByteBuffer in = ByteBuffer.wrap(bytes, start, bytes.length - start);
    CharBuffer out = CharBuffer.allocate(bytes.length - start);
    CoderResult result =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT)
            .decode(in, out, true);
    out.flip();
    if (result.isError()) {
      problems.error(
          "not-utf8",
          "",
          end(out.toString()),
          "the document is not UTF-8 text from here on",
          "save it again as UTF-8");
      return Optional.empty();
    }
    return Optional.of(out.toString());
  }

  private static Place end(String read) {
    int line = 1 + (int) read.chars().filter(c -> c == '\n').count();
    return new Place(line, read.length() - read.lastIndexOf('\n'));
  }

  private Optional<Node> parse() {
    try (JsonParser parser = FACTORY.createParser(text)) {
      parser.nextToken();
      Node root = value(parser, "", 1);
      checkNothingFollows(parser);
      return Optional.of(root);
    } catch (TooDeep e) {
      problems.error(
          "too-deep",
          "",
          e.place,
          "brackets lie more than " + Limits.DEPTH + " deep here",
          "no document needs that; check that this is the right file");
      return Optional.empty();
    } catch (JsonEOFException e) {
      problems.error(
          "not-json",
          "",
          place(e.getLocation().getLineNr(), e.getLocation().getColumnNr()),
          "the document breaks off before its last bracket or quote is closed",
          "close what was opened, or restore an earlier version");
      return Optional.empty();
    } catch (JsonProcessingException e) {
      problems.error(
          "not-json",
          "",
          place(e.getLocation().getLineNr(), e.getLocation().getColumnNr()),
          "the writing cannot be read here" + offending(e).map(c -> ", at '" + c + "'").orElse(""),
          offending(e).filter(CURLY::contains).isPresent()
              ? "use straight quotes (\") round every word"
              : "look for a missing or superfluous comma, quote or bracket just before this place");
      return Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException("reading from memory failed", e);
    }
  }

  /** The sign at which reading stopped, which the reader may be one space short of. */
  private Optional<String> offending(JsonProcessingException e) {
    int at = (int) e.getLocation().getCharOffset() - 1;
    if (at >= 0 && at < text.length() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
    if (at < 0
        || at >= text.length()
        || Character.isWhitespace(text.charAt(at))
        || Character.isISOControl(text.charAt(at))) {
      return Optional.empty();
    }
    return Optional.of(Character.toString(text.codePointAt(at)));
  }

  private void checkNothingFollows(JsonParser parser) throws IOException {
    Place place;
    try {
      if (parser.nextToken() == null) {
        return;
      }
      place = here(parser);
    } catch (JsonProcessingException e) {
      place = place(e.getLocation().getLineNr(), e.getLocation().getColumnNr());
    }
    problems.error(
        "trailing-text",
        "",
        place,
        "something follows after the end of the document",
        "remove everything after the last closing bracket");
  }

  private Node value(JsonParser parser, String path, int depth) throws IOException {
    Place place = here(parser);
    JsonToken token = parser.currentToken();
    if (token.isStructStart() && depth > Limits.DEPTH) {
      throw new TooDeep(place);
    }
    return switch (token) {
      case START_OBJECT -> object(parser, place, path, depth);
      case START_ARRAY -> {
        List<Node> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
          items.add(value(parser, path + "[" + items.size() + "]", depth + 1));
        }
        yield new Node.ArrayNode(place, items);
      }
      case VALUE_STRING -> new Node.TextNode(place, parser.getText());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new Node.NumberNode(place, parser.getText());
      case VALUE_TRUE -> new Node.BooleanNode(place, true);
      case VALUE_FALSE -> new Node.BooleanNode(place, false);
      case VALUE_NULL -> new Node.NullNode(place);
      default -> throw new IllegalStateException("no value starts with " + token);
    };
  }

  private Node object(JsonParser parser, Place place, String path, int depth) throws IOException {
    Map<String, Node.Member> members = new LinkedHashMap<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      String key = parser.currentName();
      Place keyPlace = here(parser);
      String keyPath = path.isEmpty() ? key : path + "." + key;
      parser.nextToken();
      Node value = value(parser, keyPath, depth + 1);
      Node.Member earlier = members.putIfAbsent(key, new Node.Member(keyPlace, value));
      if (earlier != null) {
        problems.error(
            "duplicate-key",
            keyPath,
            keyPlace,
            "\"" + key + "\" is said twice, first on line " + earlier.keyPlace().line(),
            "keep one of the two");
      }
    }
    return new Node.ObjectNode(place, members);
  }

  private static Place here(JsonParser parser) {
    return place(
        parser.currentTokenLocation().getLineNr(), parser.currentTokenLocation().getColumnNr());
  }

  private static Place place(int line, int column) {
    return new Place(Math.max(1, line), Math.max(1, column));
  }

  /** Stops the reading; never leaves this class. */
  private static final class TooDeep extends RuntimeException {
    private final Place place;

    TooDeep(Place place) {
      super("too deep", null, false, false);
      this.place = place;
    }
  }
}
