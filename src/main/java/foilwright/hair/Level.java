package foilwright.hair;

/** Depth of colour from 1 (black) to 10 (lightest blonde), the trade's common scale. */
public record Level(int number) implements Comparable<Level> {
  public static final int LEAST = 1;
  public static final int MOST = 10;

  public Level {
    if (number < LEAST || number > MOST) {
      throw new IllegalArgumentException(
          "level " + number + " is outside " + LEAST + " to " + MOST);
    }
  }

  @Override
  public int compareTo(Level other) {
    return Integer.compare(number, other.number);
  }

  @Override
  public String toString() {
    return "level " + number;
  }
}
