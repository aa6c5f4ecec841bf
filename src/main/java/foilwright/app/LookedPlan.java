package foilwright.app;

import foilwright.anatomy.PartSide;
import foilwright.look.Advice;
import foilwright.look.Look;
import foilwright.look.LookFigures;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A plan with what will be seen of it.
 *
 * @param after as the hair is worn after the visit
 * @param before the same as the guest comes in
 * @param flipped after, with the part on the other side
 * @param flippedPart where that part is
 * @param up after, tied up
 * @param later after some months of growth, when asked for
 * @param advice from all of them
 * @param ranked all foils, the one that shows most for its time first
 */
public record LookedPlan(
    Plan plan,
    LookRequest request,
    Seen after,
    Seen before,
    Seen flipped,
    PartSide flippedPart,
    Seen up,
    Optional<Seen> later,
    List<Advice> advice,
    List<Advice.Worth> ranked) {

  /** A look and its figures. */
  public record Seen(Look look, LookFigures figures) {
    public Seen {
      Objects.requireNonNull(look);
      Objects.requireNonNull(figures);
    }

    static Seen of(Look look) {
      return new Seen(look, LookFigures.of(look));
    }
  }

  public LookedPlan {
    Objects.requireNonNull(plan);
    Objects.requireNonNull(request);
    advice = List.copyOf(advice);
    ranked = List.copyOf(ranked);
  }
}
