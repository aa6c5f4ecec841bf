package foilwright.drawing;

/** What a file format adds to the drawing commands of {@code Graphics2D}. */
public interface Page {
  /** Called before the parts of a mark. */
  void open(Mark mark);

  /** Sets a line of text. */
  void letter(Part.Lettering lettering);

  /** Called after the parts of a mark. */
  void close(Mark mark);
}
