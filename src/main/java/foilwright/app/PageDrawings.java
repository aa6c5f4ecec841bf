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
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
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
   * @param mark the same for the same drawing and, but for chance, for no other
   */
  public record Drawing(String id, String words, String svg, String mark) {
    static Drawing of(Scene scene) {
      String svg = SvgWriter.write(scene, SvgLetters.LINKED);
      return new Drawing(scene.id(), scene.title(), svg, mark(svg));
    }

    private static String mark(String svg) {
      try {
        byte[] digest =
            MessageDigest.getInstance("SHA-256").digest(svg.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().formatHex(digest, 0, 8);
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException("every Java has SHA-256", e);
      }
    }
  }

  /** The typeface of the drawings, for the page to supply: the usual characters as TrueType. */
  public static byte[] letters() {
    return PageLetters.file();
  }

  /** The head from five sides and the unrolled scalp, with every foil. */
  public List<Drawing> views(Plan plan) {
    return map
        .pictures(plan.placement(), Sheets.onOldLightener(plan), plan.pinned())
        .parallelStream()
        .map(Drawing::of)
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
