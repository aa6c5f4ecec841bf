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
  OVERLAP("overlap"),
  NUMBER("number"),
  LANDMARK("landmark"),
  TAPE_LINE("tape-line"),
  PROBLEM("problem"),
  NOTE("note"),
  PICTURE("picture"),
  HEADING("heading"),
  LEGEND("legend"),
  TIME_AXIS("time-axis"),
  HANDS("hands"),
  WINDOW("window"),
  BOWL("bowl"),
  DUE("due"),
  NOW_LINE("now-line"),
  TO_FILL_IN("to-fill-in"),
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
