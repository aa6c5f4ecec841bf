package foilwright.service;

/**
 * Parts by weight of product and of developer, such as 1 : 1.5.
 *
 * @param product parts, more than 0
 * @param developer parts, 0 or more
 */
public record MixRatio(double product, double developer) {
  public MixRatio {
    if (!(product > 0 && developer >= 0)
        || !Double.isFinite(product)
        || !Double.isFinite(developer)) {
      throw new IllegalArgumentException(
          "a ratio of " + product + " : " + developer + " needs a product part above 0");
    }
  }

  /** Share of the product in the mixed weight. */
  public double productShare() {
    return product / (product + developer);
  }
}
