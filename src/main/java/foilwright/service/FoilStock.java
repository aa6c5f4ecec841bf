package foilwright.service;

import foilwright.units.Length;

/**
 * A size of foil in the drawer.
 *
 * @param name such as {@code standard}
 * @param width of the sheet across the parting, more than 0
 * @param usableWidth width that may hold hair, the rest being folded margin; more than 0, at most
 *     {@code width}; usually the width less 10 to 20 mm
 * @param length of the sheet along the hair, more than 0
 */
public record FoilStock(String name, Length width, Length usableWidth, Length length) {
  public FoilStock {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a foil size needs a name");
    }
    if (width.compareTo(Length.ZERO) <= 0 || length.compareTo(Length.ZERO) <= 0) {
      throw new IllegalArgumentException(
          "a foil of " + width + " by " + length + " must be more than 0 mm each way");
    }
    if (usableWidth.compareTo(Length.ZERO) <= 0 || usableWidth.compareTo(width) > 0) {
      throw new IllegalArgumentException(
          "a usable width of " + usableWidth + " is outside 0 mm to the foil's " + width);
    }
  }
}
