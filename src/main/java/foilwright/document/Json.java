package foilwright.document;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Writes trees of maps, lists, texts, numbers and truth values as text for people: two blanks of
 * indent, and whatever fits on one line of 100 characters stays on one. Same tree, same bytes.
 */
final class Json {
  private static final int WIDTH = 100;

  private Json() {}

  /** A group being written: what is absent is left out. */
  static final class Group {
    private final Map<String, Object> members = new LinkedHashMap<>();

    Group put(String key, Object value) {
      members.put(key, value);
      return this;
    }

    Group putIf(boolean present, String key, Object value) {
      return present ? put(key, value) : this;
    }

    Map<String, Object> toMap() {
      return members;
    }
  }

  static Map<String, Object> single(String key, Object value) {
    return new Group().put(key, value).toMap();
  }

  /** UTF-8 with a line feed at the end. */
  static byte[] bytes(Map<String, Object> root) {
    StringBuilder out = new StringBuilder();
    write(root, 0, 0, out);
    return out.append('\n').toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void write(Object value, int indent, int column, StringBuilder out) {
    String flat = flat(value);
    boolean fits = indent > 0 && column + flat.length() <= WIDTH;
    if (fits || isPlain(value)) {
      out.append(flat);
      return;
    }
    boolean list = value instanceof List;
    String inner = "  ".repeat(indent + 1);
    out.append(list ? "[" : "{");
    String separator = "\n";
    for (Object entry : list ? (List<?>) value : ((Map<?, ?>) value).entrySet()) {
      out.append(separator).append(inner);
      separator = ",\n";
      if (entry instanceof Map.Entry<?, ?> member) {
        String key = quoted(member.getKey().toString()) + ": ";
        out.append(key);
        write(member.getValue(), indent + 1, inner.length() + key.length() + 1, out);
      } else {
        write(entry, indent + 1, inner.length() + 1, out);
      }
    }
    out.append('\n').append("  ".repeat(indent)).append(list ? "]" : "}");
  }

  private static boolean isPlain(Object value) {
    return !(value instanceof List<?> list && !list.isEmpty())
        && !(value instanceof Map<?, ?> map && !map.isEmpty());
  }

  private static String flat(Object value) {
    if (value instanceof Map<?, ?> map) {
      List<String> members = new ArrayList<>();
      map.forEach((key, v) -> members.add(quoted(key.toString()) + ": " + flat(v)));
      return members.isEmpty() ? "{}" : "{ " + String.join(", ", members) + " }";
    } else if (value instanceof List<?> list) {
      return "[" + String.join(", ", list.stream().map(Json::flat).toList()) + "]";
    } else if (value instanceof Double number) {
      return Item.plain(number);
    } else if (value instanceof BigDecimal number) {
      return number.toPlainString();
    } else if (value instanceof Boolean || value instanceof Integer) {
      return value.toString();
    }
    return quoted((String) value);
  }

  private static String quoted(String text) {
    return '"' + new String(JsonStringEncoder.getInstance().quoteAsString(text)) + '"';
  }
}
