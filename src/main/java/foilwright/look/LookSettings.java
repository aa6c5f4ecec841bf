package foilwright.look;

import java.util.List;
import java.util.Objects;

/**
 * What is drawn and in which colours.
 *
 * @param heightPx of the level pictures, 40 to 2000; all pictures of a look have one scale
 * @param sides to look from, in order, each once
 */
public record LookSettings(int heightPx, List<LookSide> sides, HairColours colours) {
  public static final int USUAL_HEIGHT = 400;
  public static final int LEAST_HEIGHT = 40;
  public static final int MOST_HEIGHT = 2000;

  public LookSettings {
    if (heightPx < LEAST_HEIGHT || heightPx > MOST_HEIGHT) {
      throw new IllegalArgumentException(
          heightPx + " pixels are outside " + LEAST_HEIGHT + " to " + MOST_HEIGHT);
    }
    sides = List.copyOf(sides);
    if (sides.isEmpty() || sides.stream().distinct().count() < sides.size()) {
      throw new IllegalArgumentException("sides to look from: one or more, each once");
    }
    Objects.requireNonNull(colours);
  }

  /** All five sides at the usual size. */
  public static LookSettings of(HairColours colours) {
    return new LookSettings(USUAL_HEIGHT, List.of(LookSide.values()), colours);
  }

  public LookSettings withHeight(int pixels) {
    return new LookSettings(pixels, sides, colours);
  }

  public LookSettings withSides(List<LookSide> shown) {
    return new LookSettings(heightPx, shown, colours);
  }
}
