package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.drawing.Box;
import foilwright.drawing.Mark;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.placement.Placement;
import foilwright.service.TimeWindow;
import foilwright.service.schedule.Action;
import foilwright.service.schedule.FoilTask;
import foilwright.service.schedule.Removal;
import foilwright.service.schedule.Schedule;
import foilwright.units.Minutes;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

class TimelineSheetTest {
  private static final Optional<LocalTime> EVENING = Optional.of(LocalTime.of(22, 55));

  @TestFactory
  Stream<DynamicTest> everyTimelineIsLegible() {
    List<DynamicTest> tests = new ArrayList<>();
    legible(tests, "full-head-fine-weave", "lead", Removal.WHILE_PLACING, Optional.empty());
    legible(tests, "full-head-fine-weave", "stylist", Removal.WHILE_PLACING, EVENING);
    legible(tests, "full-head-fine-weave", "apprentice", Removal.IN_WAVES, EVENING);
    legible(tests, "dark-rim", "stylist", Removal.IN_PLACING_ORDER, EVENING);
    legible(tests, "fringe-veil", "apprentice", Removal.IN_PLACING_ORDER, Optional.empty());
    for (int foils : List.of(1, 40, 120)) {
      for (int hands : List.of(1, 2)) {
        tests.add(
            DynamicTest.dynamicTest(
                foils + " foils, " + hands + " pairs of hands",
                () -> check(madeUp(foils, hands, 0.5))));
      }
    }
    return tests.stream();
  }

  private static void legible(
      List<DynamicTest> tests,
      String pattern,
      String pace,
      Removal removal,
      Optional<LocalTime> start) {
    Placement placement = SampleTimelines.placement(pattern);
    tests.add(
        DynamicTest.dynamicTest(
            pattern + " at the pace " + pace + ", " + removal.words(),
            () -> check(SampleTimelines.of(placement, pace, removal, start))));
  }

  private static void check(Timeline timeline) {
    for (Paper paper : List.of(Paper.A4, Paper.LETTER)) {
      List<Scene> pages = TimelineSheet.build(timeline, SampleTimelines.notes("Sample"), paper);
      for (Scene page : pages) {
        SheetChecks.labelsAreClear(page);
        SheetChecks.everythingIsOnThePaper(page);
        SheetChecks.noHeadingIsCutShort(page);
      }
      Set<String> wanted =
          timeline.schedule().foils().stream()
              .map(foil -> Integer.toString(foil.number()))
              .collect(Collectors.toCollection(TreeSet::new));
      assertEquals(wanted, numbers(pages, Role.FOIL), "a bar for every foil");
      assertEquals(wanted, numbers(pages, Role.NOTE), "a row for every foil");
      assertTrue(SheetChecks.words(pages.get(0)).contains("rinse at once."), "cautions in front");
    }
  }

