package foilwright.head;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.geometry.Vector3;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The default woman and man against survey means, in standard deviations: circumference, length and
 * breadth of ANSUR II (2012), ear-to-ear arc of ANSUR I (1988); source in every row of the table.
 */
class DefaultHeadReferenceTest {
  private static final List<Map<String, String>> ROWS =
      Csv.rows("/reference/head/ansur_head_statistics.csv");

  private record Survey(double mean, double deviation) {
    static Survey of(String survey, String sex, String variable) {
      return ROWS.stream()
          .filter(
              row ->
                  row.get("survey").equals(survey)
                      && row.get("sex").equals(sex)
                      && row.get("variable").equals(variable))
          .map(
              row ->
                  new Survey(
                      Double.parseDouble(row.get("mean_mm")), Double.parseDouble(row.get("sd_mm"))))
          .findFirst()
          .orElseThrow();
    }

    double off(double value) {
      return (value - mean) / deviation;
    }
  }

  /** Circumference, length, breadth and arc in standard deviations from the mean. */
  private static double[] off(String sex, Vector3 factors) {
    HeadForm form = HeadForm.of(Template.SURFACE, factors);
    Vector3 back = Tapes.midPoint(form, Tapes.backAngle(form));
    double length = Tapes.midPoint(form, Template.BROW_RAD).distance(back);
    String two = "ANSUR II 2012";
    return new double[] {
      Survey.of(two, sex, "headcircumference").off(Tapes.around(form)),
      Survey.of(two, sex, "headlength").off(length),
      Survey.of(two, sex, "headbreadth").off(breadth(form)),
      Survey.of("ANSUR I 1988", sex, "BITR-CORONAL_ARC").off(Tapes.earToEar(form))
    };
  }

  /** The greatest, above the ears. */
  private static double breadth(HeadForm form) {
    double most = 0;
    for (int azimuth = 60; azimuth <= 130; azimuth++) {
      for (int elevation = -10; elevation <= 40; elevation++) {
        double a = Math.toRadians(azimuth);
        double e = Math.toRadians(elevation);
        Vector3 u = new Vector3(Math.sin(a) * Math.cos(e), Math.cos(a) * Math.cos(e), Math.sin(e));
        most = Math.max(most, form.fromTemplate(u).x());
      }
    }
    return 2 * most;
  }

  private static double worst(double[] off) {
    double worst = 0;
    for (double value : off) {
      worst = Math.max(worst, Math.abs(value));
    }
    return worst;
  }

  @Test
  void theDefaultWomanIsAnAverageWoman() {
    double[] off = off("Female", Template.factors(HeadKind.WOMAN));
    assertEquals(-0.57, off[0], 0.01, "circumference");
    assertEquals(0.58, off[1], 0.01, "length");
    assertEquals(0.58, off[2], 0.01, "breadth");
    assertEquals(0, off[3], 0.1, "ear to ear");
    assertTrue(worst(off) < 0.7);
  }

  @Test
  void theDefaultManIsAnAverageMan() {
    double[] off = off("Male", Template.factors(HeadKind.MAN));
    assertTrue(worst(off) < 0.31, "worst " + worst(off));
    assertEquals(0, off[3], 0.1, "ear to ear");
  }

  @Test
  void noOtherFactorsAgreeBetter() {
    for (HeadKind kind : List.of(HeadKind.WOMAN, HeadKind.MAN)) {
      String sex = kind == HeadKind.WOMAN ? "Female" : "Male";
      Vector3 shipped = Template.factors(kind);
      double best = worst(off(sex, shipped));
      for (int i = -2; i <= 2; i++) {
        for (int j = -2; j <= 2; j++) {
          for (int k = -2; k <= 2; k++) {
            Vector3 other = shipped.plus(new Vector3(i, j, k).times(0.004));
            assertTrue(worst(off(sex, other)) > best - 0.02, kind + " at " + other);
          }
        }
      }
    }
  }

  @Test
  void anEvenlyScaledTemplateWouldBeTooBroad() {
    HeadForm template = HeadForm.of(Template.SURFACE, new Vector3(1, 1, 1));
    double k = 561.12 / Tapes.around(template);
    assertTrue(off("Female", new Vector3(k, k, k))[2] > 1.5);
  }

  @Test
  void childAndTrainingHeadAreSmallerWomen() {
    assertEquals(520, Head.usual(HeadKind.CHILD).around().toMillimetres(), 1);
    assertEquals(540, Head.usual(HeadKind.TRAINING_HEAD).around().toMillimetres(), 1);
  }
}
