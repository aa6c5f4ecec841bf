package foilwright.app;

import foilwright.drawing.Scene;
import foilwright.drawing.View;
import foilwright.drawing.svg.PageLetters;
import foilwright.drawing.svg.SvgLetters;
import foilwright.drawing.svg.SvgWriter;
import foilwright.geometry.Vector3;
import foilwright.head.Head;
import foilwright.service.visit.Visit;
import foilwright.sheet.DrawnHead;
import foilwright.sheet.MapSheet;
import foilwright.sheet.Paper;
import foilwright.sheet.TimelineSheet;
import java.util.List;
import java.util.Optional;

/**
 * Drawings of a plan as parts of a page, which supplies the typeface. Made once for a head and used
 * for every plan on it; may be shared between threads.
 */
public final class PageDrawings {
  private static final double CLOCK_WIDTH_MM = 240;

  private final MapSheet map;

  private PageDrawings(MapSheet map) {
    this.map = map;
  }

  public static PageDrawings on(Head head) {
    return new PageDrawings(MapSheet.on(DrawnHead.of(head), Paper.A4));
  }

  /**
   * One drawing.
   *
   * @param id its name, the same for every plan
   * @param words what stands below it
   */
  public record Drawing(String id, String words, String svg) {
    static Drawing of(Scene scene) {
      String svg = SvgWriter.write(scene, SvgLetters.LINKED);
      return new Drawing(scene.id(), scene.title(), svg);
    }
  }

  /** The typeface of the drawings, for the page to supply: the usual characters as TrueType. */
  public static byte[] letters() {
    return PageLetters.file();
  }

  /** The head from one side or unrolled, drawn when it is first asked for. */
  public static final class Picture {
    private final MapSheet.Alone picture;
    private Drawing drawing;

    private Picture(MapSheet.Alone picture) {
      this.picture = picture;
    }

    /** Its name, the same for every plan. */
    public String id() {
      return picture.id();
    }

    /** What stands below it. */
    public String words() {
      return picture.title();
    }

    /** It, as a drawing. */
    public Drawing drawing() {
      if (drawing == null) {
        drawing = Drawing.of(picture.drawn().get());
      }
      return drawing;
    }
  }

  /** The head from five sides and the unrolled scalp, with every foil. */
  public List<Picture> views(Plan plan) {
    return map.pictures(plan.placement(), Sheets.onOldLightener(plan), plan.pinned()).stream()
        .map(Picture::new)
        .toList();
  }

  /** Where a point of the head's surface lies in the drawing of a side. */
  MapSheet.Spot spot(View view, Vector3 point) {
    return map.spot(view, point);
  }

  /** What hands and chemistry do at the first visit; empty when the plan has none. */
  public Optional<Drawing> clock(Plan plan) {
    return firstVisit(plan)
        .map(visit -> Sheets.timeline(plan, visit, Optional.empty()))
        .map(timeline -> Drawing.of(TimelineSheet.chart(timeline, CLOCK_WIDTH_MM)));
  }

  private static Optional<Visit> firstVisit(Plan plan) {
    return plan.times().stream().flatMap(times -> times.visits().stream()).findFirst();
  }
}
