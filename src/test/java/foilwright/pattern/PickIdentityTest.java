package foilwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import foilwright.units.Length;
import foilwright.units.Share;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Picked shares in closed form. */
class PickIdentityTest {
  private static Length mm(double value) {
    return Length.ofMillimetres(value);
  }

  @Test
  void solidTakesEverything() {
    assertEquals(1, new Pick.Solid().pickedShare(mm(3)).toFraction(), 0);
    assertEquals(0, new Pick.Solid().picksPerMillimetre(), 0);
  }

  @Test
  void equalPickAndGapTakeHalf() {
    Pick weave = Pick.Weave.ofMillimetres(4, 4);
    assertEquals(0.5, weave.pickedShare(mm(3)).toFraction(), 1e-15);
    assertEquals(0.125, weave.picksPerMillimetre(), 1e-15);
  }

  @Test
  void depthScalesTheShareAndNeverBeyondTheSlice() {
    Pick half = new Pick.Weave(mm(3), mm(6), new PickDepth.OfSlice(Share.ofPercent(50)));
    assertEquals(1.0 / 6, half.pickedShare(mm(10)).toFraction(), 1e-15);
    Pick tooth = new Pick.Zigzag(mm(10), mm(10), new PickDepth.OfLength(mm(6)));
    assertEquals(0.25, tooth.pickedShare(mm(12)).toFraction(), 1e-15);
    assertEquals(0.5, tooth.pickedShare(mm(5)).toFraction(), 1e-15);
  }

  @Test
  void zigzagThenWeaveIsTheProduct() {
    Fill fill =
        Fill.of(Run.ofMillimetres(12), new Background.None())
            .withPicks(
                new Pick.Zigzag(mm(10), mm(10), new PickDepth.OfLength(mm(12))),
                Pick.Weave.ofMillimetres(4, 4));
    assertEquals(0.25, fill.pickedShare(mm(12)).toFraction(), 1e-15);
    assertEquals(0.05 + 0.5 * 0.125, fill.picksPerMillimetre(), 1e-15);
  }

  @Test
  void impossibleWidthsAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> Pick.Weave.ofMillimetres(0, 4));
    assertThrows(IllegalArgumentException.class, () -> Run.ofMillimetres(-1));
    assertThrows(
        IllegalArgumentException.class, () -> Fill.of(Run.ofMillimetres(0), new Background.None()));
    assertThrows(IllegalArgumentException.class, () -> new PickDepth.OfSlice(Share.ofPercent(101)));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Pattern("x", "", WorkingOrder.SECTION_BY_SECTION, List.of()));
  }
}
