package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.drawing.Point;
import foilwright.drawing.Polygon;
import foilwright.drawing.View;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.head.Head;
import foilwright.head.HeadForm;
import foilwright.head.HeadKind;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The pictures hide what turns away and nothing else. That is right only while no part of a scalp
 * that faces the viewer lies behind another: sight lines cut with the form itself must agree.
 */
class NearSideIdentityTest {
  private static final double AWAY_MM = 500;
  private static final double GRAZING = 0.03;
  private static final double SAME_MM = 0.5;

  @ParameterizedTest
  @EnumSource
  void whatFacesTheViewerIsNotHidden(HeadKind kind) {
    Head head = SampleMaps.head(kind);
    HeadForm form = head.form();
    TriangleMesh mesh = head.mesh();
    for (View view : View.values()) {
      List<String> hidden = new ArrayList<>();
      int seen = 0;
      for (int v = 0; v < mesh.vertexCount(); v += 5) {
        Vector3 p = mesh.vertex(v);
        if (form.normal(p).dot(view.toViewer()) < GRAZING) {
          continue;
        }
        seen++;
        Vector3 eye = p.plus(view.toViewer().times(AWAY_MM));
        Vector3 met = form.hit(eye, view.toViewer().negated()).orElseThrow();
        if (met.distance(p) > SAME_MM) {
          hidden.add(p + " behind " + met);
        }
      }
      assertTrue(seen > 100, "too few points to tell");
      assertEquals(List.of(), hidden, view.words());
    }
  }

  @ParameterizedTest
  @EnumSource
  void theContourIsWhereTheSurfaceTurnsAway(View view) {
    Head head = SampleMaps.head(HeadKind.WOMAN);
    HeadForm form = head.form();
    HeadFigure figure = new HeadFigure(form, -60);
    TriangleMesh mesh = head.mesh();
    // No point of the scalp appears outside the contour, and some come up to it.
    List<Point> contour = figure.horizon(view);
    Polygon inside = Polygon.of(List.of(contour));
    Point middle = view.project(form.centre());
    double nearest = Double.POSITIVE_INFINITY;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Point p = view.project(mesh.vertex(v));
      Point within = p.lerp(middle, 0.3 / p.distance(middle));
      assertTrue(inside.contains(within), view.words() + " " + mesh.vertex(v));
      for (Point q : contour) {
        nearest = Math.min(nearest, p.distance(q));
      }
    }
    assertTrue(nearest < 1.5, "the scalp keeps " + nearest + " mm from its contour");
  }
}
