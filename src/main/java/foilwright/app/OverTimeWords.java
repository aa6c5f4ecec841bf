package foilwright.app;

import foilwright.placement.PlacedFoil;
import foilwright.problem.Problem;
import foilwright.service.schedule.Cure;
import foilwright.service.schedule.OverTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What is said when foils would stay longer than they may. */
final class OverTimeWords {
  /** Code of the problem that the way that was asked for does not work. */
  static final String FAILED = "foil-over-time";

  private OverTimeWords() {}

  /** The way that was asked for does not work. */
  static Problem failed(OverTime over, List<PlacedFoil> foils, WayOut way, List<Cure> cures) {
    return Problem.warning(
            FAILED,
            "",
            "out "
                + way.word()
                + ": "
                + over(over, foils)
                + ", so that there is no plan for the visit",
            cure(cures))
        .at(foils.get(over.foil()).centre());
  }

  /** All in and then out in order does not work, on a usual or on a slow day. */
  static Optional<Problem> straight(PlannedTimes times, List<PlacedFoil> foils) {
    Optional<OverTime> usual = times.straight().usual();
    Optional<OverTime> over = usual.or(times.straight()::slow);
    return over.map(
        o ->
            Problem.warning(
                    usual.isPresent() ? "foil-over-time-straight" : "foil-over-time-slow-day",
                    "",
                    (usual.isPresent() ? "" : "on a slow day (1 in 10), ")
                        + "all placed first and then taken out in the same order, "
                        + over(o, foils)
                        + (times.visits().isEmpty()
                            ? ""
                            : usual.isPresent()
                                ? "; as it is planned here, no foil is"
                                : "; then take foils out as they fall due"),
                    cure(times.told()))
                .at(foils.get(o.foil()).centre()));
  }

  private static String over(OverTime over, List<PlacedFoil> foils) {
    int others = over.foils() - 1;
    return "foil "
        + foils.get(over.foil()).number()
        + " would be "
        + over.by()
        + " over its time"
        + (others > 0 ? ", and " + others + (others == 1 ? " more foil" : " more foils") : "");
  }

  private static String cure(List<Cure> cures) {
    return cures.isEmpty()
        ? "place fewer foils, or place them faster"
        : cures.stream().map(Cure::words).collect(Collectors.joining(" "));
  }
}