  private static Set<String> numbers(List<Scene> pages, Role role) {
    return pages.stream()
        .flatMap(page -> page.marks().stream())
        .filter(m -> m.role() == role && m.data().containsKey("number"))
        .map(m -> m.data().get("number"))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Foils a fixed time apart, shared out among hands, all in and then all out. */
  private static Timeline madeUp(int foils, int hands, double perFoilMin) {
    List<FoilTask> tasks = new ArrayList<>();
    List<Action> actions = new ArrayList<>();
    TimeWindow window = new TimeWindow(Minutes.ofMinutes(20), Minutes.ofMinutes(90));
    Minutes one = Minutes.ofMinutes(perFoilMin);
    int turns = (foils + hands - 1) / hands;
    Minutes allIn = one.times(turns).plus(Minutes.ofMinutes(25));
    for (int i = 0; i < foils; i++) {
      tasks.add(new FoilTask(i + 1, i % 3 == 2 ? "B" : "A", Minutes.ZERO, one, one, window));
      int turn = i / hands;
      Minutes start = one.times(turn);
      actions.add(new Action(Action.Work.PLACE, i, i % hands, start, start.plus(one)));
      Minutes out = allIn.plus(start);
      actions.add(new Action(Action.Work.REMOVE, i, i % hands, out, out.plus(one)));
    }
    Schedule schedule = new Schedule(tasks, hands, Removal.IN_PLACING_ORDER, actions, Minutes.ZERO);
    return new Timeline(
        schedule,
        IntStream.range(0, foils)
            .mapToObj(i -> new Timeline.FoilSection("part " + i / 10, i / 10))
            .toList(),
        List.of(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        Minutes.ZERO,
        Optional.empty());
  }

  @Test
  void barsLieWhereTheirMinutesAre() {
    Timeline timeline = madeUp(12, 1, 1);
    Scene page = TimelineSheet.build(timeline, SampleTimelines.notes("Sample"), Paper.A4).get(0);
    Map<String, Mark> byId =
        page.marks().stream().collect(Collectors.toMap(Mark::id, Function.identity()));
    Map<String, String> scale = byId.get("now-line").data();
    double perMinute = Double.parseDouble(scale.get("mm-per-minute"));
    double zero = byId.get("now-line").bounds().centre().x();
    Schedule schedule = timeline.schedule();
    for (int i = 0; i < 12; i++) {
      Box box = byId.get("foil-" + (i + 1)).bounds();
      assertEquals(zero + perMinute * schedule.in(i).toMinutes(), box.x(), 2e-3, "foil " + i);
      assertEquals(
          zero + perMinute * schedule.outBy(i).toMinutes(), box.right(), 2e-3, "foil " + i);
    }
  }

  @Test
  void noBarLiesOverAnother() {
    Timeline timeline =
        SampleTimelines.of(
            SampleTimelines.placement("full-head-fine-weave"),
            "stylist",
            Removal.WHILE_PLACING,
            Optional.empty());
    for (Scene page : TimelineSheet.build(timeline, SampleTimelines.notes("Sample"), Paper.A4)) {
      List<Box> bars =
          page.marks().stream()
              .filter(m -> m.role() == Role.FOIL)
              .map(m -> m.bounds().grown(-0.01))
              .toList();
      for (int i = 0; i < bars.size(); i++) {
        for (int j = i + 1; j < bars.size(); j++) {
          assertTrue(!bars.get(i).overlaps(bars.get(j)), i + " over " + j);
        }
      }
    }
  }

  @Test
  void aFewFoilsNeedOnePageAndEightyTwo() {
    assertEquals(
        1,
        SampleTimelines.pages("dark-rim", "stylist", Removal.IN_PLACING_ORDER, EVENING, Paper.A4)
            .size());
    assertEquals(
        2,
        SampleTimelines.pages(
                "full-head-fine-weave", "lead", Removal.WHILE_PLACING, Optional.empty(), Paper.A4)
            .size());
  }

  @Test
  void clocksShowMinutesWithoutSecondsAndGoPastMidnight() {
    Clock plain = new Clock(Minutes.ofMinutes(12.5), Optional.empty());
    assertEquals("0:12", plain.text(Minutes.ZERO));
    assertEquals("0:12", plain.text(Minutes.ofMinutes(0.4)));
    assertEquals("1:13", plain.text(Minutes.ofMinutes(60.5)));
    assertEquals("\u22120:01", plain.text(Minutes.ofMinutes(-13.5)));
    Clock day = new Clock(Minutes.ofMinutes(12.5), EVENING);
    assertEquals("23:07", day.text(Minutes.ZERO));
    assertEquals("00:07", day.text(Minutes.ofMinutes(60)));
  }

  @Test
  void sumsThatMissAWholeMinuteByRoundingShowIt() {
    Clock clock = new Clock(Minutes.ZERO, Optional.empty());
    assertEquals("0:03", clock.text(Minutes.ofMinutes(1.1).plus(Minutes.ofMinutes(1.9))));
    assertEquals("0:00", clock.text(Minutes.ofMinutes(0.1 + 0.2 - 0.3)));
    assertEquals("0:01", clock.text(Minutes.ofSeconds(60 - 1e-9)));
  }

  @Test
  void ticksStandAtRoundReadings() {
    TimeAxis axis = TimeAxis.over(new Clock(Minutes.ofMinutes(12.5), EVENING), -2, 61, 10, 210);
    for (double tick : axis.labelled()) {
      assertTrue(axis.clock().text(tick).matches("\\d\\d:\\d[05]"), axis.clock().text(tick));
    }
    assertEquals("23:05", axis.clock().text(axis.from()));
    assertEquals("00:10", axis.clock().text(axis.to()));
  }
}
