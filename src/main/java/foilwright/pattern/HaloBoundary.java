package foilwright.pattern;

import java.util.Objects;
import java.util.function.Function;

/** The line from which a halo's distances are measured. */
public sealed interface HaloBoundary {
  /** A line of the head itself. */
  record Line(HeadLine line) implements HaloBoundary {
    public Line {
      Objects.requireNonNull(line);
    }
  }

  /** The inner edge (the one farther from the hairline) of an earlier section. */
  record InnerEdgeOf(String section) implements HaloBoundary {
    public InnerEdgeOf {
      Require.text(section, "a section's name");
    }
  }

  /** Lines of the head that a halo may follow. */
  enum HeadLine {
    HAIRLINE("hairline"),
    PART_LINE("part line"),
    CENTRE_LINE("centre line");

    private final String words;

    HeadLine(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  default <R> R match(Function<Line, R> line, Function<InnerEdgeOf, R> innerEdge) {
    if (this instanceof Line l) {
      return line.apply(l);
    }
    return innerEdge.apply((InnerEdgeOf) this);
  }
}
