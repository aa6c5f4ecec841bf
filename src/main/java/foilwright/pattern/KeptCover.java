package foilwright.pattern;

import java.util.Optional;

/** The least background that must stay over an edge; absent where none is demanded. */
public record KeptCover(
    Optional<Extent> atHairline, Optional<Extent> atPart, Optional<Extent> overFringe) {
  public static final KeptCover NONE =
      new KeptCover(Optional.empty(), Optional.empty(), Optional.empty());

  public KeptCover {
    atHairline.ifPresent(e -> Require.notNegative(e, "a kept cover"));
    atPart.ifPresent(e -> Require.notNegative(e, "a kept cover"));
    overFringe.ifPresent(e -> Require.notNegative(e, "a kept cover"));
  }
}
