package foilwright.pattern;

import java.util.function.Function;

/** How a parting's length is divided into foils lying side by side. */
public sealed interface FoilRule {
  /** As few as are needed at no more than the usable width, all of one width. */
  record Evenly() implements FoilRule {}

  /** One of at most the usable width in the middle; the rest stays background. */
  record OneCentred() implements FoilRule {}

  /** This many, all of one width. */
  record Count(int foils) implements FoilRule {
    public Count {
      if (foils < 1) {
        throw new IllegalArgumentException("a slice needs at least 1 foil, not " + foils);
      }
    }
  }

  default <R> R match(
      Function<Evenly, R> evenly, Function<OneCentred, R> oneCentred, Function<Count, R> count) {
    if (this instanceof Evenly r) {
      return evenly.apply(r);
    } else if (this instanceof OneCentred r) {
      return oneCentred.apply(r);
    }
    return count.apply((Count) this);
  }
}
