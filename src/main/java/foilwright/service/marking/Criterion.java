package foilwright.service.marking;

import foilwright.service.Tolerances;

/** What is measured on practice work. */
public enum Criterion {
  STRAIGHT("straight", "parting straight", "mm"),
  SLICE("slice", "slice", "mm"),
  BACKGROUND("background", "background", "mm"),
  ANGLE("angle", "angle", "deg"),
  FOILS_BETWEEN_SIDES("sides", "foils left and right", "foils");

  private final String key;
  private final String words;
  private final String unit;

  Criterion(String key, String words, String unit) {
    this.key = key;
    this.words = words;
    this.unit = unit;
  }

  /** The word for it in documents and on the command line. */
  public String key() {
    return key;
  }

  public String words() {
    return words;
  }

  /** The unit of every number that goes with it. */
  public String unit() {
    return unit;
  }

  /** What passes either way, in the unit of this criterion. */
  public double allowed(Tolerances tolerances) {
    return switch (this) {
      case STRAIGHT -> tolerances.partingStraight().toMillimetres();
      case SLICE -> tolerances.slice().toMillimetres();
      case BACKGROUND -> tolerances.background().toMillimetres();
      case ANGLE -> tolerances.angle().toDegrees();
      case FOILS_BETWEEN_SIDES -> tolerances.foilsBetweenSides();
    };
  }
}
