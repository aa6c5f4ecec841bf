package foilwright.service;

import foilwright.problem.Problem;
import foilwright.units.Mass;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * How much mix a foil takes: a film that stays on the foil whatever it holds, and so many grams for
 * every gram of hair in it. One factor on the hair alone cannot give what the trade weighs: it
 * would have to be four times larger for regrowth than for long hair.
 *
 * <p>A bowl that is weighed back tells how far a house is off. Both constants are scaled by the sum
 * of what was used over the sum of what was planned, kept within {@value #LEAST_FACTOR} to {@value
 * #MOST_FACTOR}.
 *
 * @param film mixed weight on a foil without hair, 0 or more, before any weighing back
 * @param perGramOfHair mixed grams for one gram of hair beside the film, 0 or more, before any
 *     weighing back
 * @param weighBacks oldest first, at most {@value #MOST_WEIGH_BACKS}
 */
public record TakeUp(Mass film, double perGramOfHair, List<WeighBack> weighBacks) {
  public static final double LEAST_FACTOR = 0.3;
  public static final double MOST_FACTOR = 3;
  public static final int MOST_WEIGH_BACKS = 100;
  public static final double MOST_PER_GRAM = 20;
  public static final Mass MOST_FILM = Mass.ofGrams(20);

  /** Common practice: these fit the 1.1, 2.9 and 6.2 g of a small, a middle and a long foil. */
  public static final TakeUp USUAL = new TakeUp(Mass.ofGrams(0.9), 1.2, List.of());

  /**
   * One weighing.
   *
   * @param planned what the foils were to take by film and grams per gram of hair as written,
   *     without waste; more than 0
   * @param used what they took: mixed less left over; more than 0
   */
  public record WeighBack(Mass planned, Mass used, Optional<LocalDate> date) {
    public WeighBack {
      Objects.requireNonNull(date);
      if (planned.compareTo(Mass.ZERO) <= 0 || used.compareTo(Mass.ZERO) <= 0) {
        throw new IllegalArgumentException(
            "a weighing back needs more than 0 g planned and used, not "
                + planned
                + " and "
                + used);
      }
    }
  }

  public TakeUp {
    weighBacks = List.copyOf(weighBacks);
    if (film.compareTo(Mass.ZERO) < 0
        || film.compareTo(MOST_FILM) > 0
        || !(perGramOfHair >= 0 && perGramOfHair <= MOST_PER_GRAM)) {
      throw new IllegalArgumentException(
          "a film of "
              + film
              + " and a take-up of "
              + perGramOfHair
              + " must be 0 or more, at most "
              + MOST_FILM
              + " and "
              + MOST_PER_GRAM);
    }
    if (weighBacks.size() > MOST_WEIGH_BACKS) {
      throw new IllegalArgumentException(
          weighBacks.size() + " weighings back are more than " + MOST_WEIGH_BACKS);
    }
  }

  /** Sum used over sum planned, however far off; 1 without a weighing. */
  private double measured() {
    Mass planned = Mass.ZERO;
    Mass used = Mass.ZERO;
    for (WeighBack weighed : weighBacks) {
      planned = planned.plus(weighed.planned());
      used = used.plus(weighed.used());
    }
    return weighBacks.isEmpty() ? 1 : used.toGrams() / planned.toGrams();
  }

  /** By what both constants are scaled. */
  public double factor() {
    return Math.max(LEAST_FACTOR, Math.min(MOST_FACTOR, measured()));
  }

  /** The film as weighed back. */
  public Mass effectiveFilm() {
    return film.times(factor());
  }

  /** The grams per gram of hair as weighed back. */
  public double effectivePerGramOfHair() {
    return perGramOfHair * factor();
  }

  /** Mixed weight that one foil takes, as weighed back. */
  public Mass mixed(Mass hair) {
    return effectiveFilm().plus(hair.times(effectivePerGramOfHair()));
  }

  /**
   * Adds a weighing; the oldest goes when there are too many.
   *
   * @param planned what a plan with this take-up said the foils would take, without waste
   * @param used what they took
   */
  public TakeUp withWeighBack(Mass planned, Mass used, Optional<LocalDate> date) {
    double asWritten = Math.round(planned.toGrams() / factor() * 10) / 10.0;
    List<WeighBack> all = new ArrayList<>(weighBacks);
    all.add(new WeighBack(Mass.ofGrams(Math.max(0.1, asWritten)), used, date));
    return new TakeUp(
        film, perGramOfHair, all.subList(Math.max(0, all.size() - MOST_WEIGH_BACKS), all.size()));
  }

  /** The same without its newest weighing, if it has one. */
  public TakeUp withoutLastWeighBack() {
    return weighBacks.isEmpty()
        ? this
        : new TakeUp(film, perGramOfHair, weighBacks.subList(0, weighBacks.size() - 1));
  }

  /**
   * What the weighings did.
   *
   * @param path where the take-up stands in its document
   * @return nothing without weighings, else a note, and a warning when they are far off
   */
  public List<Problem> problems(String path) {
    if (weighBacks.isEmpty()) {
      return List.of();
    }
    String told =
        String.format(
            Locale.ROOT,
            "%d weighed back: %.2f of what was planned; a foil takes %.2f g and %.2f g for each"
                + " gram of hair",
            weighBacks.size(),
            measured(),
            effectiveFilm().toGrams(),
            effectivePerGramOfHair());
    return Math.abs(measured() - factor()) < 1e-12
        ? List.of(
            Problem.note("weighed-back", path, told, "weigh the next bowl back to make it surer"))
        : List.of(
            Problem.warning(
                "weighed-back-far-off",
                path,
                told
                    + String.format(
                        Locale.ROOT, ", kept within %.1f to %.1f", LEAST_FACTOR, MOST_FACTOR),
                "look for a slip in the weights, or correct the film and the grams per gram"));
  }
}
