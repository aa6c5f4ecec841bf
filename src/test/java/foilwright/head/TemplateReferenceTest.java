package foilwright.head;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.StarSurface;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

/** Against the measured radii of a template head; source in every row of the table. */
class TemplateReferenceTest {
  private static final List<Map<String, String>> ROWS =
      Csv.rows("/reference/head/template_radii.csv");

  /** Weights: scalp 1, face from ear height up 1, other face 0.3, neck 0.02, times solid angle. */
  private static HeadFit.Reading reading(Map<String, String> row) {
    double azimuth = Math.toRadians(number(row, "azimuth_deg"));
    double elevation = Math.toRadians(number(row, "elevation_deg"));
    Vector3 direction =
        new Vector3(
            Math.sin(azimuth) * Math.cos(elevation),
            Math.cos(azimuth) * Math.cos(elevation),
            Math.sin(elevation));
    double weight =
        switch (row.get("part")) {
          case "scalp" -> 1;
          case "face" -> elevation >= 0 ? 1 : 0.3;
          case "neck" -> 0.02;
          default -> throw new IllegalArgumentException(row.get("part"));
        };
    return new HeadFit.Reading(
        direction, number(row, "radius_mm"), weight * solidAngle(azimuth, elevation));
  }

  /** Of the row's cell on one half of the head, steradian. */
  private static double solidAngle(double azimuth, double elevation) {
    double half = Math.toRadians(2.5);
    if (elevation > Math.toRadians(89)) {
      return Math.PI * (1 - Math.cos(half));
    }
    boolean midLine = azimuth < 1e-9 || azimuth > Math.PI - 1e-9;
    return Math.toRadians(midLine ? 5 : 10)
        * (Math.sin(elevation + half) - Math.sin(elevation - half));
  }

  private static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }

  private static double rootMeanSquare(StarSurface surface, Predicate<Map<String, String>> which) {
    double sum = 0;
    double weights = 0;
    for (Map<String, String> row : ROWS) {
      if (which.test(row)) {
        HeadFit.Reading reading = reading(row);
        double off = surface.radius(reading.direction()) - reading.radiusMm();
        sum += reading.weight() * off * off;
        weights += reading.weight();
      }
    }
    return Math.sqrt(sum / weights);
  }

  @Test
  void shippedCoefficientsAreTheOutputOfTheFit() {
    StarSurface fitted =
        HeadFit.fit(
            new Vector3(0, 10, 25), 6, ROWS.stream().map(TemplateReferenceTest::reading).toList());
    assertArrayEquals(fitted.coefficients(), Template.SURFACE.coefficients(), 1e-9);
  }

  @Test
  void scalpIsMetWithinAboutHalfAMillimetre() {
    double scalp = rootMeanSquare(Template.SURFACE, row -> row.get("part").equals("scalp"));
    assertEquals(0.54, scalp, 0.01);
  }

  @Test
  void foreheadIsMetWithinAMillimetreAndAHalf() {
    double forehead =
        rootMeanSquare(
            Template.SURFACE,
            row -> row.get("part").equals("face") && number(row, "elevation_deg") >= 0);
    assertEquals(1.31, forehead, 0.01);
  }

  @Test
  void aFitOfRadiiOfASeriesReturnsTheSeries() {
    List<HeadFit.Reading> exact =
        ROWS.stream()
            .map(TemplateReferenceTest::reading)
            .map(
                r ->
                    new HeadFit.Reading(
                        r.direction(), Template.SURFACE.radius(r.direction()), r.weight()))
            .toList();
    assertArrayEquals(
        Template.SURFACE.coefficients(),
        HeadFit.fit(Template.SURFACE.centre(), 6, exact).coefficients(),
        1e-9);
  }
}
