package foilwright.look;

/**
 * Which part of space a picture shows, and how large.
 *
 * @param leftMm what lies at the left edge, millimetres rightwards from the head's origin
 * @param topMm what lies at the top edge, millimetres upwards
 * @param pixelsPerMm of the finished picture
 */
record Window(
    LookSide side, double leftMm, double topMm, double pixelsPerMm, int width, int height) {
  static Window of(
      LookSide side, double leftMm, double rightMm, double bottomMm, double topMm, double scale) {
    return new Window(
        side,
        leftMm,
        topMm,
        scale,
        (int) Math.ceil((rightMm - leftMm) * scale),
        (int) Math.ceil((topMm - bottomMm) * scale));
  }
}
