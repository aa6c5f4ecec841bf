package foilwright.drawing;

import foilwright.geometry.Vector3;

/**
 * A side from which a head is drawn, as a person standing there sees it, without perspective. From
 * above the face is up and the client's right is on the right, as seen from behind the chair.
 */
@SuppressWarnings("ImmutableEnumChecker") // a vector is a record of three numbers
public enum View {
  FRONT("front", Vector3.FRONT, Vector3.UP),
  BACK("back", Vector3.FRONT.negated(), Vector3.UP),
  LEFT("left", Vector3.RIGHT.negated(), Vector3.UP),
  RIGHT("right", Vector3.RIGHT, Vector3.UP),
  TOP("top", Vector3.UP, Vector3.FRONT);

  private final String words;
  private final Vector3 toViewer;
  private final Vector3 up;

  View(String words, Vector3 toViewer, Vector3 up) {
    this.words = words;
    this.toViewer = toViewer;
    this.up = up;
  }

  public String words() {
    return words;
  }

  /** Unit direction from the head to the viewer, head frame. */
  public Vector3 toViewer() {
    return toViewer;
  }

  /** Unit direction that points up on the sheet, head frame. */
  public Vector3 up() {
    return up;
  }

  /** Unit direction that points to the right on the sheet, head frame. */
  public Vector3 rightward() {
    return up.cross(toViewer);
  }

  /** Where a point of the head appears, millimetres of the head from its origin, +y down. */
  public Point project(Vector3 p) {
    return new Point(p.dot(rightward()), -p.dot(up));
  }
}
