package foilwright.drawing;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * One thing on a sheet.
 *
 * @param id unique in its scene and the same whenever the same plan is drawn: lower case letters,
 *     figures and hyphens
 * @param title what a screen reader says; empty for a mark that only decorates
 * @param data facts that a page can look up, by name; kept in the order of the names, so that files
 *     are the same whatever map they came in
 * @param parts drawn in this order
 */
public record Mark(
    String id, Role role, Layer layer, String title, Map<String, String> data, List<Part> parts) {
  private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9-]*");

  public Mark {
    Objects.requireNonNull(role);
    Objects.requireNonNull(layer);
    Objects.requireNonNull(title);
    requireName(id);
    data.keySet().forEach(Mark::requireName);
    data = Collections.unmodifiableSortedMap(new TreeMap<>(data));
    parts = List.copyOf(parts);
    if (parts.isEmpty()) {
      throw new IllegalArgumentException("mark " + id + " shows nothing");
    }
  }

  /** A mark that only decorates. */
  public static Mark plain(String id, Role role, Layer layer, Part... parts) {
    return new Mark(id, role, layer, "", Map.of(), List.of(parts));
  }

  static void requireName(String name) {
    if (!NAME.matcher(name).matches()) {
      throw new IllegalArgumentException(
          "\"" + name + "\" is not a name of lower case letters, figures and hyphens");
    }
  }

  /** The least box that holds every part. */
  public Box bounds() {
    return parts.stream().map(Part::bounds).reduce(Box::union).orElseThrow();
  }
}
