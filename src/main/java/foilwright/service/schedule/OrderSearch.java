package foilwright.service.schedule;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Looks for a better working order. A chain is one section's rows in order, which is kept; rows of
 * different chains may follow each other in any way. Foils keep what comes right before them, so
 * what a section needs is given once, with the first foil of its chain.
 *
 * <p>The same seed gives the same order.
 */
public final class OrderSearch {
  private OrderSearch() {}

  /**
   * A foil to place.
   *
   * @param place where one stands to place it
   * @param hairline whether it lies at the hairline
   */
  public record Item(FoilTask foil, String place, boolean hairline) {
    public Item {
      Objects.requireNonNull(foil);
      Objects.requireNonNull(place);
    }
  }

  /** Foils that are placed one after another without anything between; at least one. */
  public record Row(List<Item> items) {
    public Row {
      items = List.copyOf(items);
      if (items.isEmpty()) {
        throw new IllegalArgumentException("a row has at least one foil");
      }
    }
  }

  /** What an order is to make small. */
  public enum Aim {
    /**
     * Minutes that a foil is over its window when all are placed without a break and then come out
     * in the same order, each as early as it can.
     */
    LARGEST_EXCESS("largest excess over a window, min"),
    /** How often the standing place changes. */
    WALKS("walks round the chair"),
    /** How often a foil at the hairline is placed before one that is not. */
    HAIRLINE_EARLY("foils at the hairline placed before others, pairs");

    private final String words;

    Aim(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * What was reached for one aim.
   *
   * @param before for the chains one after another as they were given
   * @param value for the order that was found
   * @param lowerBound no order of these chains has less
   */
  public record Reached(Aim aim, double before, double value, double lowerBound) {
    /** As in "walks round the chair: 5 instead of 9, at least 4". */
    public String words() {
      String figure = aim == Aim.LARGEST_EXCESS ? "%.1f" : "%.0f";
      return String.format(
          Locale.ROOT,
          "%s: " + figure + " instead of " + figure + ", at least " + figure,
          aim.words(),
          value,
          before,
          lowerBound);
    }
  }

  /**
   * The order that was found.
   *
   * @param order foils in working order
   * @param reached one for each aim, in the order of the aims
   * @param proven whether no order is better: every one was tried, or every bound is reached
   * @param tried how many orders were looked at
   */
  public record Result(List<Item> order, List<Reached> reached, boolean proven, int tried) {
    public Result {
      order = List.copyOf(order);
      reached = List.copyOf(reached);
    }
  }

  /**
   * @param chains each with its rows in order
   * @param aims the first matters most, a later one only among orders that are equal so far
   * @param seed for the random part
   * @param limit how many orders to look at when there are too many to try them all
   */
  public static Result search(List<List<Row>> chains, List<Aim> aims, long seed, int limit) {
    return new Orders(chains, aims, limit).search(seed);
  }
}
