package foilwright.pattern;

import foilwright.units.Length;
import foilwright.units.Share;
import java.util.function.Function;

/** How deep into a slice a pick reaches: a length, or a share of the slice. */
public sealed interface PickDepth {
  record OfLength(Length length) implements PickDepth {
    public OfLength {
      Require.positive(length, "a pick's depth");
    }
  }

  record OfSlice(Share share) implements PickDepth {
    public OfSlice {
      if (!(share.toFraction() > 0 && share.toFraction() <= 1)) {
        throw new IllegalArgumentException(
            "a pick's depth must be more than 0 % and at most 100 % of the slice, not " + share);
      }
    }
  }

  /** Through the whole slice. */
  static PickDepth whole() {
    return new OfSlice(Share.ofFraction(1));
  }

  default <R> R match(Function<OfLength, R> length, Function<OfSlice, R> slice) {
    if (this instanceof OfLength l) {
      return length.apply(l);
    }
    return slice.apply((OfSlice) this);
  }

  /** The share of a slice of this thickness that lies within reach, at most all of it. */
  default Share within(Length slice) {
    Require.positive(slice, "a slice");
    return match(
        l -> Share.ofFraction(Math.min(1, l.length().toMillimetres() / slice.toMillimetres())),
        OfSlice::share);
  }
}
