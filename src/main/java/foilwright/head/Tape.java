package foilwright.head;

import foilwright.units.Length;
import java.util.Optional;

/** The five tape measurements, by name. */
public enum Tape {
  AROUND("around", "around", 300, 800),
  FRONT_TO_BACK("frontToBack", "over the top, front to back", 150, 600),
  EAR_TO_EAR("earToEar", "ear to ear", 150, 600),
  FRONT_HAIRLINE_HEIGHT("frontHairlineHeight", "front hairline height", 10, 150),
  NAPE_DEPTH("napeDepth", "nape depth", 5, 200);

  private final String key;
  private final String words;
  private final double leastMm;
  private final double mostMm;

  Tape(String key, String words, double leastMm, double mostMm) {
    this.key = key;
    this.words = words;
    this.leastMm = leastMm;
    this.mostMm = mostMm;
  }

  /** The name of the component of {@link TapeMeasurements}. */
  public String key() {
    return key;
  }

  /** The words used on sheets. */
  public String words() {
    return words;
  }

  /** Less than any head measures; a smaller value is a slip of the pen. */
  public Length least() {
    return Length.ofMillimetres(leastMm);
  }

  /** More than any head measures; a larger value is a slip of the pen. */
  public Length most() {
    return Length.ofMillimetres(mostMm);
  }

  /** This tape's value in a set of measurements. */
  public Optional<Length> in(TapeMeasurements measurements) {
    return switch (this) {
      case AROUND -> measurements.around();
      case FRONT_TO_BACK -> measurements.frontToBack();
      case EAR_TO_EAR -> measurements.earToEar();
      case FRONT_HAIRLINE_HEIGHT -> measurements.frontHairlineHeight();
      case NAPE_DEPTH -> measurements.napeDepth();
    };
  }

  TapeMeasurements with(TapeMeasurements measurements, double mm) {
    Length value = Length.ofMillimetres(mm);
    return switch (this) {
      case AROUND -> measurements.withAround(value);
      case FRONT_TO_BACK -> measurements.withFrontToBack(value);
      case EAR_TO_EAR -> measurements.withEarToEar(value);
      case FRONT_HAIRLINE_HEIGHT -> measurements.withFrontHairlineHeight(value);
      case NAPE_DEPTH -> measurements.withNapeDepth(value);
    };
  }

  TapeMeasurements without(TapeMeasurements m) {
    Optional<Length> none = Optional.empty();
    return switch (this) {
      case AROUND ->
          new TapeMeasurements(
              none, m.frontToBack(), m.earToEar(), m.frontHairlineHeight(), m.napeDepth());
      case FRONT_TO_BACK ->
          new TapeMeasurements(
              m.around(), none, m.earToEar(), m.frontHairlineHeight(), m.napeDepth());
      case EAR_TO_EAR ->
          new TapeMeasurements(
              m.around(), m.frontToBack(), none, m.frontHairlineHeight(), m.napeDepth());
      case FRONT_HAIRLINE_HEIGHT ->
          new TapeMeasurements(m.around(), m.frontToBack(), m.earToEar(), none, m.napeDepth());
      case NAPE_DEPTH ->
          new TapeMeasurements(
              m.around(), m.frontToBack(), m.earToEar(), m.frontHairlineHeight(), none);
    };
  }
}
