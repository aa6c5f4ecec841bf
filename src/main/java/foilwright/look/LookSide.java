package foilwright.look;

/**
 * A side from which the hair is looked at, without perspective. From above the face is up and the
 * client's right is on the right.
 */
public enum LookSide {
  FRONT("front", 0, -1, 2, 1, 1, 1),
  BACK("back", 0, 1, 2, 1, 1, -1),
  LEFT("left", 1, -1, 2, 1, 0, -1),
  RIGHT("right", 1, 1, 2, 1, 0, 1),
  TOP("top", 0, 1, 1, 1, 2, 1);

  private final String words;

  /** The head's axis that runs across the picture, up it and towards the viewer, and which way. */
  private final int acrossAxis;

  private final int acrossSign;
  private final int upAxis;
  private final int upSign;
  private final int nearAxis;
  private final int nearSign;

  LookSide(
      String words,
      int acrossAxis,
      int acrossSign,
      int upAxis,
      int upSign,
      int nearAxis,
      int nearSign) {
    this.words = words;
    this.acrossAxis = acrossAxis;
    this.acrossSign = acrossSign;
    this.upAxis = upAxis;
    this.upSign = upSign;
    this.nearAxis = nearAxis;
    this.nearSign = nearSign;
  }

  /** The word used on sheets. */
  public String words() {
    return words;
  }

  int acrossAxis() {
    return acrossAxis;
  }

  int upAxis() {
    return upAxis;
  }

  int nearAxis() {
    return nearAxis;
  }

  int acrossSign() {
    return acrossSign;
  }

  int nearSign() {
    return nearSign;
  }

  /** Rightwards in the picture. */
  double across(double x, double y, double z) {
    return acrossSign * (acrossAxis == 0 ? x : y);
  }

  /** Upwards in the picture. */
  double up(double x, double y, double z) {
    return upSign * (upAxis == 1 ? y : z);
  }

  /** Towards the viewer. */
  double near(double x, double y, double z) {
    return nearSign * (nearAxis == 0 ? x : nearAxis == 1 ? y : z);
  }
}
