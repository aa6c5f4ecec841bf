package foilwright.drawing;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;

/** Puts a scene on a page. It decides nothing: every mark, in order, as it stands in the scene. */
public final class Painter {
  private static final float MITRE_LIMIT = 4;

  private Painter() {}

  /** Hands every part of a scene to a page. */
  public static void paint(Scene scene, Page page) {
    for (Mark mark : scene.marks()) {
      page.open(mark);
      for (Part part : mark.parts()) {
        if (part instanceof Part.Shape shape) {
          page.draw(shape);
        } else if (part instanceof Part.Lettering lettering) {
          page.letter(lettering);
        } else if (part instanceof Part.Photo photo) {
          page.picture(photo);
        }
      }
      page.close(mark);
    }
  }

  /** Draws a shape on a {@code Graphics2D} whose unit is one millimetre. */
  public static void draw(Part.Shape shape, Graphics2D graphics) {
    Shape outline = toShape(shape.curve());
    if (shape.fill().isPresent()) {
      graphics.setPaint(toColour(shape.fill().get()));
      graphics.fill(outline);
    }
    if (shape.pen().isPresent()) {
      Pen pen = shape.pen().get();
      graphics.setPaint(toColour(pen.ink()));
      graphics.setStroke(toStroke(pen));
      graphics.draw(outline);
    }
  }

  /** The same curve as a shape of the platform, inside by the even-odd rule. */
  public static Shape toShape(Curve curve) {
    Path2D.Double shape = new Path2D.Double(Path2D.WIND_EVEN_ODD);
    curve.visit(
        new Curve.Sink() {
          @Override
          public void moveTo(double x, double y) {
            shape.moveTo(x, y);
          }

          @Override
          public void lineTo(double x, double y) {
            shape.lineTo(x, y);
          }

          @Override
          public void curveTo(double x1, double y1, double x2, double y2, double x, double y) {
            shape.curveTo(x1, y1, x2, y2, x, y);
          }

          @Override
          public void close() {
            shape.closePath();
          }
        });
    return shape;
  }

  public static Color toColour(Ink ink) {
    return new Color(ink.rgb());
  }

  private static BasicStroke toStroke(Pen pen) {
    float width = (float) pen.weight().millimetres();
    if (pen.dash().isEmpty()) {
      return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, MITRE_LIMIT);
    }
    float[] dash = new float[pen.dash().size()];
    for (int i = 0; i < dash.length; i++) {
      dash[i] = pen.dash().get(i).floatValue();
    }
    return new BasicStroke(
        width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, MITRE_LIMIT, dash, 0);
  }
}
