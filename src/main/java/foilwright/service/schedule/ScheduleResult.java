package foilwright.service.schedule;

import java.util.Objects;
import java.util.Optional;

/** Either the schedule, or why there is none. */
public final class ScheduleResult {
  private final Schedule schedule;
  private final OverTime overTime;

  private ScheduleResult(Schedule schedule, OverTime overTime) {
    this.schedule = schedule;
    this.overTime = overTime;
  }

  static ScheduleResult of(Schedule schedule) {
    return new ScheduleResult(Objects.requireNonNull(schedule), null);
  }

  static ScheduleResult of(OverTime overTime) {
    return new ScheduleResult(null, Objects.requireNonNull(overTime));
  }

  /** Empty when every schedule takes a foil over its time. */
  public Optional<Schedule> schedule() {
    return Optional.ofNullable(schedule);
  }

  /** Empty when there is a schedule. */
  public Optional<OverTime> overTime() {
    return Optional.ofNullable(overTime);
  }
}
