package foilwright.service.marking;

import java.util.List;

/**
 * An attempt with its scores: by foil, then what is counted over the head.
 *
 * @param unknown numbers of measured foils that the plan does not have
 */
public record MarkedAttempt(Attempt attempt, List<Score> scores, List<Integer> unknown) {
  public MarkedAttempt {
    scores = List.copyOf(scores);
    unknown = List.copyOf(unknown);
  }

  /** How many values pass. */
  public int within() {
    return (int) scores.stream().filter(Score::isWithin).count();
  }
}
