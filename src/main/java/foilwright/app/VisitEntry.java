package foilwright.app;

import foilwright.document.VisitCalendar;
import foilwright.service.Caution;
import foilwright.service.SafetyQuestion;
import foilwright.service.visit.Block;
import foilwright.service.visit.Visit;
import foilwright.units.Minutes;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** A planned visit as an entry of a calendar. */
public final class VisitEntry {
  private VisitEntry() {}

  /**
   * The first visit of a plan: its chair time as nine days in ten keep it, what is missing on file,
   * cautions, its stretches in words, and its free gap as a second entry that does not take the
   * time.
   *
   * @param start local time
   * @throws IllegalArgumentException when the plan has no visit
   */
  public static byte[] calendar(Plan plan, LocalDateTime start) {
    Visit visit =
        plan.times().stream()
            .flatMap(times -> times.visits().stream())
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("the plan has no visit"));
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format(
            Locale.ROOT,
            "%d foils; chair %.0f to %.0f min; the first time is kept on half of such days, the"
                + " second on nine in ten",
            visit.foils().size(),
            visit.chair().p50().toMinutes(),
            Math.ceil(visit.chair().p90().toMinutes())));
    lines.addAll(Sheets.stops(plan));
    List<SafetyQuestion> missing = plan.guest().tests().missing();
    if (!missing.isEmpty()) {
      lines.add(
          "MISSING on file: "
              + missing.stream().map(SafetyQuestion::words).collect(Collectors.joining("; ")));
    }
    lines.addAll(Caution.IN_SHORT);
    for (Block block : visit.blocks()) {
      lines.add(
          String.format(
              Locale.ROOT,
              "%s to %s %s, %s, %.0f min",
              clock(start, block.start()),
              clock(start, block.end()),
              block.name(),
              block.kind().words(),
              block.length().toMinutes()));
    }
    return new VisitCalendar(
            (Sheets.stops(plan).isEmpty() ? "" : "DO NOT GO ON: ")
                + "Foils, "
                + plan.guest().number().orElse("no guest named"),
            start,
            at(start, wholeMinutesUp(visit.chair().p90())),
            lines,
            visit
                .freeGap()
                .map(
                    gap -> new VisitCalendar.FreeGap(at(start, gap.start()), at(start, gap.end()))))
        .toBytes();
  }

  private static Minutes wholeMinutesUp(Minutes time) {
    return Minutes.ofMinutes(Math.ceil(time.toMinutes()));
  }

  private static LocalDateTime at(LocalDateTime start, Minutes since) {
    return start.plusSeconds(Math.round(since.toSeconds()));
  }

  private static String clock(LocalDateTime start, Minutes since) {
    LocalDateTime time = start.plusMinutes(Math.round(since.toMinutes()));
    return String.format(Locale.ROOT, "%02d:%02d", time.getHour(), time.getMinute());
  }
}
