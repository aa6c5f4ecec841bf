package foilwright.document;

/** A place in a document: line and column, both from 1; both 0 for the document as a whole. */
public record Place(int line, int column) implements Comparable<Place> {
  public static final Place WHOLE = new Place(0, 0);

  public Place {
    if (line < 0 || column < 0) {
      throw new IllegalArgumentException("no place at line " + line + ", column " + column);
    }
  }

  @Override
  public int compareTo(Place other) {
    return line != other.line
        ? Integer.compare(line, other.line)
        : Integer.compare(column, other.column);
  }
}
