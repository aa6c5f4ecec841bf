package foilwright.drawing;

/** One page of a file format, which takes a scene part by part. */
public interface Page {
  /** Called before the parts of a mark. */
  void open(Mark mark);

  /** Fills a curve, draws along it, or both; the fill lies below the line. */
  void draw(Part.Shape shape);

  /** Sets a line of text. */
  void letter(Part.Lettering lettering);

  /** Puts a picture of pixels over a box. */
  void picture(Part.Photo photo);

  /** Called after the parts of a mark. */
  void close(Mark mark);
}
