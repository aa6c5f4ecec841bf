package foilwright.service;

import foilwright.hair.HairProfile;
import foilwright.placement.PlacedFoil;
import foilwright.problem.Problem;
import foilwright.units.Density;
import foilwright.units.Length;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * How fast one person works, on a usual day.
 *
 * <p>A timed visit tells how far the times of placing are off: all that happens between the first
 * parting and the last foil ({@link PaceEntry#placing}) is scaled by the sum of what it took over
 * the sum of what was planned, kept within {@value #LEAST_FACTOR} to {@value #MOST_FACTOR}.
 *
 * @param name such as {@code stylist}
 * @param basis where the times come from, such as {@code common practice} or {@code own timing}
 * @param times one for every entry, before any timing
 * @param daySpread standard deviation, over the mean, of the pace-of-the-day factor: all times of a
 *     day are longer or shorter together; 0 to 0.5, usually 0.12
 * @param timings oldest first, at most {@value #MOST_TIMINGS}
 * @param learning how the person gets faster foil by foil
 */
public record PaceProfile(
    String name,
    String basis,
    Map<PaceEntry, ThreePoint> times,
    Share daySpread,
    List<Timing> timings,
    Learning learning) {
  public static final double LEAST_FACTOR = 0.3;
  public static final double MOST_FACTOR = 3;
  public static final int MOST_TIMINGS = 100;
  public static final Share USUAL_DAY_SPREAD = Share.ofPercent(12);
  public static final Share MOST_DAY_SPREAD = Share.ofPercent(50);

  /**
   * One timed placing, from the first parting to the last foil.
   *
   * @param planned by the times as written, without earlier timings; more than 0
   * @param took by the watch, more than 0
   * @param foils placed in it, 1 or more
   */
  public record Timing(Minutes planned, Minutes took, int foils, Optional<LocalDate> date) {
    public Timing {
      Objects.requireNonNull(date);
      if (planned.compareTo(Minutes.ZERO) <= 0 || took.compareTo(Minutes.ZERO) <= 0 || foils < 1) {
        throw new IllegalArgumentException(
            "a timing needs more than 0 min planned and taken and a foil or more, not "
                + planned
                + ", "
                + took
                + " and "
                + foils);
      }
    }
  }

  public PaceProfile {
    Objects.requireNonNull(learning);
    timings = List.copyOf(timings);
    if (timings.size() > MOST_TIMINGS) {
      throw new IllegalArgumentException(timings.size() + " timings are more than " + MOST_TIMINGS);
    }
    if (name.isBlank() || basis.isBlank()) {
      throw new IllegalArgumentException("a pace profile needs a name and a basis");
    }
    Map<PaceEntry, ThreePoint> copy = new EnumMap<>(PaceEntry.class);
    copy.putAll(times);
    if (copy.size() < PaceEntry.values().length) {
      throw new IllegalArgumentException(
          "the pace profile "
              + name
              + " has no time for "
              + Arrays.stream(PaceEntry.values())
                  .filter(entry -> !copy.containsKey(entry))
                  .map(PaceEntry::key)
                  .collect(Collectors.joining(", ")));
    }
    times = Collections.unmodifiableMap(copy);
    if (daySpread.toFraction() < 0 || daySpread.compareTo(MOST_DAY_SPREAD) > 0) {
      throw new IllegalArgumentException(
          "a day's spread of " + daySpread + " is outside 0 % to " + MOST_DAY_SPREAD);
    }
  }

  /** A person who was never timed and does not get faster. */
  public PaceProfile(String name, String basis, Map<PaceEntry, ThreePoint> times, Share daySpread) {
    this(name, basis, times, daySpread, List.of(), Learning.NONE);
  }

  /** One entry's time, as timed; learning not counted. */
  public ThreePoint of(PaceEntry entry) {
    ThreePoint written = times.get(entry);
    return entry.placing() && !timings.isEmpty() ? written.times(timedFactor()) : written;
  }

  /** Sum taken over sum planned, however far off; 1 without a timing. */
  private double measured() {
    Minutes planned = Minutes.ZERO;
    Minutes took = Minutes.ZERO;
    for (Timing timing : timings) {
      planned = planned.plus(timing.planned());
      took = took.plus(timing.took());
    }
    return timings.isEmpty() ? 1 : took.toMinutes() / planned.toMinutes();
  }

  /** By what the times of placing are scaled. */
  public double timedFactor() {
    return Math.max(LEAST_FACTOR, Math.min(MOST_FACTOR, measured()));
  }

  /**
   * Adds a timing; the oldest goes when there are too many. Foils placed count for learning.
   *
   * @param planned what a plan with this pace said, from the first parting to the last foil
   * @param took by the watch
   */
  public PaceProfile withTiming(
      Minutes planned, Minutes took, int foils, Optional<LocalDate> date) {
    double asWritten = Math.round(planned.toMinutes() / timedFactor() * 100) / 100.0;
    List<Timing> all = new ArrayList<>(timings);
    all.add(new Timing(Minutes.ofMinutes(Math.max(0.1, asWritten)), took, foils, date));
    return new PaceProfile(
        name,
        basis,
        times,
        daySpread,
        all.subList(Math.max(0, all.size() - MOST_TIMINGS), all.size()),
        learning.equals(Learning.NONE) ? learning : learning.after(foils));
  }

  /** The same without its newest timing, if it has one. */
  public PaceProfile withoutLastTiming() {
    if (timings.isEmpty()) {
      return this;
    }
    int last = timings.size() - 1;
    return new PaceProfile(
        name,
        basis,
        times,
        daySpread,
        timings.subList(0, last),
        learning.equals(Learning.NONE) ? learning : learning.after(-timings.get(last).foils()));
  }

  /**
   * What timings and learning did.
   *
   * @param path where the profile stands in its document
   * @return notes, and a warning when the timings are far off
   */
  public List<Problem> problems(String path) {
    List<Problem> problems = new ArrayList<>();
    if (!timings.isEmpty()) {
      String told =
          String.format(
              Locale.ROOT,
              "pace %s, %d timed: placing takes %.2f of the written times",
              name,
              timings.size(),
              measured());
      problems.add(
          Math.abs(measured() - timedFactor()) < 1e-12
              ? Problem.note("timed", path, told, "time the next visit to make it surer")
              : Problem.warning(
                  "timed-far-off",
                  path,
                  told
                      + String.format(
                          Locale.ROOT, ", kept within %.1f to %.1f", LEAST_FACTOR, MOST_FACTOR),
                  "look for a slip in the timings, or correct the profile's times"));
    }
    if (!learning.equals(Learning.NONE)) {
      problems.add(
          Problem.note(
              "learning",
              path,
              String.format(
                  Locale.ROOT,
                  "pace %s learns: %d foils done, timed at %d, %s after each doubling; the next foil"
                      + " takes %.2f of the profile's time",
                  name,
                  learning.foilsDone(),
                  learning.timedAt(),
                  learning.rate(),
                  learning.factor(1)),
              "keep the number of foils done up to date"));
    }
    return List.copyOf(problems);
  }

  /**
   * Time to place one foil: parting, picks, foil, product and fold; learning not counted.
   *
   * @param width of the foil along the parting, 0 or more
   * @param picks strokes of the comb, 0 or more
   * @param hairLength mean length of the hair in it, 0 or more
   */
  public ThreePoint placing(Length width, double picks, Length hairLength) {
    return of(PaceEntry.FOIL)
        .plus(of(PaceEntry.PER_CENTIMETRE_OF_PARTING).times(width.toMillimetres() / 10))
        .plus(of(PaceEntry.PER_PICK).times(picks))
        .plus(of(PaceEntry.PER_CENTIMETRE_OF_HAIR).times(hairLength.toMillimetres() / 10));
  }

  /** Time to place one foil, learning not counted. */
  public ThreePoint placing(PlacedFoil foil) {
    return placing(foil.width(), foil.picks(), foil.hairLength());
  }

  /**
   * Time to place one foil.
   *
   * @param next which foil of the visit it is, from 1 in working order
   */
  public ThreePoint placing(PlacedFoil foil, int next) {
    return placing(foil).times(learning.factor(next));
  }

  /** Time to dry hair of this mean length and density over the head. */
  public ThreePoint drying(Length meanLength, Density density) {
    double fullness =
        density.toHairsPerSquareCentimetre()
            / HairProfile.USUAL_DENSITY.toHairsPerSquareCentimetre();
    return of(PaceEntry.DRY)
        .plus(
            of(PaceEntry.DRY_PER_CENTIMETRE_OF_HAIR)
                .times(meanLength.toMillimetres() / 10 * fullness));
  }
}
