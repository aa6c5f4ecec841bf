package foilwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class InkReferenceTest {
  /** WCAG 2: black on white 21, #767676 on white 4.54. */
  @Test
  void contrastIsThatOfTheWebGuidelines() {
    Ink white = new Ink(0xffffff);
    assertEquals(21, new Ink(0).contrast(white), 1e-9);
    assertEquals(4.54, white.contrast(new Ink(0x767676)), 0.005);
    assertEquals(1, white.contrast(white), 1e-12);
  }

  @Test
  void mixingGoesFromOneToTheOther() {
    Ink orange = new Ink(0xe69f00);
    assertEquals(orange, orange.towards(Ink.PAPER, 0));
    assertEquals(Ink.PAPER, orange.towards(Ink.PAPER, 1));
    assertEquals(new Ink(0x808080), new Ink(0).towards(Ink.PAPER, 0.5));
    assertThrows(IllegalArgumentException.class, () -> new Ink(0x1000000));
  }
}
