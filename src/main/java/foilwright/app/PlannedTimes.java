package foilwright.app;

import foilwright.service.TimeRange;
import foilwright.service.mix.FoilSheets;
import foilwright.service.mix.TonerMix;
import foilwright.service.schedule.Cure;
import foilwright.service.schedule.OverTime;
import foilwright.service.schedule.Removal;
import foilwright.service.visit.Price;
import foilwright.service.visit.Visit;
import foilwright.units.Minutes;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The two clocks and the scale of a plan.
 *
 * @param visits one, or two when the foils are shared between two days; none when the way that was
 *     asked for takes some foil over its time
 * @param failed why there is no visit
 * @param straight whether all foils can go straight in and come out in the same order
 * @param cures what else would keep every window, when they cannot
 * @param sheets foil to cut
 * @param toner what is mixed for toning, of the house's first toner; one for each visit
 * @param prices one for each visit
 */
public record PlannedTimes(
    List<Visit> visits,
    Optional<OverTime> failed,
    Visit.Straight straight,
    List<Cure> cures,
    FoilSheets sheets,
    List<TonerMix> toner,
    List<Price> prices) {
  private static final double LEAST_PACE = 0.7;

  public PlannedTimes {
    visits = List.copyOf(visits);
    Objects.requireNonNull(straight);
    cures = List.copyOf(cures);
    Objects.requireNonNull(sheets);
    toner = List.copyOf(toner);
    prices = List.copyOf(prices);
  }

  /** The longest time of any visit from its first parting until its last foil is out. */
  public Optional<TimeRange> longestFoils() {
    return visits.stream()
        .map(Visit::foilTime)
        .reduce((a, b) -> a.p90().compareTo(b.p90()) >= 0 ? a : b);
  }

  /**
   * The cures worth telling: those that work, that are not done already, and no pace that nobody
   * reaches from this one.
   */
  public List<Cure> told() {
    boolean whilePlacing = visits.stream().anyMatch(v -> v.removal() == Removal.WHILE_PLACING);
    boolean waves = visits.stream().anyMatch(v -> v.removal() == Removal.IN_WAVES);
    return cures.stream()
        .filter(Cure::works)
        .filter(cure -> !(cure instanceof Cure.OutWhilePlacing && whilePlacing))
        .filter(cure -> !(cure instanceof Cure.InWaves && waves))
        .filter(cure -> !(cure instanceof Cure.TwoVisits && visits.size() > 1))
        .filter(
            cure ->
                !(cure instanceof Cure.FasterPace pace)
                    || pace.factor().map(f -> f >= LEAST_PACE).orElse(false))
        .toList();
  }

  /** Chair time of all visits together. */
  public Optional<TimeRange> chair() {
    return visits.stream()
        .map(Visit::chair)
        .reduce((a, b) -> new TimeRange(a.p50().plus(b.p50()), a.p90().plus(b.p90())));
  }

  /** Bowls of all visits on a usual day. */
  public int bowls() {
    return visits.stream().mapToInt(v -> v.mix().bowls().size()).sum();
  }

  /** Whether the longest foil time keeps within a limit on nine days in ten. */
  boolean within(Minutes limit) {
    return longestFoils().map(time -> time.p90().compareTo(limit) <= 0).orElse(false);
  }
}
