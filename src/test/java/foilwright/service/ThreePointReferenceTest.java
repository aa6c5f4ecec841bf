package foilwright.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import foilwright.units.Minutes;
import org.junit.jupiter.api.Test;

class ThreePointReferenceTest {
  /** The three-point method's worked example: 30, 45, 75 give 47.5 and 56.25. */
  @Test
  void workedExample() {
    ThreePoint time = ThreePoint.ofMinutes(30, 45, 75);
    assertEquals(47.5, time.mean().toMinutes(), 1e-12);
    assertEquals(56.25, time.varianceSquareMinutes(), 1e-12);
    assertEquals(7.5, time.deviation().toMinutes(), 1e-12);
  }

  @Test
  void alwaysTheSameHasNoSpread() {
    ThreePoint time = ThreePoint.same(Minutes.ofMinutes(3));
    assertEquals(3, time.mean().toMinutes(), 1e-12);
    assertEquals(0, time.varianceSquareMinutes(), 0);
  }

  @Test
  void refusesTimesOutOfOrder() {
    assertThrows(IllegalArgumentException.class, () -> ThreePoint.ofMinutes(2, 1, 3));
    assertThrows(IllegalArgumentException.class, () -> ThreePoint.ofMinutes(-1, 1, 3));
    assertThrows(IllegalArgumentException.class, () -> ThreePoint.ofMinutes(1, 3, 2));
  }
}
