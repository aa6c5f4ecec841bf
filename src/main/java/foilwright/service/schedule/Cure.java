package foilwright.service.schedule;

import foilwright.service.TimeWindow;
import foilwright.units.Minutes;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** A change after which foils keep their windows, with its figures. */
public sealed interface Cure {
  /** Whether the change is a cure at all. */
  boolean works();

  /** One plain English sentence with the figures. */
  String words();

  /**
   * Fewer foils, the rest left out.
   *
   * @param foils how many there are
   * @param most how many of the first can be done this way
   */
  record FewerFoils(int foils, int most) implements Cure {
    @Override
    public boolean works() {
      return most > 0;
    }

    @Override
    public String words() {
      return works()
          ? String.format(
              Locale.ROOT,
              "At most the first %s can be done this way, %d fewer than planned.",
              Words.foils(most),
              foils - most)
          : "Fewer foils do not help: not even the first one can be done this way.";
    }
  }

  /**
   * Faster hands.
   *
   * @param factor the largest factor on placing, and on what comes before it, that works, rounded
   *     down to 0.1 %; empty when no pace works
   * @param perFoil mean time to place a foil at that pace, as it is now when no pace works
   */
  record FasterPace(Optional<Double> factor, Minutes perFoil) implements Cure {
    @Override
    public boolean works() {
      return factor.isPresent();
    }

    @Override
    public String words() {
      return factor
          .map(
              f ->
                  String.format(
                      Locale.ROOT,
                      "A pace of %.2f min a foil on average would do, %.1f %% of the planned time.",
                      perFoil.toMinutes(),
                      f * 100))
          .orElse("No pace is fast enough.");
    }
  }

  /**
   * One more pair of hands.
   *
   * @param hands pairs of hands with it
   */
  record AnotherPair(int hands, Optional<Schedule> schedule) implements Cure {
    @Override
    public boolean works() {
      return schedule.isPresent();
    }

    @Override
    public String words() {
      return schedule
          .map(
              s ->
                  String.format(
                      Locale.ROOT,
                      "With %d pairs of hands it can be done this way, in %s from the first parting to the last foil out.",
                      hands,
                      Words.chair(s.end())))
          .orElse(
              String.format(Locale.ROOT, "Even %d pairs of hands cannot do it this way.", hands));
    }
  }

  /** Wave by wave. */
  record InWaves(Optional<Schedule> schedule) implements Cure {
    @Override
    public boolean works() {
      return schedule.isPresent();
    }

    /** Foils in each wave; empty when waves do not help. */
    public List<Integer> sizes() {
      return schedule.map(Schedule::waves).orElse(List.of());
    }

    @Override
    public String words() {
      return schedule
          .map(
              s ->
                  String.format(
                      Locale.ROOT,
                      "In %d waves of %s it takes %s from the first parting to the last foil out.",
                      sizes().size(),
                      Words.list(sizes()),
                      Words.chair(s.end())))
          .orElse("Waves do not help: some foil takes longer to remove than it may stay.");
    }
  }

  /** Foils come out while others are still placed. */
  record OutWhilePlacing(Optional<Schedule> schedule) implements Cure {
    @Override
    public boolean works() {
      return schedule.isPresent();
    }

    /** How many are out before the last is begun; 0 when it does not help. */
    public int outBeforeLast() {
      return schedule.map(Schedule::outWhilePlacing).orElse(0);
    }

    @Override
    public String words() {
      return schedule
          .map(
              s ->
                  String.format(
                      Locale.ROOT,
                      "When foils come out as they fall due it takes %s from the first parting to the last foil out; %s %s out before the last is placed.",
                      Words.chair(s.end()),
                      Words.foils(outBeforeLast()),
                      outBeforeLast() == 1 ? "comes" : "come"))
          .orElse(
              "Taking foils out while placing does not help: some foil takes longer to remove than it may stay.");
    }
  }

  /**
   * A weaker mix, with another window, for the first foils.
   *
   * @param first the smallest number of first foils that must get it; empty when none is enough
   */
  record WeakerMixFirst(TimeWindow window, OptionalInt first, Optional<Schedule> schedule)
      implements Cure {
    @Override
    public boolean works() {
      return first.isPresent();
    }

    @Override
    public String words() {
      String mix =
          String.format(
              Locale.ROOT, "a mix that may stay from %s to %s", window.least(), window.most());
      return first.isPresent()
          ? String.format(
              Locale.ROOT,
              "With %s for the first %s it can be done this way, in %s from the first parting to the last foil out.",
              mix,
              Words.foils(first.getAsInt()),
              Words.chair(schedule.orElseThrow().end()))
          : String.format(
              Locale.ROOT, "Not even with %s for every foil can it be done this way.", mix);
    }
  }

  /**
   * Two visits.
   *
   * @param visits the schedule of each, parted so that the longer one is as short as can be; empty
   *     when two are not enough
   */
  record TwoVisits(List<Schedule> visits) implements Cure {
    public TwoVisits {
      visits = List.copyOf(visits);
    }

    @Override
    public boolean works() {
      return !visits.isEmpty();
    }

    @Override
    public String words() {
      return works()
          ? String.format(
              Locale.ROOT,
              "In two visits: %s, then %s.",
              visit(visits.get(0)),
              visit(visits.get(1)))
          : "Two visits are not enough.";
    }

    private static String visit(Schedule visit) {
      return String.format(
          Locale.ROOT,
          "%s in %s from the first parting to the last foil out",
          Words.foils(visit.foils().size()),
          Words.chair(visit.end()));
    }
  }
}
