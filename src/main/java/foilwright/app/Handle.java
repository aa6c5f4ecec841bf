package foilwright.app;

import foilwright.drawing.Point;
import foilwright.drawing.View;
import java.util.List;

/**
 * One thing on the head that can be dragged, and where it goes as its value changes.
 *
 * @param value as it is, in millimetres or degrees
 * @param least the least value to which it can be dragged
 * @param most the greatest
 * @param tracks one for each drawing on which the handle can be seen; at least one
 */
public record Handle(HandleKind kind, double value, double least, double most, List<Track> tracks) {
  public Handle {
    tracks = List.copyOf(tracks);
  }

  /**
   * The way of a handle over one drawing.
   *
   * @param facing how squarely the surface faces the viewer where the handle is now, up to 1
   * @param stops at least two, by ascending value; between them the way is straight
   */
  public record Track(View view, double facing, List<Stop> stops) {
    public Track {
      stops = List.copyOf(stops);
    }
  }

  /** Where the handle is at a value, millimetres of the drawing from its corner. */
  public record Stop(double value, Point at) {}
}
