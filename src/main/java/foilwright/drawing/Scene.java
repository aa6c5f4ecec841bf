package foilwright.drawing;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A sheet, ready to be written.
 *
 * @param id name of the sheet: lower case letters, figures and hyphens
 * @param title what the sheet is, in a few words
 * @param description what it shows, for a person who does not see it
 * @param widthMm width of the paper
 * @param heightMm height of the paper
 * @param marks in drawing order: by layer, and in a layer as given
 */
public record Scene(
    String id,
    String title,
    String description,
    double widthMm,
    double heightMm,
    List<Mark> marks) {

  public Scene {
    Mark.requireName(id);
    if (!(widthMm > 0 && heightMm > 0)) {
      throw new IllegalArgumentException("a sheet of " + widthMm + " by " + heightMm + " mm");
    }
    Set<String> ids = new HashSet<>();
    ids.add(id);
    for (Mark mark : marks) {
      if (!ids.add(mark.id())) {
        throw new IllegalArgumentException("two marks are called " + mark.id());
      }
    }
    marks = marks.stream().sorted(Comparator.comparing(Mark::layer)).toList();
  }

  /** The same sheet in grey: every ink as light as it was. */
  public Scene inGrey() {
    return withMarks(
        marks.stream()
            .map(
                m ->
                    new Mark(
                        m.id(),
                        m.role(),
                        m.layer(),
                        m.title(),
                        m.data(),
                        m.parts().stream().map(Scene::grey).toList()))
            .toList());
  }

  private static Part grey(Part part) {
    if (part instanceof Part.Shape shape) {
      return new Part.Shape(
          shape.curve(),
          shape.fill().map(Ink::grey),
          shape.pen().map(pen -> new Pen(pen.ink().grey(), pen.weight(), pen.dash())));
    }
    if (part instanceof Part.Photo photo) {
      return new Part.Photo(photo.box(), photo.raster().inGrey());
    }
    Part.Lettering text = (Part.Lettering) part;
    return new Part.Lettering(text.text(), text.start(), text.size(), text.ink().grey());
  }

  /** The same sheet with other marks. */
  public Scene withMarks(List<Mark> others) {
    return new Scene(id, title, description, widthMm, heightMm, others);
  }

  public Box paper() {
    return new Box(0, 0, widthMm, heightMm);
  }
}
