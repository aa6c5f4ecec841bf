package foilwright.document;

import foilwright.pattern.Extent;
import foilwright.units.Length;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One value of a document. Every reading method reports what is wrong and then gives a value that
 * is allowed, so that the reading goes on and all problems come out at once.
 */
record Item(Node node, String path, ProblemLog problems) {
  private static final String NUMBER = "\\s*[+-]?(\\d+\\.?\\d*|\\.\\d+)";

  void error(String code, String message, String cure) {
    problems.error(code, path, node.place(), message, cure);
  }

  private void wrongType(String wanted) {
    error("wrong-type", node.kind() + " stands where " + wanted + " belongs", "write " + wanted);
  }

  /** A part of this text, read on its own but reported at the same place. */
  Item part(String text) {
    return new Item(new Node.TextNode(node.place(), text.strip()), path, problems);
  }

  boolean isText() {
    return node instanceof Node.TextNode;
  }

  boolean isNumber() {
    return node instanceof Node.NumberNode;
  }

  boolean isList() {
    return node instanceof Node.ArrayNode;
  }

  /** The raw text, or an empty one after a problem. */
  private String raw(String wanted) {
    if (node instanceof Node.TextNode text) {
      return text.text();
    }
    wrongType(wanted);
    return "";
  }

  /** A name or title: one line, 1 to {@value Limits#NAME} characters. */
  String name() {
    if (!isText()) {
      wrongType("text in quotes");
      return "?";
    }
    String text = raw("").strip();
    if (text.isEmpty()) {
      error("out-of-range", "the text is empty", "write a word or two");
      return "?";
    }
    return limited(text, Limits.NAME);
  }

  /** A sentence or two, at most {@value Limits#SENTENCE} characters; may be empty. */
  String sentence() {
    return limited(raw("text in quotes").strip(), Limits.SENTENCE);
  }

  private String limited(String text, int most) {
    if (text.codePointCount(0, text.length()) > most) {
      error(
          "out-of-range",
          "the text has more than " + most + " characters",
          "say it in at most " + most + " characters");
      return "?";
    }
    boolean bad =
        text.codePoints()
            .anyMatch(
                c ->
                    Character.isISOControl(c)
                        || Character.getType(c) == Character.SURROGATE
                        || Character.getType(c) == Character.FORMAT);
    if (bad) {
      error(
          "bad-character",
          "the text holds a line break, tab or other character that cannot be printed",
          "write plain text on one line");
      return "?";
    }
    return text;
  }

  /** A day, {@code YYYY-MM-DD}; nothing after a problem. */
  Optional<LocalDate> date() {
    String text = name();
    try {
      return text.equals("?") ? Optional.empty() : Optional.of(LocalDate.parse(text));
    } catch (DateTimeParseException e) {
      error(
          "wrong-form",
          "\"" + Fields.shortened(text) + "\" is not a date",
          "write year-month-day, such as \"2026-03-01\"");
      return Optional.empty();
    }
  }

  boolean yesOrNo() {
    if (node instanceof Node.BooleanNode b) {
      return b.value();
    }
    wrongType("true or false");
    return false;
  }

  int wholeNumber(int least, int most) {
    if (!(node instanceof Node.NumberNode number)) {
      wrongType("a whole number without quotes");
      return least;
    }
    BigDecimal value = new BigDecimal(number.text());
    if (value.compareTo(BigDecimal.valueOf(least)) < 0
        || value.compareTo(BigDecimal.valueOf(most)) > 0
        || !isWhole(value)) {
      error(
          "out-of-range",
          Fields.shortened(number.text()) + " is not a whole number from " + least + " to " + most,
          "write a whole number from " + least + " to " + most);
      return least;
    }
    return value.intValueExact();
  }

  private static boolean isWhole(BigDecimal value) {
    return value.scale() <= 0 || value.stripTrailingZeros().scale() <= 0;
  }

  /** A number without a unit, such as a factor. */
  double number(double least, double most) {
    if (!(node instanceof Node.NumberNode number)) {
      wrongType("a number without quotes and without a unit");
      return least;
    }
    double value = Double.parseDouble(number.text());
    if (!(value >= least && value <= most)) {
      error(
          "out-of-range",
          Fields.shortened(number.text()) + " is outside " + plain(least) + " to " + plain(most),
          "write a number from " + plain(least) + " to " + plain(most));
      return least;
    }
    return value;
  }

  static String plain(double value) {
    BigDecimal decimal = BigDecimal.valueOf(value).stripTrailingZeros();
    return decimal.signum() == 0 ? "0" : decimal.toPlainString();
  }

  /** One of the words. */
  <E> E word(E[] values, Function<E, String> words) {
    Map<String, E> known =
        Stream.of(values)
            .collect(Collectors.toMap(words, Function.identity(), (a, b) -> a, LinkedHashMap::new));
    return word(known);
  }

  /** One of the words, in the order in which a message is to list them. */
  <E> E word(Map<String, E> known) {
    E first = known.values().iterator().next();
    if (!isText()) {
      wrongType("one of: " + String.join(", ", known.keySet()));
      return first;
    }
    String text = raw("").strip();
    E value = known.get(text);
    if (value == null) {
      unknownWord(text, known.keySet());
      return first;
    }
    return value;
  }

  void unknownWord(String text, Iterable<String> known) {
    List<String> words = new ArrayList<>();
    known.forEach(words::add);
    error(
        "unknown-word",
        "\"" + Fields.shortened(text) + "\" is not a word that is known here",
        Nearest.find(text, words)
                .map(near -> "write \"" + near + "\" if that is what was meant; known here: ")
                .orElse("use one of: ")
            + String.join(", ", words));
  }

