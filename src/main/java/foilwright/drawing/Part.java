package foilwright.drawing;

import java.util.Objects;
import java.util.Optional;

/** One visible part of a mark: a shape, a picture of pixels or a line of lettering. */
public sealed interface Part {

  /** The least box that holds it; for lettering the ink of a capital, not of a descender. */
  Box bounds();

  /** A curve that is filled, drawn along, or both; the fill lies below the line. */
  record Shape(Curve curve, Optional<Ink> fill, Optional<Pen> pen) implements Part {
    public Shape {
      Objects.requireNonNull(curve);
      if (curve.isEmpty()) {
        throw new IllegalArgumentException("a shape needs a curve");
      }
      if (fill.isEmpty() && pen.isEmpty()) {
        throw new IllegalArgumentException("a shape needs a fill or a pen");
      }
    }

    public static Shape filled(Curve curve, Ink fill) {
      return new Shape(curve, Optional.of(fill), Optional.empty());
    }

    public static Shape drawn(Curve curve, Pen pen) {
      return new Shape(curve, Optional.empty(), Optional.of(pen));
    }

    public static Shape of(Curve curve, Ink fill, Pen pen) {
      return new Shape(curve, Optional.of(fill), Optional.of(pen));
    }

    @Override
    public Box bounds() {
      return curve.bounds();
    }
  }

  /** A picture of pixels, stretched over a box. */
  record Photo(Box box, Raster raster) implements Part {
    public Photo {
      Objects.requireNonNull(box);
      Objects.requireNonNull(raster);
    }

    @Override
    public Box bounds() {
      return box;
    }
  }

  /**
   * One line of upright text, set from left to right.
   *
   * @param start where the base line begins
   */
  record Lettering(String text, Point start, TextSize size, Ink ink) implements Part {
    public Lettering {
      if (text.isBlank()) {
        throw new IllegalArgumentException("lettering needs text");
      }
      if (!Typeface.shipped().encodes(text)) {
        throw new IllegalArgumentException("the typeface cannot set \"" + text + "\"");
      }
    }

    /** Text whose capitals are centred on a point. */
    public static Lettering centred(String text, Point centre, TextSize size, Ink ink) {
      Typeface face = Typeface.shipped();
      return new Lettering(
          text, centre.plus(-face.width(text, size) / 2, face.capHeight(size) / 2), size, ink);
    }

    /** Text that ends at a point of its base line. */
    public static Lettering endingAt(String text, Point end, TextSize size, Ink ink) {
      return new Lettering(text, end.plus(-Typeface.shipped().width(text, size), 0), size, ink);
    }

    @Override
    public Box bounds() {
      Typeface face = Typeface.shipped();
      double height = face.capHeight(size);
      return new Box(start.x(), start.y() - height, face.width(text, size), height);
    }
  }
}
