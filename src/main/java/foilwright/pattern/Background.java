package foilwright.pattern;

import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/** The hair left out between two slices. */
public sealed interface Background {
  /** The same width all along each parting. */
  record Even(Run width) implements Background {
    public Even {
      Objects.requireNonNull(width);
    }
  }

  /**
   * Each background closes to its own point on the region's border.
   *
   * @param width at the wide end
   */
  record Wedge(Run width, WideEnd wideEnd, Points points) implements Background {
    public Wedge {
      Objects.requireNonNull(width);
      Objects.requireNonNull(wideEnd);
      Objects.requireNonNull(points);
    }
  }

  /** No background: foils lie back-to-back. */
  record None() implements Background {}

  /** Where the points of successive wedges lie. */
  enum Points {
    /** All at one end: the partings turn a little with every wedge. */
    SAME_END("same end"),
    /** At one end and the other in turn: the partings keep their direction. */
    ALTERNATE_ENDS("alternate ends");

    private final String words;

    Points(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  default <R> R match(Function<Even, R> even, Function<Wedge, R> wedge, Function<None, R> none) {
    if (this instanceof Even e) {
      return even.apply(e);
    } else if (this instanceof Wedge w) {
      return wedge.apply(w);
    }
    return none.apply((None) this);
  }

  /** How wide it is, a wedge at its wide end; empty where foils lie back-to-back. */
  default Optional<Run> findWidth() {
    return match(e -> Optional.of(e.width()), w -> Optional.of(w.width()), n -> Optional.empty());
  }

  /** The same kind with another width; foils that lie back-to-back stay so. */
  default Background withWidth(Run width) {
    return match(e -> new Even(width), w -> new Wedge(width, w.wideEnd(), w.points()), n -> n);
  }

  default Background mirrored() {
    return match(e -> e, w -> new Wedge(w.width(), w.wideEnd().mirrored(), w.points()), n -> n);
  }
}
