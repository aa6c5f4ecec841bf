package foilwright.service.visit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.service.RebookLengths;
import foilwright.units.Length;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Growth against published figures, and the dates that follow from it. */
class GrowthReferenceTest {
  private static final LocalDate DAY = LocalDate.of(2026, 4, 1);

  private static double centimetres(Length length) {
    return length.toMillimetres() / 10;
  }

  @ParameterizedTest(name = "{0}")
  @CsvFileSource(resources = "/reference/hair/hair_growth.csv", numLinesToSkip = 1)
  void groupsGrowAsPrinted(String group, double mean, double deviation, double printed) {
    Growth growth = Growth.ofMicrometresADay(mean, deviation);
    Growth.Grown grown = growth.over(Growth.months(DAY, DAY.plusDays(30)));
    assertEquals(printed, centimetres(grown.mean()), 0.005, group);
    assertEquals((mean + deviation) * 30 / 10000, centimetres(grown.most()), 1e-9);
    assertEquals((mean - deviation) * 30 / 10000, centimetres(grown.least()), 1e-9);
    // The mean of each group lies in the worldwide range.
    assertTrue(growth.mean().compareTo(Growth.USUAL.least()) > 0, group);
    assertTrue(growth.mean().compareTo(Growth.USUAL.most()) < 0, group);
  }

  /** 0.8 to 1.3 cm a month in 21 countries (the same textbook); 10.7 mm is our mean of groups. */
  @Test
  void theUsualGrowthIsThatOfTheWorld() {
    assertEquals(0.8, centimetres(Growth.USUAL.least()), 1e-12);
    assertEquals(1.3, centimetres(Growth.USUAL.most()), 1e-12);
    assertEquals(10.7, Growth.USUAL.mean().toMillimetres(), 0.05);
    assertEquals("21 mm (16 to 26)", Growth.USUAL.over(2).words());
  }

  /** Four years with their leap day are 48 months. */
  @ParameterizedTest
  @CsvSource({"2024-01-01, 2028-01-01, 48", "2026-04-01, 2026-04-01, 0"})
  void monthsAreExactInDays(LocalDate from, LocalDate to, double months) {
    assertEquals(months, Growth.months(from, to), 1e-12);
    assertEquals(months, new Regrowth(from, to, Growth.USUAL).months(), 1e-12);
  }

  /** Common practice: 15 to 30 mm are about 6 to 12 weeks. */
  @Test
  void rebookingIsThatOfTheTrade() {
    Rebooking rebooking = Rebooking.after(DAY, RebookLengths.USUAL, Growth.USUAL);
    assertEquals("from 2026-05-14 to 2026-06-25 (6 to 12 weeks)", rebooking.words());
    // 15 mm at 13 mm a month: 35.1 days; 30 mm at 8 mm a month: 114.1 days.
    assertEquals(DAY.plusDays(36), rebooking.earliest());
    assertEquals(DAY.plusDays(114), rebooking.latest());
    Growth growth = Growth.USUAL;
    assertReached(growth, rebooking.from(), 15, true);
    assertReached(growth, rebooking.from().minusDays(1), 15, false);
    assertReached(growth, rebooking.to().plusDays(1), 30, true);
    assertReached(growth, rebooking.to(), 30, false);
  }

  private static void assertReached(Growth growth, LocalDate day, double mm, boolean reached) {
    double grown = growth.over(Growth.months(DAY, day)).mean().toMillimetres();
    assertEquals(reached, grown >= mm, day + ": " + grown + " mm");
  }

  @Test
  void aRangeOfNoWidthIsOneDayAtLeast() {
    Length same = Length.ofMillimetres(20);
    Rebooking rebooking = Rebooking.after(DAY, new RebookLengths(same, same), Growth.USUAL);
    assertEquals(rebooking.from(), rebooking.to());
  }

  @Test
  void whatCannotBeIsRefused() {
    Length ten = Length.ofMillimetres(10);
    assertThrows(IllegalArgumentException.class, () -> new Growth(ten, Length.ZERO, ten));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Growth(ten, Length.ofMillimetres(11), Length.ofMillimetres(12)));
    assertThrows(IllegalArgumentException.class, () -> new RebookLengths(ten, ten.times(0.5)));
    assertThrows(
        IllegalArgumentException.class, () -> new Regrowth(DAY, DAY.minusDays(1), Growth.USUAL));
  }
}
