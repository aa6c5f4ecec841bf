package foilwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.drawing.Point;
import foilwright.drawing.View;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Isolines;
import foilwright.head.Head;
import foilwright.head.PartSetting;
import foilwright.pattern.Background;
import foilwright.pattern.Extent;
import foilwright.pattern.Remainder;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.placement.PlacedSection;
import foilwright.units.Angle;
import foilwright.units.Length;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Handles against plans: a pattern that is changed as a handle says, and planned anew with all its
 * foils, has its parting where the handle is then drawn.
 */
class HandlesTest {
  /** Of the head; the drawings are at half its size. */
  private static final double OFF_MM = 0.8;

  private static final double SCALE = 0.5;
  private static final double OFF_DEG = 2;

  private static final Set<HandleKind> MOVED =
      EnumSet.of(HandleKind.START, HandleKind.SLICE, HandleKind.BACKGROUND, HandleKind.INSET);

  @TempDir static Path folder;

  private static Workspace workspace;

  @BeforeAll
  static void open() {
    workspace = Workspace.in(folder);
  }

  private Plan plan(String pattern, int section, Section changed) {
    return Planning.plan(
            workspace,
            PlanRequest.of(pattern).withGuest("guest-07"),
            step -> {},
            head -> {},
            drawn -> {
              return changed == null ? drawn : drawn.withSection(section, s -> changed);
            })
        .plan()
        .orElseThrow();
  }

  private static Section changed(Section section, HandleKind kind, double value) {
    Extent mm = Extent.ofMillimetres(value);
    return switch (kind) {
      case START -> section.withFill(section.fill().withOffset(mm));
      case SLICE -> section.withFill(section.fill().withSlice(first(section.fill().slice(), mm)));
      case BACKGROUND ->
          section.withFill(
              section
                  .fill()
                  .withBackground(
                      section
                          .fill()
                          .background()
                          .match(
                              e -> new Background.Even(first(e.width(), mm)),
                              w ->
                                  new Background.Wedge(
                                      first(w.width(), mm), w.wideEnd(), w.points()),
                              n -> n)));
      case ANGLE ->
          section.withShape(
              section.shape() instanceof SectionShape.Diagonal d
                  ? new SectionShape.Diagonal(Angle.ofDegrees(value), d.lowerEnd())
                  : new SectionShape.V(
                      Angle.ofDegrees(value),
                      ((SectionShape.V) section.shape()).apex(),
                      ((SectionShape.V) section.shape()).meetingLine()));
      case TURNED -> section.withTurned(Angle.ofDegrees(value));
      case INSET -> section.withRegion(section.region().withInsetFromHairline(mm));
      default -> throw new IllegalArgumentException(kind.toString());
    };
  }

  private static Run first(Run run, Extent value) {
    return run.isEven() ? Run.of(value) : new Run(value, run.last());
  }

  private static double gap(PageDrawings drawings, View view, List<Polyline> lines, Point p) {
    double least = Double.POSITIVE_INFINITY;
    for (Polyline line : lines) {
      Point before = null;
      for (Vector3 v : line.points()) {
        Point here = drawings.spot(view, v).at();
        if (before != null) {
          least = Math.min(least, gap(before, here, p));
        }
        before = here;
      }
    }
    return least / SCALE;
  }

  private static double gap(Point a, Point b, Point p) {
    double x = b.x() - a.x();
    double y = b.y() - a.y();
    double size = x * x + y * y;
    double t = size == 0 ? 0 : ((p.x() - a.x()) * x + (p.y() - a.y()) * y) / size;
    t = Math.max(0, Math.min(1, t));
    return Math.hypot(a.x() + t * x - p.x(), a.y() + t * y - p.y());
  }

  private static Handle.Stop between(Handle.Stop a, Handle.Stop b) {
    return new Handle.Stop((a.value() + b.value()) / 2, a.at().lerp(b.at(), 0.5));
  }

  /** The way's point half way between the stops about the present value, or beside it. */
  private static Handle.Stop nearby(Handle handle, Handle.Track track) {
    List<Handle.Stop> stops = track.stops();
    int i = 1;
    while (i < stops.size() - 1 && stops.get(i).value() <= handle.value() + 1e-6) {
      i++;
    }
    return between(stops.get(i - 1), stops.get(i));
  }

