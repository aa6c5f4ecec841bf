package foilwright.app;

import java.util.Optional;

/**
 * One pattern of the library.
 *
 * @param name by which it is planned
 * @param own whether it is the person's own rather than shipped
 * @param title empty when the document has an error
 * @param summary may be empty
 * @param sections how many it has
 */
public record ListedPattern(
    String name, boolean own, Optional<String> title, String summary, int sections) {}
