package foilwright.service.visit;

import foilwright.problem.Problem;
import foilwright.service.PriceRule;
import foilwright.service.Prices;
import foilwright.units.Minutes;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;

/**
 * What a visit costs by each of the house's rules: the foils by band, by the foil or by the hour,
 * and beside them the bowls and the toner.
 *
 * <p>Money is exact. Amounts are rounded only when they are told, halves up, to the smallest coin
 * of the currency; a total is the rounded sum, not the sum of rounded amounts. Chair time counts in
 * whole minutes.
 *
 * @param prices the house's
 * @param quotes one for each rule that gives a price, in the order of {@link PriceRule}
 * @param problems a rule that gives none
 */
public record Price(Prices prices, List<Quote> quotes, List<Problem> problems) {

  /**
   * One amount of a quote: so much of a thing at a price each.
   *
   * @param what the thing, such as {@code foils}
   * @param each price of {@code per} of them
   * @param least how many at least
   * @param most how many at most; more than {@code least} only for chair time
   * @param per how many {@code each} pays for: 60 for minutes at a price an hour, else 1
   */
  public record Line(String what, BigDecimal each, int least, int most, int per) {
    public Line {
      if (least < 0 || most < least || per < 1) {
        throw new IllegalArgumentException(least + " to " + most + " of " + what + " by " + per);
      }
    }

    private static Line of(String what, BigDecimal each, int count) {
      return new Line(what, each, count, count, 1);
    }
  }

  /**
   * A price by one rule.
   *
   * @param currency three letters
   * @param lines what it is made of
   */
  public record Quote(PriceRule rule, String currency, List<Line> lines) {
    public Quote {
      lines = List.copyOf(lines);
    }

    /** The total of the shortest chair time. */
    public BigDecimal least() {
      return sum(lines, false);
    }

    /** The total of the longest chair time; that of the shortest unless time is charged. */
    public BigDecimal most() {
      return sum(lines, true);
    }

    /** Such as {@code 153.60 to 190.40 EUR}. */
    public String total() {
      return range(least(), most()) + " " + currency;
    }

    /** A line as a person would write it, such as {@code 23 foils x 3.20 = 73.60 EUR}. */
    public String words(Line line) {
      String amount = range(sum(List.of(line), false), sum(List.of(line), true)) + " " + currency;
      if (line.per() == 60) {
        String time =
            line.least() == line.most()
                ? hours(line.least())
                : hours(line.least()) + " to " + hours(line.most());
        return line.what() + " " + time + " x " + coins(line.each()) + " an hour = " + amount;
      }
      if (line.least() == 1) {
        return line.what() + " = " + amount;
      }
      return line.least() + " " + line.what() + " x " + coins(line.each()) + " = " + amount;
    }

    private static String hours(int minutes) {
      return minutes / 60 + " h " + minutes % 60 + " min";
    }

    private String range(BigDecimal least, BigDecimal most) {
      return least.compareTo(most) == 0
          ? least.toPlainString()
          : least.toPlainString() + " to " + most.toPlainString();
    }

    /** A price each as the house gives it, with no fewer digits than the currency has. */
    private String coins(BigDecimal each) {
      return each.setScale(Math.max(each.scale(), digits(currency)), RoundingMode.UNNECESSARY)
          .toPlainString();
    }

    private BigDecimal sum(List<Line> parts, boolean longest) {
      BigDecimal sixty = BigDecimal.valueOf(60);
      BigDecimal sum = BigDecimal.ZERO;
      for (Line line : parts) {
        BigDecimal count = BigDecimal.valueOf(longest ? line.most() : line.least());
        sum = sum.add(line.each().multiply(count).multiply(BigDecimal.valueOf(60L / line.per())));
      }
      return sum.divide(sixty, digits(currency), RoundingMode.HALF_UP);
    }
  }

  public Price {
    quotes = List.copyOf(quotes);
    problems = List.copyOf(problems);
  }

  /**
   * @param foils 0 or more
   * @param likelyChair chair time that is as likely to be shorter as longer
   * @param longChair chair time that nine visits of ten do not pass; at least {@code likelyChair}
   * @param bowls bowls mixed, 0 or more
   */
  public static Price of(
      Prices prices,
      int foils,
      Minutes likelyChair,
      Minutes longChair,
      int bowls,
      boolean withToner) {
    List<Line> beside = new ArrayList<>();
    if (bowls != 0) {
      beside.add(Line.of(bowls == 1 ? "bowl" : "bowls", prices.perBowl(), bowls));
    }
    if (withToner) {
      beside.add(Line.of("toner", prices.toner(), 1));
    }
    List<Problem> problems = new ArrayList<>();
    List<Quote> quotes = new ArrayList<>();
    Optional<Prices.Band> band =
        prices.bands().stream().filter(b -> b.mostFoils() >= foils).findFirst();
    if (band.isPresent()) {
      Line line = Line.of("band \"" + band.get().name() + "\"", band.get().price(), 1);
      quotes.add(quote(prices, PriceRule.BAND, line, beside));
    } else {
      problems.add(noBand(prices, foils));
    }
    Line perFoil = Line.of(foils == 1 ? "foil" : "foils", prices.perFoil(), foils);
    quotes.add(quote(prices, PriceRule.FOIL, perFoil, beside));
    Line chair =
        new Line("chair", prices.perHour(), wholeMinutes(likelyChair), wholeMinutes(longChair), 60);
    quotes.add(quote(prices, PriceRule.HOUR, chair, beside));
    return new Price(prices, quotes, problems);
  }

  private static int wholeMinutes(Minutes time) {
    return Math.toIntExact(Math.round(time.toMinutes()));
  }

  private static Quote quote(Prices prices, PriceRule rule, Line foils, List<Line> beside) {
    List<Line> lines = new ArrayList<>(List.of(foils));
    lines.addAll(beside);
    return new Quote(rule, prices.currency(), lines);
  }

  private static Problem noBand(Prices prices, int foils) {
    String message =
        prices.bands().isEmpty()
            ? "the house has no price bands"
            : "the house has no price band for "
                + foils
                + " foils; its largest holds "
                + prices.bands().get(prices.bands().size() - 1).mostFoils();
    String cure = "add a band that holds them, or quote by the foil or by the hour";
    return prices.quoteBy() == PriceRule.BAND
        ? Problem.warning("no-price-band", "prices.bands", message, cure)
        : Problem.note("no-price-band", "prices.bands", message, cure);
  }

  /** The quote by a rule, if the rule gives one. */
  public Optional<Quote> find(PriceRule rule) {
    return quotes.stream().filter(q -> q.rule() == rule).findFirst();
  }

  /** What the house would tell its guest; none when its own rule gives no price. */
  public Optional<Quote> quoted() {
    return find(prices.quoteBy());
  }

  /** Digits after the point; 2 for letters that stand for no known currency. */
  private static int digits(String currency) {
    return Currency.getAvailableCurrencies().stream()
        .filter(c -> c.getCurrencyCode().equals(currency))
        .map(Currency::getDefaultFractionDigits)
        .filter(digits -> digits >= 0)
        .findFirst()
        .orElse(2);
  }
}
