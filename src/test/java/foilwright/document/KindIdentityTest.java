package foilwright.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import foilwright.units.Angle;
import foilwright.units.Length;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Writing a quantity that was read, and reading it back, gives the very same bits. */
class KindIdentityTest {
  private static final long SEED = 20260301;

  private static <Q> void same(Kind<Q> kind, Q value) {
    assertEquals(value, kind.parse().apply(kind.write(value)));
  }

  @Test
  void whatWasReadReadsBack() {
    System.out.println("seed " + SEED);
    Random random = new Random(SEED);
    for (int i = 0; i < 500; i++) {
      String number =
          BigDecimal.valueOf((random.nextDouble() - 0.3) * Math.pow(10, random.nextInt(7) - 3))
              .toPlainString();
      for (String unit : List.of("mm", "cm", "in", "inch", "m")) {
        same(Kind.LENGTH, Length.parse(number + " " + unit));
      }
      same(Kind.ANGLE, Angle.parse(number + " deg"));
      same(Kind.ANGLE, Angle.parse(number + " rad"));
      same(Kind.MINUTES, Minutes.parse(number + " min"));
      same(Kind.MINUTES, Minutes.parse(number + " s"));
      same(Kind.SHARE, Share.parse(number + " %"));
    }
  }

  @Test
  void whatWasCalculatedReadsBackWithinTwoRoundings() {
    Random random = new Random(SEED);
    for (int i = 0; i < 500; i++) {
      Share share = Share.ofFraction(random.nextDouble());
      double read = Share.parse(Kind.SHARE.write(share)).toFraction();
      assertEquals(share.toFraction(), read, 3 * Math.ulp(share.toFraction()));
    }
    assertEquals("268.5 %", Kind.SHARE.write(Share.ofPercent(268.5)));
  }

  @Test
  void plainValuesStayPlain() {
    assertEquals("12 mm", Kind.LENGTH.write(Length.parse("12 mm")));
    assertEquals("12.7 mm", Kind.LENGTH.write(Length.parse("0.5 in")));
    assertEquals("35 deg", Kind.ANGLE.write(Angle.parse("35 deg")));
    assertEquals("1.1 min", Kind.MINUTES.write(Minutes.parse("1.1 min")));
    assertEquals("6 %", Kind.SHARE.write(Share.parse("6 %")));
    assertEquals("0 mm", Kind.LENGTH.write(Length.ZERO));
    assertEquals("100 mm", Kind.LENGTH.write(Length.parse("100 mm")));
  }

  /** Labels: 10, 20, 30 and 40 volumes go with 3, 6, 9 and 12 %. */
  @Test
  void volumesAreLabels() {
    for (int tens = 1; tens <= 4; tens++) {
      assertEquals(Share.ofPercent(3 * tens), Kind.STRENGTH.parse().apply(tens * 10 + " vol"));
    }
    assertThrows(IllegalArgumentException.class, () -> Kind.STRENGTH.parse().apply("-20 vol"));
    assertThrows(IllegalArgumentException.class, () -> Kind.STRENGTH.parse().apply("vol"));
  }
}