  private static List<Polyline> lines(Plan plan, int section, HandleKind kind, double value) {
    if (kind == HandleKind.INSET) {
      return Isolines.of(plan.head().scalp(), plan.head().distanceFromHairline(), value);
    }
    return plan.placement().sections().stream()
        .filter(s -> s.index() == section)
        .map(PlacedSection::partings)
        .flatMap(List::stream)
        .toList();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "dark-rim",
        "v-back",
        "full-head-fine-weave",
        "pivot-crown",
        "part-line-and-hairline"
      })
  void aPartingLiesWhereItsHandleIsDragged(String pattern) {
    followed(plan(pattern, 0, null), pattern);
  }

  /** What is left over is shared between both ends, so that every edge moves otherwise. */
  @ParameterizedTest
  @ValueSource(strings = {"full-head-fine-weave", "dark-rim"})
  void aPartingLiesWhereItsHandleIsDraggedWhereTheRestIsShared(String pattern) {
    Section section = plan(pattern, 0, null).pattern().sections().get(0);
    Section shared = section.withFill(section.fill().withRemainder(Remainder.BALANCE));
    followed(plan(pattern, 0, shared), pattern, Optional.of(shared));
  }

  private void followed(Plan plan, String pattern) {
    followed(plan, pattern, Optional.empty());
  }

  private void followed(Plan plan, String pattern, Optional<Section> first) {
    PageDrawings drawings = PageDrawings.on(plan.head());
    List<String> off = new ArrayList<>();
    int tried = 0;
    int sections = first.isPresent() ? 1 : plan.pattern().sections().size();
    for (int i = 0; i < sections; i++) {
      Section section = plan.pattern().sections().get(i);
      for (Handle handle : Handles.of(workspace, plan, i, drawings)) {
        assertTrue(handle.least() <= handle.value() && handle.value() <= handle.most());
        if (MOVED.contains(handle.kind())) {
          Handle.Track track = handle.tracks().get(0);
          Handle.Stop stop = nearby(handle, track);
          Plan then = plan(pattern, i, changed(section, handle.kind(), stop.value()));
          double gap =
              gap(drawings, track.view(), lines(then, i, handle.kind(), stop.value()), stop.at());
          tried++;
          if (!(gap <= OFF_MM)) {
            off.add(section.name() + " " + handle.kind() + " at " + stop.value() + ": " + gap);
          }
        }
      }
    }
    assertTrue(tried >= (first.isPresent() ? 2 : 3), "only " + tried + " handles tried");
    assertEquals(List.of(), off);
  }

  @Test
  void aTurningHandleLiesInTheDirectionThatThePartingTakes() {
    for (String pattern : List.of("dark-rim", "v-back", "full-head-fine-weave")) {
      Plan plan = plan(pattern, 0, null);
      PageDrawings drawings = PageDrawings.on(plan.head());
      Section section = plan.pattern().sections().get(0);
      HandleKind kind =
          section.shape().findAngle().isPresent() ? HandleKind.ANGLE : HandleKind.TURNED;
      Handle handle =
          Handles.of(workspace, plan, 0, drawings).stream()
              .filter(h -> h.kind() == kind)
              .findFirst()
              .orElseThrow();
      Handle.Track track = handle.tracks().get(0);
      Point middle = middle(drawings, track.view(), plan);
      for (Handle.Stop stop : List.of(nearby(handle, track), track.stops().get(1))) {
        Plan then = plan(pattern, 0, changed(section, kind, stop.value()));
        Polyline line = firstParting(then);
        double half = line.length() / 2;
        Point before = drawings.spot(track.view(), line.at(half - 1)).at();
        Point after = drawings.spot(track.view(), line.at(half + 1)).at();
        double drawn = Math.atan2(after.y() - before.y(), after.x() - before.x());
        double pulled = Math.atan2(stop.at().y() - middle.y(), stop.at().x() - middle.x());
        double off = Math.toDegrees(Math.abs(Math.IEEEremainder(drawn - pulled, Math.PI)));
        assertTrue(off <= OFF_DEG, pattern + " at " + stop.value() + " is off by " + off);
      }
    }
  }

  private static Polyline firstParting(Plan plan) {
    return plan.placement().sections().get(0).partings().get(0);
  }

  private static Point middle(PageDrawings drawings, View view, Plan plan) {
    Polyline line = firstParting(plan);
    return drawings.spot(view, line.at(line.length() / 2)).at();
  }

  /**
   * Along the surface a parting moves as far as its section's start: to 3 % where the partings are
   * straight and the handle is near the guide line, along which starts are measured.
   */
  @Test
  void aStartMovesItsPartingAsFarAlongTheSurface() {
    Plan plan = plan("full-head-fine-weave", 0, null);
    Section section = plan.pattern().sections().get(0);
    Polyline before = firstParting(plan);
    for (double further : new double[] {4, 12, 20}) {
      double start = section.fill().offset().amount() + further;
      Polyline after =
          firstParting(plan("full-head-fine-weave", 0, changed(section, HandleKind.START, start)));
      Vector3 p = before.at(before.length() / 2);
      double moved = after.at(after.nearestArc(p)).distance(p);
      assertEquals(further, moved, 0.03 * further);
    }
  }

  @Test
  void thePartLineFollowsItsHandle() {
    Plan plan = plan("dark-rim", 0, null);
    for (PartSide side : List.of(PartSide.LEFT, PartSide.RIGHT)) {
      Head head = plan.head().withPart(new PartSetting(side, Length.ofMillimetres(25)));
      PageDrawings drawings = PageDrawings.on(head);
      Handle handle = Handles.ofPartLine(head, drawings).orElseThrow();
      double sign = side == PartSide.LEFT ? -1 : 1;
      assertEquals(25 * sign, handle.value());
      Handle.Track top =
          handle.tracks().stream().filter(t -> t.view() == View.TOP).findFirst().orElseThrow();
      for (Handle.Stop stop : top.stops()) {
        double aside = Math.abs(stop.value());
        if (stop.value() * sign >= 5) {
          Head moved = head.withPart(new PartSetting(side, Length.ofMillimetres(aside)));
          assertEquals(
              0,
              gap(drawings, View.TOP, List.of(moved.partLine().orElseThrow()), stop.at()),
              OFF_MM);
        }
      }
    }
    assertTrue(
        Handles.ofPartLine(plan.head().withPart(PartSetting.NONE), PageDrawings.on(plan.head()))
            .isEmpty());
  }
}
