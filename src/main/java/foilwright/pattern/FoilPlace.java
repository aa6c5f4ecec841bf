package foilwright.pattern;

import foilwright.anatomy.Side;
import java.util.Comparator;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A foil by its place in its section, as it is counted when none is left out: {@code row 3 foil 2},
 * or of one half of a pair {@code left row 3 foil 2}.
 *
 * @param side left or right, for one half of a mirrored section; empty for both, or for a section
 *     that is no pair
 * @param row from 1 in the section's direction of travel
 * @param foil place in the row, from 1
 */
public record FoilPlace(Optional<Side> side, int row, int foil) implements Comparable<FoilPlace> {
  public static final int MOST = 999;

  private static final Pattern TEXT =
      Pattern.compile("(?:(left|right)\\s+)?row\\s+([1-9]\\d{0,2})\\s+foil\\s+([1-9]\\d{0,2})");
  private static final Comparator<FoilPlace> ORDER =
      Comparator.comparingInt(FoilPlace::row)
          .thenComparingInt(FoilPlace::foil)
          .thenComparing(p -> p.side().orElse(Side.MIDDLE));

  public FoilPlace {
    if (side.isPresent() && side.get() == Side.MIDDLE) {
      throw new IllegalArgumentException("the halves of a pair are left and right");
    }
    if (row < 1 || row > MOST || foil < 1 || foil > MOST) {
      throw new IllegalArgumentException(
          "row " + row + " foil " + foil + " is outside 1 to " + MOST);
    }
  }

  /** On both halves of a pair, or in a section that is none. */
  public static FoilPlace of(int row, int foil) {
    return new FoilPlace(Optional.empty(), row, foil);
  }

  public static FoilPlace of(Side side, int row, int foil) {
    return new FoilPlace(Optional.of(side), row, foil);
  }

  /** Empty when the text is no place of a foil. */
  public static Optional<FoilPlace> parse(String text) {
    Matcher form = TEXT.matcher(text.strip());
    if (!form.matches()) {
      return Optional.empty();
    }
    Optional<Side> side =
        Optional.ofNullable(form.group(1)).map(s -> s.equals("left") ? Side.LEFT : Side.RIGHT);
    return Optional.of(
        new FoilPlace(side, Integer.parseInt(form.group(2)), Integer.parseInt(form.group(3))));
  }

  /** The form used in documents. */
  public String text() {
    return side.map(s -> s.words() + " ").orElse("") + "row " + row + " foil " + foil;
  }

  /** Whether this names the foil at a row and place of a half, or of a section that is no pair. */
  public boolean names(Side half, int inRow, int inFoil) {
    return row == inRow && foil == inFoil && side.map(s -> s == half).orElse(true);
  }

  /** By row, then foil, then left before right before both. */
  @Override
  public int compareTo(FoilPlace other) {
    return ORDER.compare(this, other);
  }
}
