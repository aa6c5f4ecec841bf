package foilwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LabelPlacerTest {
  private static final double GAP = 0.2;
  private static final List<Box> STRIPS = List.of(new Box(0, 0, 8, 80), new Box(92, 0, 8, 80));

  private static LabelPlacer.Wish wish(String name, boolean mayLead, Point... spots) {
    return new LabelPlacer.Wish(name, 5, 3, List.of(spots), mayLead);
  }

  private static LabelPlacer.Result place(List<LabelPlacer.Wish> wishes, Box... obstacles) {
    return LabelPlacer.place(wishes, STRIPS, List.of(obstacles), GAP);
  }

  @Test
  void theFirstChoosesItsBestSpotAndTheNextMakesWay() {
    Point middle = new Point(50, 40);
    LabelPlacer.Result result =
        place(List.of(wish("1", true, middle), wish("2", true, middle, new Point(60, 40))));
    assertEquals(middle, result.placed().get(0).box().centre());
    assertEquals(new Point(60, 40), result.placed().get(1).box().centre());
    assertTrue(result.placed().stream().allMatch(p -> p.leader().isEmpty()));
  }

  @Test
  void withoutRoomALabelIsLedToTheNearerStrip() {
    Point spot = new Point(73.5, 40);
    LabelPlacer.Result result =
        place(List.of(wish("1", true, new Point(70, 40)), wish("2", true, spot)));
    LabelPlacer.Placed led = result.placed().get(1);
    assertEquals(2, led.leader().size());
    assertTrue(STRIPS.get(1).contains(led.box()));
    assertEquals(spot, led.leader().get(0));
  }

  @Test
  void aLabelThatMayNotBeLedStaysOut() {
    Point spot = new Point(50, 40);
    LabelPlacer.Result result = place(List.of(wish("1", false, spot), wish("2", false, spot)));
    assertEquals(1, result.placed().size());
    assertEquals(List.of("2"), result.unplaced());
  }

  @Test
  void aThingThatCannotBeSeenHasNoPlace() {
    assertEquals(List.of("1"), place(List.of(wish("1", true))).unplaced());
  }

  @Test
  void obstaclesKeepTheirRoom() {
    Box obstacle = new Box(40, 30, 20, 20);
    LabelPlacer.Result result =
        place(List.of(wish("1", true, new Point(50, 40), new Point(30, 40))), obstacle);
    assertEquals(new Point(30, 40), result.placed().get(0).box().centre());
  }

  @Test
  void aCrowdNeverOverlapsNorCrosses() {
    for (long seed = 1; seed <= 20; seed++) {
      Random random = new Random(seed);
      List<LabelPlacer.Wish> wishes = new ArrayList<>();
      for (int i = 0; i < 60; i++) {
        Point spot = new Point(20 + 60 * random.nextDouble(), 5 + 70 * random.nextDouble());
        wishes.add(wish("foil " + i, true, spot, spot.plus(3, 0), spot.plus(-3, 0)));
      }
      Box obstacle = new Box(45, 35, 6, 6);
      LabelPlacer.Result result = place(wishes, obstacle);
      assertEquals(60, result.placed().size() + result.unplaced().size());
      assertTrue(result.placed().size() > 40, "seed " + seed + ": hardly any found room");
      assertClear(result, obstacle, seed);
    }
  }

  private static void assertClear(LabelPlacer.Result result, Box obstacle, long seed) {
    List<LabelPlacer.Placed> placed = result.placed();
    for (int i = 0; i < placed.size(); i++) {
      LabelPlacer.Placed a = placed.get(i);
      String where = "seed " + seed + ", " + a.name();
      assertFalse(a.box().overlaps(obstacle), where);
      for (int j = 0; j < placed.size(); j++) {
        LabelPlacer.Placed b = placed.get(j);
        if (i == j) {
          continue;
        }
        assertFalse(a.box().overlaps(b.box()), where + " over " + b.name());
        if (!a.leader().isEmpty()) {
          assertFalse(
              b.box().meets(a.leader().get(0), a.leader().get(1)),
              where + " leads over " + b.name());
          assertFalse(obstacle.meets(a.leader().get(0), a.leader().get(1)), where);
          if (!b.leader().isEmpty()) {
            assertFalse(
                java.awt.geom.Line2D.linesIntersect(
                    a.leader().get(0).x(),
                    a.leader().get(0).y(),
                    a.leader().get(1).x(),
                    a.leader().get(1).y(),
                    b.leader().get(0).x(),
                    b.leader().get(0).y(),
                    b.leader().get(1).x(),
                    b.leader().get(1).y()),
                where + " crosses " + b.name());
          }
        }
      }
    }
  }
}
