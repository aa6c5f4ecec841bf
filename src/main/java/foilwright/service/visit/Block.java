package foilwright.service.visit;

import foilwright.units.Minutes;
import java.util.Objects;

/**
 * One unbroken stretch of a visit, on a usual day.
 *
 * @param name in words, such as {@code place the foils}
 * @param kind whether somebody is needed
 * @param start minutes from the start of the visit
 * @param end not before {@code start}
 */
public record Block(String name, Kind kind, Minutes start, Minutes end) {
  /** What a stretch asks of the person who works. */
  public enum Kind {
    HANDS("hands on"),
    /** Chemistry works and somebody looks in. */
    DEVELOPING("developing, with checks"),
    /** Nobody is needed at the chair until it ends. */
    FREE("free gap");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public Block {
    Objects.requireNonNull(kind);
    if (name.isBlank() || end.compareTo(start) < 0) {
      throw new IllegalArgumentException(
          "the stretch \"" + name + "\" cannot run from " + start + " to " + end);
    }
  }

  public Minutes length() {
    return end.minus(start);
  }
}
