package foilwright.service.visit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.problem.Severity;
import foilwright.service.PriceRule;
import foilwright.service.Prices;
import foilwright.units.Minutes;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Exact money by each rule of a house; sums done by hand. */
class PriceIdentityTest {
  private static BigDecimal money(String amount) {
    return new BigDecimal(amount);
  }

  private static Prices prices(String currency, String perHour, PriceRule quoteBy) {
    return new Prices(
        currency,
        money("3.20"),
        List.of(
            new Prices.Band("to 15 foils", 15, money("60.00")),
            new Prices.Band("to 30 foils", 30, money("95.00"))),
        money(perHour),
        money("6.50"),
        money("22.00"),
        quoteBy);
  }

  private static Price price(Prices prices, int foils) {
    return Price.of(prices, foils, Minutes.ofMinutes(150), Minutes.ofMinutes(185), 2, true);
  }

  private static String words(Price price, PriceRule rule) {
    Price.Quote quote = price.find(rule).orElseThrow();
    return String.join("; ", quote.lines().stream().map(quote::words).toList())
        + "; "
        + quote.total();
  }

  @Test
  void eachRuleGivesItsLinesAndTotal() {
    Price price = price(prices("EUR", "48.00", PriceRule.FOIL), 23);
    String beside = "2 bowls x 6.50 = 13.00 EUR; toner = 22.00 EUR; ";
    assertEquals(
        "band \"to 30 foils\" = 95.00 EUR; " + beside + "130.00 EUR", words(price, PriceRule.BAND));
    assertEquals(
        "23 foils x 3.20 = 73.60 EUR; " + beside + "108.60 EUR", words(price, PriceRule.FOIL));
    assertEquals(
        "chair 2 h 30 min to 3 h 5 min x 48.00 an hour = 120.00 to 148.00 EUR; "
            + beside
            + "155.00 to 183.00 EUR",
        words(price, PriceRule.HOUR));
    assertEquals(PriceRule.FOIL, price.quoted().orElseThrow().rule());
    assertEquals(List.of(), price.problems());
  }

  @Test
  void nothingBesideTheFoilsIsChargedWhenNothingIsUsed() {
    Minutes hour = Minutes.ofMinutes(60);
    Price price = Price.of(prices("EUR", "48", PriceRule.BAND), 1, hour, hour, 0, false);
    assertEquals("foil = 3.20 EUR; 3.20 EUR", words(price, PriceRule.FOIL));
    assertEquals(
        "chair 1 h 0 min x 48.00 an hour = 48.00 EUR; 48.00 EUR", words(price, PriceRule.HOUR));
  }

  @ParameterizedTest
  @CsvSource({"0, 60.00", "15, 60.00", "16, 95.00", "30, 95.00"})
  void theSmallestBandThatHoldsTheFoils(int foils, String amount) {
    Price price = price(prices("EUR", "48", PriceRule.BAND), foils);
    assertEquals(
        money(amount).add(money("35.00")), price.find(PriceRule.BAND).orElseThrow().least());
  }

  @Test
  void aboveEveryBandThereIsNoneAndItIsSaid() {
    Price price = price(prices("EUR", "48", PriceRule.BAND), 31);
    assertTrue(price.find(PriceRule.BAND).isEmpty() && price.quoted().isEmpty());
    assertEquals(
        "the house has no price band for 31 foils; its largest holds 30",
        price.problems().get(0).message());
    assertEquals(Severity.WARNING, price.problems().get(0).severity());
    Price byFoil = price(prices("EUR", "48", PriceRule.FOIL), 31);
    assertEquals(Severity.NOTE, byFoil.problems().get(0).severity());
    assertEquals(money("134.20"), byFoil.quoted().orElseThrow().most());
  }

  /** 50 minutes at 31.23 an hour are 26.025 exactly; with 5 minutes at 31.23, 2.6025. */
  @ParameterizedTest
  @CsvSource({"EUR, 50, 26.03", "EUR, 5, 2.60", "JPY, 50, 26", "KWD, 5, 2.603", "QQQ, 50, 26.03"})
  void halvesGoUpToTheSmallestCoin(String currency, double minutes, String amount) {
    Minutes time = Minutes.ofMinutes(minutes);
    Price price = Price.of(prices(currency, "31.23", PriceRule.HOUR), 1, time, time, 0, false);
    assertEquals(money(amount), price.quoted().orElseThrow().least());
  }

  /** Rounded only at the end: 26.025 + 6.505 = 32.53, where rounded amounts would make 32.54. */
  @Test
  void aTotalIsRoundedOnce() {
    Prices prices =
        new Prices(
            "EUR",
            money("1"),
            List.of(),
            money("31.23"),
            money("6.505"),
            money("0"),
            PriceRule.HOUR);
    Minutes time = Minutes.ofMinutes(50);
    Price.Quote quote = Price.of(prices, 1, time, time, 1, false).quoted().orElseThrow();
    assertEquals(money("32.53"), quote.least());
    assertEquals("bowl = 6.51 EUR", quote.words(quote.lines().get(1)));
  }

  @Test
  void aCallersMistakesAreRefused() {
    Prices prices = prices("EUR", "48", PriceRule.BAND);
    Minutes hour = Minutes.ofMinutes(60);
    assertThrows(IllegalArgumentException.class, () -> Price.of(prices, -1, hour, hour, 0, false));
    assertThrows(IllegalArgumentException.class, () -> Price.of(prices, 1, hour, hour, -1, false));
    assertThrows(
        IllegalArgumentException.class,
        () -> Price.of(prices, 1, hour, Minutes.ofMinutes(50), 0, false));
  }
}
