package foilwright.app;

/** What a handle on the head changes. */
public enum HandleKind {
  /** From the edge where a section's travel begins to its first slice. */
  START,
  /** Thickness of the first slice. */
  SLICE,
  /** Width of the first background; of a wedge at its wide end. */
  BACKGROUND,
  /** Angle of the partings from level. */
  ANGLE,
  /** How far level or upright partings are turned, counter-clockwise as the viewer sees it. */
  TURNED,
  /** From the hairline to where the section begins. */
  INSET,
  /** What is kept at the hairline inside the section. */
  COVER_AT_HAIRLINE,
  /** What is kept at the part inside the section. */
  COVER_AT_PART,
  /** From the centre line to the part line: to the client's right counts up, to the left down. */
  PART_LINE;

  /** Whether its value is an angle in degrees; else it is a length in millimetres. */
  public boolean isAngle() {
    return this == ANGLE || this == TURNED;
  }
}
