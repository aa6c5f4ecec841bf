package foilwright.service;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;

/**
 * What the house charges, in exact money of one currency; none negative.
 *
 * @param currency three letters, such as {@code EUR}
 * @param perFoil for each foil
 * @param bands a price up to a number of foils, numbers rising
 * @param perHour of chair time
 * @param perBowl for each bowl mixed
 * @param toner for toning
 * @param quoteBy which of the rules the house tells its guests
 */
public record Prices(
    String currency,
    BigDecimal perFoil,
    List<Band> bands,
    BigDecimal perHour,
    BigDecimal perBowl,
    BigDecimal toner,
    PriceRule quoteBy) {

  /** A price for a visit of at most so many foils. */
  public record Band(String name, int mostFoils, BigDecimal price) {
    public Band {
      requireNotNegative(price);
      if (name.isBlank() || mostFoils < 1) {
        throw new IllegalArgumentException(
            "a price band needs a name and a foil cap of at least 1, not " + mostFoils);
      }
    }
  }

  public Prices {
    if (!currency.matches("[A-Z]{3}")) {
      throw new IllegalArgumentException("a currency is three capital letters, not " + currency);
    }
    requireNotNegative(perFoil);
    requireNotNegative(perHour);
    requireNotNegative(perBowl);
    requireNotNegative(toner);
    Objects.requireNonNull(quoteBy);
    bands = List.copyOf(bands);
    for (int i = 1; i < bands.size(); i++) {
      if (bands.get(i).mostFoils() <= bands.get(i - 1).mostFoils()) {
        throw new IllegalArgumentException(
            "the foil caps of the price bands must rise: "
                + bands.get(i - 1).mostFoils()
                + ", then "
                + bands.get(i).mostFoils());
      }
    }
  }

  private static void requireNotNegative(BigDecimal amount) {
    if (amount.signum() < 0) {
      throw new IllegalArgumentException("a price of " + amount + " is less than 0");
    }
  }
}
