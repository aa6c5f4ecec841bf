package foilwright.app;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.app.LiveLook.Wanted;
import foilwright.fall.Body;
import foilwright.fall.Fall;
import foilwright.fall.FallSettings;
import foilwright.fall.HairStyle;
import foilwright.fall.Strands;
import foilwright.fall.Watch;
import foilwright.hair.HairOnHead;
import foilwright.look.Dye;
import foilwright.look.Look;
import foilwright.look.LookFigures;
import foilwright.look.LookPicture;
import foilwright.look.LookSettings;
import foilwright.look.LookSide;
import foilwright.look.Studio;
import foilwright.units.Length;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Looks made while a plan is edited are those made at leisure. */
class LiveLookIdentityTest {
  private static final int HAIRS = 3000;
  private static Plan plan;
  private static Plan other;
  private static Wanted wanted;

  @BeforeAll
  static void makePlans() {
    Workspace workspace = Workspace.in(Path.of("").toAbsolutePath());
    plan = plan(workspace, "v-back");
    other = plan(workspace, "dark-rim");
    wanted = Wanted.of(plan).withHairs(HAIRS).withHeight(160);
  }

  private static Plan plan(Workspace workspace, String pattern) {
    return Planning.plan(workspace, PlanRequest.of(pattern).withGuest("guest-07"), step -> {})
        .plan()
        .orElseThrow();
  }

  private static LiveLook.Seen look(LiveLook live, Plan of, Wanted what) {
    return live.look("test", of, what, Watch.NOBODY);
  }

  private static void assertSame(LiveLook.Seen expected, LiveLook.Seen actual) {
    assertSame(expected.pictures(), actual.pictures());
    assertEquals(expected.figures(), actual.figures());
  }

  private static void assertSame(List<LookPicture> expected, List<LookPicture> actual) {
    assertEquals(expected.size(), actual.size());
    for (int i = 0; i < expected.size(); i++) {
      assertEquals(expected.get(i).side(), actual.get(i).side());
      assertArrayEquals(expected.get(i).toArray(), actual.get(i).toArray());
    }
  }

  @Test
  void aLiveLookIsALookFreshlyMade() {
    HairOnHead hair = HairOnHead.of(plan.head(), plan.guest().hair());
    Body body = Body.of(plan.head());
    FallSettings fall = FallSettings.USUAL.withHairs(HAIRS);
    Length quarter = Looking.GROWTH_OF_MONTH.times(3);
    Strands strands = Fall.of(hair, body, fall, hair.hair().texture(), Watch.NOBODY);
    Strands grown =
        Fall.of(hair, body, fall.withGrown(quarter), hair.hair().texture(), Watch.NOBODY);
    LookSettings settings =
        LookSettings.of(Looking.colours(plan, wanted.tone())).withHeight(wanted.heightPx());
    Dye dye =
        Dye.after(strands.roots(), plan.placement(), plan.head(), plan.pattern(), Length.ZERO);
    Studio studio = Studio.of(List.of(strands, grown), wanted.heightPx());
    Look look = Look.at(strands, dye, studio, settings, Watch.NOBODY);
    LiveLook.Seen seen = look(new LiveLook(), plan, wanted.withFigures(true));
    assertSame(look.pictures(), seen.pictures());
    assertEquals(LookFigures.of(look), seen.figures().orElseThrow());
  }

  @Test
  void whatWasLookedAtBeforeChangesNothing() {
    LiveLook live = new LiveLook();
    LiveLook.Seen first = look(live, plan, wanted.withFigures(true));
    look(live, other, wanted);
    look(live, plan, wanted.withStyle(HairStyle.TIED_UP));
    look(live, plan, wanted.withHairs(500).withSides(List.of(LookSide.TOP)));
    LiveLook.Seen moved = look(live, plan, wanted.withPart(PartSide.RIGHT).withMonths(2));
    assertSame(first, look(live, plan, wanted.withFigures(true)));
    LiveLook forgetful = new LiveLook(0);
    assertSame(first, look(forgetful, plan, wanted.withFigures(true)));
    assertSame(moved, look(forgetful, plan, wanted.withPart(PartSide.RIGHT).withMonths(2)));
    assertSame(first, look(forgetful, plan, wanted.withFigures(true)));
  }

  @Test
  void anotherPatternLooksOtherwise() {
    LiveLook live = new LiveLook();
    LookPicture one = look(live, plan, wanted).pictures().get(0);
    LookPicture two = look(live, other, wanted).pictures().get(0);
    assertFalse(Arrays.equals(one.toArray(), two.toArray()));
    assertSame(
        look(live, plan, wanted.withBefore(true)).pictures(),
        look(live, other, wanted.withBefore(true)).pictures());
  }

  @Test
  void picturesThatTakeEachOthersPlaceHaveOneFrame() {
    LiveLook live = new LiveLook();
    List<LookPicture> usual = look(live, plan, wanted).pictures();
    for (Wanted what :
        List.of(
            wanted.withHairs(700),
            wanted.withBefore(true),
            wanted.withPart(PartSide.LEFT),
            wanted.withPart(PartSide.NONE),
            wanted.withMonths(2.5))) {
      List<LookPicture> pictures = look(live, plan, what).pictures();
      for (int i = 0; i < usual.size(); i++) {
        assertEquals(usual.get(i).width(), pictures.get(i).width(), what.toString());
        assertEquals(usual.get(i).height(), pictures.get(i).height(), what.toString());
        assertEquals(usual.get(i).pixelsPerMm(), pictures.get(i).pixelsPerMm(), what.toString());
      }
    }
  }

  /** The older look is held at its first step until the newer one has been asked for. */
  @Test
  void aNewerLookEndsAnOlderOfTheSameViewer() throws InterruptedException {
    LiveLook live = new LiveLook();
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch asked = new CountDownLatch(1);
    CompletableFuture<LiveLook.Seen> older = new CompletableFuture<>();
    Thread first =
        new Thread(
            () -> {
              try {
                older.complete(
                    live.look(
                        "one",
                        plan,
                        wanted,
                        share -> {
                          begun.countDown();
                          await(asked);
                          return true;
                        }));
              } catch (CancellationException e) {
                older.completeExceptionally(e);
              }
            });
    first.start();
    begun.await();
    CompletableFuture<LiveLook.Seen> newer = new CompletableFuture<>();
    Thread second = new Thread(() -> newer.complete(live.look("one", other, wanted, Watch.NOBODY)));
    second.start();
    while (second.getState() != Thread.State.WAITING) {
      Thread.onSpinWait();
    }
    asked.countDown();
    first.join();
    second.join();
    assertTrue(older.isCompletedExceptionally());
    assertSame(look(new LiveLook(), other, wanted), newer.join());
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void aWatcherStopsALook() {
    AtomicInteger told = new AtomicInteger();
    LiveLook live = new LiveLook();
    assertThrows(
        CancellationException.class,
        () -> live.look("one", plan, wanted, share -> told.incrementAndGet() < 3));
    // Whoever works beside finishes what it holds: no more than a few are told after the stop.
    assertTrue(told.get() < 3 + 2 * Runtime.getRuntime().availableProcessors(), told.toString());
    assertSame(look(new LiveLook(), plan, wanted), look(live, plan, wanted));
  }
}
