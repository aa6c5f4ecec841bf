package foilwright.drawing;

/** What a mark stands for. */
public enum Role {
  FRAME("frame"),
  OUTLINE("outline"),
  FEATURE("feature"),
  SCALP("scalp"),
  HAIRLINE("hairline"),
  ZONE_BORDER("zone-border"),
  PART_LINE("part-line"),
  BACKGROUND("background"),
  PARTING("parting"),
  FOIL("foil"),
  NUMBER("number"),
  LANDMARK("landmark"),
  TAPE_LINE("tape-line"),
  PROBLEM("problem"),
  NOTE("note"),
  HEADING("heading"),
  LEGEND("legend"),
  SCALE_BOX("scale-box");

  private final String word;

  Role(String word) {
    this.word = word;
  }

  /** The word written into files, lower case with hyphens. */
  public String word() {
    return word;
  }
}
