package foilwright.sheet;

import foilwright.document.Documents;
import foilwright.document.HouseDocument;
import foilwright.drawing.Scene;
import foilwright.head.HeadKind;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.service.MixSettings;
import foilwright.service.PaceEntry;
import foilwright.service.PaceProfile;
import foilwright.service.TimeWindow;
import foilwright.service.mix.FoilSheets;
import foilwright.service.mix.MixPlan;
import foilwright.service.mix.TonerMix;
import foilwright.service.schedule.FoilTask;
import foilwright.service.schedule.Removal;
import foilwright.service.schedule.Schedule;
import foilwright.service.schedule.Scheduler;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Timelines of shipped patterns at shipped paces, for tests. */
final class SampleTimelines {
  static final HouseDocument HOUSE =
      Documents.readHouse(Path.of("shared/house/practice-room.json")).value().orElseThrow();
  private static final TimeWindow WINDOW =
      new TimeWindow(Minutes.ofMinutes(20), Minutes.ofMinutes(45));

  private SampleTimelines() {}

  static Placement placement(String pattern) {
    return SampleMaps.place(pattern, SampleMaps.head(HeadKind.WOMAN));
  }

  static Timeline of(
      Placement placement, String paceName, Removal removal, Optional<LocalTime> start) {
    PaceProfile pace =
        HOUSE.paces().stream().filter(p -> p.name().equals(paceName)).findFirst().orElseThrow();
    List<FoilTask> tasks = new ArrayList<>();
    List<Timeline.FoilSection> sections = new ArrayList<>();
    Minutes removing = pace.of(PaceEntry.REMOVE_FOIL).mean();
    for (PlacedFoil foil : placement.foils()) {
      boolean first =
          sections.isEmpty() || !sections.get(sections.size() - 1).name().equals(foil.section());
      tasks.add(
          new FoilTask(
              foil.number(),
              foil.mix(),
              first ? pace.of(PaceEntry.SET_SECTION).mean() : Minutes.ZERO,
              pace.placing(foil).mean(),
              removing,
              WINDOW));
      sections.add(new Timeline.FoilSection(foil.section(), foil.sectionIndex()));
    }
    Schedule schedule = Scheduler.schedule(tasks, 1, removal).schedule().orElseThrow();
    Minutes before = pace.of(PaceEntry.CONSULT).mean().plus(pace.of(PaceEntry.MIX_BOWL).mean());
    return new Timeline(
        schedule,
        sections,
        mix(placement, schedule).bowls(),
        checks(schedule),
        schedule.waits().stream().max(Comparator.comparing(Schedule.Wait::length)),
        Optional.of(Math.min(tasks.size(), 30)),
        before,
        start);
  }

  /** Everything weighed for a schedule of a placement. */
  static MixPlan mix(Placement placement, Schedule schedule) {
    return MixPlan.of(placement, HOUSE.productsBySlot(), MixSettings.USUAL, placed(schedule));
  }

  private static List<MixPlan.Placed> placed(Schedule schedule) {
    return IntStream.range(0, schedule.foils().size())
        .mapToObj(i -> new MixPlan.Placed(schedule.begun(i), schedule.in(i)))
        .toList();
  }

  private static List<Timeline.Check> checks(Schedule schedule) {
    List<Timeline.Check> checks = new ArrayList<>();
    for (double at = 22; at < schedule.end().toMinutes(); at += 8) {
      Minutes start = Minutes.ofMinutes(at);
      boolean waits =
          schedule.waits().stream()
              .anyMatch(w -> w.start().compareTo(start) <= 0 && start.compareTo(w.end()) < 0);
      checks.add(new Timeline.Check(start, waits ? start.plus(Minutes.ofMinutes(1.2)) : start));
    }
    return checks;
  }

  static MapNotes notes(String title) {
    return new MapNotes(
        title,
        "guest-07, practice room, pace lead",
        List.of(
            new MapNotes.Total("placing", "73 to 84 min"),
            new MapNotes.Total("chair", "176 to 202 min"),
            new MapNotes.Total("bowls", "4")),
        List.of(
            "Missing on file: elasticity test.",
            "The maker's instructions come first, then law and licence, the insurer, house policy,"
                + " and only then this plan.",
            "Any burning: take the foils out and rinse at once."));
  }

  static List<Scene> pages(
      String pattern, String pace, Removal removal, Optional<LocalTime> start, Paper paper) {
    return TimelineSheet.build(
        of(placement(pattern), pace, removal, start), notes("Sample"), paper);
  }

  static MixCard card(String pattern, String paceName, Removal removal, Optional<LocalTime> start) {
    Placement placement = placement(pattern);
    Timeline timeline = of(placement, paceName, removal, start);
    MixSettings settings =
        new MixSettings(
            Mass.ofGrams(1),
            Share.ofPercent(12),
            30,
            List.of(Share.ofPercent(1.9), Share.ofPercent(6), Share.ofPercent(9)));
    MixPlan plan =
        MixPlan.of(placement, HOUSE.productsBySlot(), settings, placed(timeline.schedule()));
    Mass hair = Mass.ZERO;
    for (PlacedFoil foil : placement.foils()) {
      hair = hair.plus(foil.hair());
    }
    return new MixCard(
        plan,
        settings,
        Optional.of(TonerMix.of(HOUSE.toners().get(0), hair, settings)),
        Optional.of(FoilSheets.of(placement.foils(), HOUSE.foils())),
        List.of("elasticity test"),
        timeline.beforeFirstParting(),
        start);
  }

  static List<Scene> mixPages(
      String pattern, String pace, Removal removal, Optional<LocalTime> start, Paper paper) {
    return MixSheet.build(card(pattern, pace, removal, start), notes("Sample"), paper);
  }
}
