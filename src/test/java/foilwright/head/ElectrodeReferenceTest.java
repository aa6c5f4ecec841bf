package foilwright.head;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The surface fitted to electrode positions of the 10-5 system, and cut by planes through the four
 * landmarks of the 10-20 system (nasion, inion, both preauricular points), must put the electrodes
 * of the mid-line, of the coronal line and of the ring at their shares of the way: Jasper 1958;
 * Oostenveld and Praamstra 2001. Positions: MNE-Python's standard_1005, source in every row.
 */
class ElectrodeReferenceTest {
  private static final Map<String, Vector3> POSITIONS = positions();
  private static final HeadForm FORM = fitted();

  private static Map<String, Vector3> positions() {
    Map<String, Vector3> positions = new HashMap<>();
    for (Map<String, String> row : Csv.rows("/reference/head/eeg_standard_1005_mm.csv")) {
      positions.put(
          row.get("label"),
          new Vector3(
              Double.parseDouble(row.get("x_right_mm")),
              Double.parseDouble(row.get("y_anterior_mm")),
              Double.parseDouble(row.get("z_superior_mm"))));
    }
    return positions;
  }

  private static HeadForm fitted() {
    Vector3 centre = new Vector3(0, -15, 5);
    List<HeadFit.Reading> readings = new ArrayList<>();
    for (Vector3 p : POSITIONS.values()) {
      Vector3 d = p.minus(centre);
      readings.add(new HeadFit.Reading(d, d.norm(), 1));
    }
    return HeadForm.of(HeadFit.fit(centre, 6, readings), new Vector3(1, 1, 1));
  }

  private static Vector3 at(String label) {
    return POSITIONS.get(label);
  }

  /** The cut of the plane through three points, from the first over the second to the third. */
  private static Polyline cut(Vector3 from, Vector3 over, Vector3 to) {
    Vector3 inside = from.lerp(to, 0.5);
    Vector3 first = from.minus(inside).unit();
    Vector3 normal = first.cross(over.minus(inside)).unit();
    Vector3 up = normal.cross(first);
    List<Vector3> points = new ArrayList<>();
    for (int i = 0; i <= 2000; i++) {
      double t = Math.PI * i / 2000;
      points.add(FORM.exit(inside, first.times(Math.cos(t)).plus(up.times(Math.sin(t)))));
    }
    return Polyline.of(points);
  }

  private static double percent(Polyline line, String label) {
    return 100 * line.nearestArc(at(label)) / line.length();
  }

  @Test
  void allPositionsAreRead() {
    assertTrue(POSITIONS.size() >= 342, POSITIONS.size() + " positions");
    assertEquals(0, FORM.surfacePoint(at("Cz")).distance(at("Cz")), 1.0);
  }

  @Test
  void midLineAndCoronalPointsLieAtTheirShares() {
    Vector3 ears = at("LPA").lerp(at("RPA"), 0.5);
    Polyline mid = cut(at("Nz"), ears.plus(new Vector3(0, 0, 100)), at("Iz"));
    Map<String, Double> along = Map.of("Fpz", 10.0, "Fz", 30.0, "Cz", 50.0, "Pz", 70.0, "Oz", 90.0);
    along.forEach((label, share) -> assertEquals(share, percent(mid, label), 0.5, label));
    Vector3 vertex = mid.at(mid.length() / 2);
    Polyline coronal = cut(at("LPA"), vertex, at("RPA"));
    Map<String, Double> across = Map.of("T7", 10.0, "C3", 30.0, "Cz", 50.0, "C4", 70.0, "T8", 90.0);
    across.forEach((label, share) -> assertEquals(share, percent(coronal, label), 0.5, label));
  }

  @Test
  void ringPointsLieAtTheirShares() {
    Vector3 ears = at("LPA").lerp(at("RPA"), 0.5);
    Polyline mid = cut(at("Nz"), ears.plus(new Vector3(0, 0, 100)), at("Iz"));
    Polyline coronal = cut(at("LPA"), mid.at(mid.length() / 2), at("RPA"));
    Vector3 front = mid.at(0.1 * mid.length());
    Vector3 back = mid.at(0.9 * mid.length());
    Polyline left = cut(front, coronal.at(0.1 * coronal.length()), back);
    Polyline right = cut(front, coronal.at(0.9 * coronal.length()), back);
    Map.of("Fp1", 10.0, "F7", 30.0, "T7", 50.0, "P7", 70.0, "O1", 90.0)
        .forEach((label, share) -> assertEquals(share, percent(left, label), 0.5, label));
    Map.of("Fp2", 10.0, "F8", 30.0, "T8", 50.0, "P8", 70.0, "O2", 90.0)
        .forEach((label, share) -> assertEquals(share, percent(right, label), 0.5, label));
  }
}
