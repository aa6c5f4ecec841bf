package foilwright.document;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Maps paths such as {@code sections[2].fill.slice} to places in the text that was read. */
public final class Places {
  private static final Pattern STEP = Pattern.compile("([^.\\[\\]]+)|\\[(\\d{1,9})\\]");

  private final Optional<Node> root;

  Places(Optional<Node> root) {
    this.root = root;
  }

  /** No text was read: every path lies in the whole. */
  static Places none() {
    return new Places(Optional.empty());
  }

  /** The place of the path, or of the nearest thing that holds it. */
  public Place find(String path) {
    if (root.isEmpty()) {
      return Place.WHOLE;
    }
    Node node = root.get();
    Matcher step = STEP.matcher(path);
    while (step.find()) {
      Optional<Node> next =
          step.group(1) != null
              ? node.findMember(step.group(1))
              : node.findItem(Integer.parseInt(step.group(2)));
      if (next.isEmpty()) {
        break;
      }
      node = next.get();
    }
    return node.place();
  }
}
