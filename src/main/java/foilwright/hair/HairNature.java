package foilwright.hair;

import java.util.Objects;
import java.util.Optional;

/**
 * Of what nature hair is; what nobody looked at stays empty.
 *
 * @param level natural depth
 * @param fineness by touch
 * @param porosity how readily it takes up liquid
 */
public record HairNature(
    Optional<Level> level, Optional<Fineness> fineness, Optional<Porosity> porosity) {
  public static final HairNature UNKNOWN =
      new HairNature(Optional.empty(), Optional.empty(), Optional.empty());

  public HairNature {
    Objects.requireNonNull(level);
    Objects.requireNonNull(fineness);
    Objects.requireNonNull(porosity);
  }

  public static HairNature of(Level level, Fineness fineness, Porosity porosity) {
    return new HairNature(Optional.of(level), Optional.of(fineness), Optional.of(porosity));
  }

  /** What is known here, and for the rest what is known elsewhere. */
  public HairNature orElse(HairNature elsewhere) {
    return new HairNature(
        level.or(elsewhere::level),
        fineness.or(elsewhere::fineness),
        porosity.or(elsewhere::porosity));
  }
}
