package foilwright.pattern;

import foilwright.units.Length;
import java.util.Objects;

/**
 * What becomes of a piece of parting shorter than a foil is worth.
 *
 * @param minimum pieces shorter than this fall under the rule
 */
public record ShortEnds(Rule rule, Length minimum) {
  /** Joined to the neighbour below 25 mm. */
  public static final ShortEnds USUAL = new ShortEnds(Rule.JOIN, Length.ofMillimetres(25));

  public ShortEnds {
    Objects.requireNonNull(rule);
    Require.notNegative(minimum, "a shortest foil");
  }

  /** Joined to the neighbouring foil, or left out. */
  public enum Rule {
    JOIN("join"),
    DROP("drop");

    private final String words;

    Rule(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }
}
