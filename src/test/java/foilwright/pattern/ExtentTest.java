package foilwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.units.Length;
import org.junit.jupiter.api.Test;

class ExtentTest {
  private static final HeadDimensions HEAD =
      new HeadDimensions(
          Length.ofMillimetres(320), Length.ofMillimetres(340), Length.ofMillimetres(560));

  @Test
  void absoluteAndProportionResolve() {
    assertEquals(12, Extent.parse("12 mm").resolve(HEAD).toMillimetres(), 0);
    assertEquals(12.7, Extent.parse("0.5 in").resolve(HEAD).toMillimetres(), 1e-12);
    assertEquals(128, Extent.parse("0.4 of front-to-back").resolve(HEAD).toMillimetres(), 1e-12);
    assertEquals(34, Extent.parse("0.1 of ear-to-ear").resolve(HEAD).toMillimetres(), 1e-12);
    assertEquals(28, Extent.parse("0.05 of around").resolve(HEAD).toMillimetres(), 1e-12);
  }

  @Test
  void textReadsBackToTheSameValue() {
    for (String text : new String[] {"12 mm", "0.5 in", "0.1 of around", "1.23456789 cm"}) {
      Extent extent = Extent.parse(text);
      assertEquals(extent, Extent.parse(extent.text()));
    }
    assertEquals("0 mm", Extent.zero().text());
  }

  @Test
  void refusalsNameWhatIsAccepted() {
    IllegalArgumentException unit =
        assertThrows(IllegalArgumentException.class, () -> Extent.parse("12"));
    assertTrue(unit.getMessage().contains("mm, cm, in"), unit.getMessage());
    IllegalArgumentException measure =
        assertThrows(IllegalArgumentException.class, () -> Extent.parse("0.4 of neck"));
    assertTrue(measure.getMessage().contains("ear-to-ear"), measure.getMessage());
    assertThrows(IllegalArgumentException.class, () -> Extent.parse("half of around"));
  }
}