  /** A quantity with its unit, from {@code least} to {@code most}. */
  <Q extends Comparable<Q>> Q quantity(Kind<Q> kind, Q least, Q most) {
    return quantity(kind, least, most, raw(kind));
  }

  private <Q> String raw(Kind<Q> kind) {
    if (node instanceof Node.NumberNode number) {
      return number.text();
    }
    if (node instanceof Node.TextNode text) {
      return text.text();
    }
    wrongType("text such as \"" + kind.example() + "\"");
    return "";
  }

  private <Q extends Comparable<Q>> Q quantity(Kind<Q> kind, Q least, Q most, String text) {
    if (!isText() && !isNumber()) {
      return least;
    }
    Q value;
    try {
      value = kind.parse().apply(text);
    } catch (IllegalArgumentException e) {
      error(codeOf(text), e.getMessage(), "write for example \"" + kind.example() + "\"");
      return least;
    }
    if (value.compareTo(least) < 0 || value.compareTo(most) > 0) {
      String range = kind.write(least) + " to " + kind.write(most);
      error("out-of-range", text.strip() + " is outside " + range, "write a value from " + range);
      return least;
    }
    return value;
  }

  private static String codeOf(String text) {
    if (text.matches(NUMBER + "([eE][+-]?\\d+)?\\s*")) {
      return "no-unit";
    }
    return text.matches(NUMBER + "\\s*[^\\s\\d].*") ? "wrong-unit" : "wrong-form";
  }

  /**
   * A length from {@code least} to {@code most}, or a proportion of the head; a proportion must be
   * more than nothing when {@code least} is, and at most 1.
   */
  Extent extent(Length least, Length most) {
    return extent(least, most, raw(Kind.LENGTH));
  }

  private Extent extent(Length least, Length most, String text) {
    if (!isText() || !text.contains(" of ")) {
      return Extent.of(quantity(Kind.LENGTH, least, most, text));
    }
    Extent value;
    try {
      value = Extent.parse(text);
    } catch (IllegalArgumentException e) {
      error("wrong-unit", e.getMessage(), "write for example \"0.4 of front-to-back\"");
      return Extent.of(least);
    }
    double part = value.amount();
    boolean low = least.compareTo(Length.ZERO) > 0 ? !(part > 0) : !(part >= 0);
    if (low || part > 1) {
      error(
          "out-of-range",
          text.strip() + " is not a part of the whole",
          "write a proportion from 0 to 1");
      return Extent.of(least);
    }
    return value;
  }

  /** One extent, or a first and a last: {@code "8 mm to 12 mm"}. */
  List<Extent> run(Length least, Length most) {
    String text = raw(Kind.LENGTH);
    int to = text.indexOf(" to ");
    if (!isText() || to < 0) {
      Extent value = extent(least, most, text);
      return List.of(value, value);
    }
    return List.of(
        extent(least, most, text.substring(0, to)), extent(least, most, text.substring(to + 4)));
  }

  /** The members of a group in curly brackets. */
  Fields fields() {
    if (node instanceof Node.ObjectNode object) {
      return new Fields(object, path, problems);
    }
    wrongType("a group in curly brackets");
    return new Fields(new Node.ObjectNode(node.place(), Map.of()), path, new ProblemLog());
  }

  /**
   * A group with one key, such as {@code { "diagonal": ... }}: each known key with what reads its
   * value.
   */
  <T> T oneOf(Map<String, Function<Item, T>> cases, T fallback) {
    if (!(node instanceof Node.ObjectNode object)) {
      wrongType("a group with one of: " + String.join(", ", cases.keySet()));
      return fallback;
    }
    if (object.members().size() != 1) {
      error(
          "wrong-type",
          "a group with " + object.members().size() + " keys stands where one belongs",
          "keep one of: " + String.join(", ", cases.keySet()));
      return fallback;
    }
    Fields fields = fields();
    T value = fallback;
    for (Map.Entry<String, Function<Item, T>> entry : cases.entrySet()) {
      value = fields.find(entry.getKey()).map(entry.getValue()).orElse(value);
    }
    fields.close();
    return value;
  }

  /** The entries of a list, from {@code least} to {@link Limits#ENTRIES} of them. */
  List<Item> items(int least) {
    if (!(node instanceof Node.ArrayNode array)) {
      wrongType("a list in square brackets");
      return List.of();
    }
    int count = array.items().size();
    if (count < least || count > Limits.ENTRIES) {
      error(
          "out-of-range",
          "the list has " + count + " entries",
          "write " + least + " to " + Limits.ENTRIES + " entries");
    }
    List<Item> items = new ArrayList<>();
    for (int i = 0; i < Math.min(count, Limits.ENTRIES); i++) {
      items.add(new Item(array.items().get(i), path + "[" + i + "]", problems));
    }
    return items;
  }

  /** A single value, or a list of them. */
  List<Item> oneOrMore() {
    return isList() ? items(1) : List.of(this);
  }

  /** Builds a value whose own limits may refuse it; the refusal becomes a problem. */
  <T> T build(Supplier<T> value, T fallback) {
    Objects.requireNonNull(fallback);
    try {
      return value.get();
    } catch (IllegalArgumentException e) {
      error("out-of-range", e.getMessage(), "write a value within those limits");
      return fallback;
    }
  }
}
