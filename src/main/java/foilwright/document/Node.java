package foilwright.document;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A value of a document with the place where it stands. */
sealed interface Node {
  Place place();

  /** What it is, for a message. */
  String kind();

  /** Keys in the order of the text. */
  record ObjectNode(Place place, Map<String, Member> members) implements Node {
    public ObjectNode {
      members = Collections.unmodifiableMap(new LinkedHashMap<>(members));
    }

    @Override
    public String kind() {
      return "a group in curly brackets";
    }

    ObjectNode with(String key, Node value) {
      Map<String, Member> changed = new LinkedHashMap<>(members);
      changed.put(key, new Member(value.place(), value));
      return new ObjectNode(place, changed);
    }

    /** The key takes another name; nothing changes when it is absent. */
    ObjectNode renamed(String from, String to) {
      Map<String, Member> changed = new LinkedHashMap<>();
      members.forEach((key, member) -> changed.put(key.equals(from) ? to : key, member));
      return new ObjectNode(place, changed);
    }
  }

  /** A key's place and its value. */
  record Member(Place keyPlace, Node value) {}

  record ArrayNode(Place place, List<Node> items) implements Node {
    public ArrayNode {
      items = Collections.unmodifiableList(new ArrayList<>(items));
    }

    @Override
    public String kind() {
      return "a list";
    }
  }

  record TextNode(Place place, String text) implements Node {
    @Override
    public String kind() {
      return "text";
    }
  }

  /** A number as it was written. */
  record NumberNode(Place place, String text) implements Node {
    @Override
    public String kind() {
      return "a bare number";
    }
  }

  record BooleanNode(Place place, boolean value) implements Node {
    @Override
    public String kind() {
      return value ? "true" : "false";
    }
  }

  record NullNode(Place place) implements Node {
    @Override
    public String kind() {
      return "null";
    }
  }

  default Optional<Node> findMember(String key) {
    return this instanceof ObjectNode object
        ? Optional.ofNullable(object.members().get(key)).map(Member::value)
        : Optional.empty();
  }

  default Optional<Node> findItem(int index) {
    return this instanceof ArrayNode array && index < array.items().size()
        ? Optional.of(array.items().get(index))
        : Optional.empty();
  }
}
