package foilwright.pattern;

import foilwright.units.Length;
import foilwright.units.Share;
import java.util.Objects;
import java.util.function.Function;

/** How hair is taken out of a slice. Widths are along the parting. */
public sealed interface Pick {
  /** Every hair of the slice. */
  record Solid() implements Pick {}

  /** The comb weaves: a pick is taken, a gap left. */
  record Weave(Length pick, Length gap, PickDepth depth) implements Pick {
    public Weave {
      Require.positive(pick, "a pick");
      Require.notNegative(gap, "a gap");
      Objects.requireNonNull(depth);
    }

    public static Weave ofMillimetres(double pick, double gap) {
      return new Weave(Length.ofMillimetres(pick), Length.ofMillimetres(gap), PickDepth.whole());
    }
  }

  /** The comb draws teeth and every second tooth is taken. */
  record Zigzag(Length tooth, Length gap, PickDepth depth) implements Pick {
    public Zigzag {
      Require.positive(tooth, "a tooth");
      Require.notNegative(gap, "a gap");
      Objects.requireNonNull(depth);
    }
  }

  default <R> R match(
      Function<Solid, R> solid, Function<Weave, R> weave, Function<Zigzag, R> zigzag) {
    if (this instanceof Solid p) {
      return solid.apply(p);
    } else if (this instanceof Weave p) {
      return weave.apply(p);
    }
    return zigzag.apply((Zigzag) this);
  }

  /** The same pick of another depth; a solid slice has none. */
  default Pick withDepth(PickDepth depth) {
    return match(
        s -> s,
        w -> new Weave(w.pick(), w.gap(), depth),
        z -> new Zigzag(z.tooth(), z.gap(), depth));
  }

  /** Share of the parting's length that is taken. */
  default Share shareAlong() {
    return match(
        s -> Share.ofFraction(1),
        w -> Share.ofFraction(taken(w.pick(), w.gap())),
        z -> Share.ofFraction(taken(z.tooth(), z.gap())));
  }

  /** Share of the hair of a slice of this thickness that is taken. */
  default Share pickedShare(Length slice) {
    double within =
        match(
            s -> 1.0,
            w -> w.depth().within(slice).toFraction(),
            z -> z.depth().within(slice).toFraction());
    return shareAlong().times(within);
  }

  /** Strokes of the comb per millimetre of parting; none for a solid slice. */
  default double picksPerMillimetre() {
    return match(
        s -> 0.0,
        w -> 1 / w.pick().plus(w.gap()).toMillimetres(),
        z -> 1 / z.tooth().plus(z.gap()).toMillimetres());
  }

  private static double taken(Length width, Length gap) {
    return width.toMillimetres() / width.plus(gap).toMillimetres();
  }
}
