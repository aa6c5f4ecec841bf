package foilwright.document;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One kind of document and its versions. The first line of a document says both: {@code "format":
 * "foilwright pattern 1"}.
 *
 * @param name such as {@code pattern}
 * @param upgrades the step at index v turns version v into version v + 1; their number is the
 *     current version
 */
record Format(String name, List<UnaryOperator<Node.ObjectNode>> upgrades) {
  private static final Pattern FORM = Pattern.compile("foilwright ([a-z]{1,20}) (\\d{1,4})");
  private static final List<String> NAMES = List.of("pattern", "guest", "house", "attempt");

  /** Version 0 was a draft, in which a section said {@code startFrom} for {@code from}. */
  static final Format PATTERN = new Format("pattern", List.of(Format::patternFrom0));

  /** Guests and houses began with version 1: nothing leads there from 0. */
  static final Format GUEST = new Format("guest", List.of(UnaryOperator.identity()));

  static final Format HOUSE = new Format("house", List.of(UnaryOperator.identity()));

  static final Format ATTEMPT = new Format("attempt", List.of(UnaryOperator.identity()));

  Format {
    upgrades = List.copyOf(upgrades);
  }

  /** The name of the format that a document states, known or not. */
  static Optional<String> findName(Node root) {
    return root.findMember("format")
        .filter(Node.TextNode.class::isInstance)
        .map(stated -> FORM.matcher(((Node.TextNode) stated).text().strip()))
        .filter(Matcher::matches)
        .map(form -> form.group(1));
  }

  int version() {
    return upgrades.size();
  }

  /** The text that stands in a document of the current version. */
  String text() {
    return "foilwright " + name + " " + version();
  }

  private int oldest() {
    return name.equals("pattern") ? 0 : 1;
  }

  /** The document in the current version, or nothing when it is another kind or from the future. */
  Optional<Node.ObjectNode> bringUpToDate(Node root, ProblemLog problems) {
    if (!(root instanceof Node.ObjectNode object)) {
      problems.error(
          "wrong-type",
          "",
          root.place(),
          root.kind() + " stands where a group in curly brackets belongs",
          "start the document with { \"format\": \"" + text() + "\"");
      return Optional.empty();
    }
    String say = "write \"format\": \"" + text() + "\"";
    Optional<Node> stated = object.findMember("format");
    if (stated.isEmpty()) {
      problems.error("missing-key", "", root.place(), "the document does not say its format", say);
      return Optional.empty();
    }
    Place place = stated.get().place();
    Matcher form =
        FORM.matcher(stated.get() instanceof Node.TextNode text ? text.text().strip() : "");
    if (!form.matches() || !NAMES.contains(form.group(1))) {
      problems.error("wrong-format", "format", place, "this is not a format that is known", say);
      return Optional.empty();
    }
    if (!form.group(1).equals(name)) {
      problems.error(
          "wrong-format",
          "format",
          place,
          "this is a document of the kind " + form.group(1) + ", not " + name,
          "choose a " + name + ", or use this one as a " + form.group(1));
      return Optional.empty();
    }
    int from = Integer.parseInt(form.group(2));
    if (from > version() || from < oldest()) {
      problems.error(
          "wrong-format",
          "format",
          place,
          "version "
              + from
              + " of the "
              + name
              + " format is not known here; the newest is "
              + version(),
          "open it with the program that wrote it, or write it again as version " + version());
      return Optional.empty();
    }
    for (int v = from; v < version(); v++) {
      object = upgrades.get(v).apply(object);
    }
    return Optional.of(object);
  }

  private static Node.ObjectNode patternFrom0(Node.ObjectNode pattern) {
    Optional<Node> sections = pattern.findMember("sections");
    if (sections.isEmpty() || !(sections.get() instanceof Node.ArrayNode array)) {
      return pattern;
    }
    List<Node> renamed =
        array.items().stream()
            .map(
                item ->
                    item instanceof Node.ObjectNode section
                        ? (Node) section.renamed("startFrom", "from")
                        : item)
            .toList();
    return pattern.with("sections", new Node.ArrayNode(array.place(), renamed));
  }
}
