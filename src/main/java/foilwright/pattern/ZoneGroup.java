package foilwright.pattern;

import foilwright.anatomy.Zone;
import java.util.EnumSet;
import java.util.Set;

/** Words that stand for several zones at once. */
public enum ZoneGroup {
  /** Top left and right, without the fringe. */
  TOP("top"),
  FRONT_SIDES("front sides"),
  BACK_UPPER("back upper"),
  NAPE("nape"),
  /** Everything behind the ear line: crown, back upper and nape. */
  BACK("back"),
  ALL("all");

  private final String words;

  ZoneGroup(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  public Set<Zone> zones() {
    return switch (this) {
      case TOP -> EnumSet.of(Zone.TOP_LEFT, Zone.TOP_RIGHT);
      case FRONT_SIDES -> EnumSet.of(Zone.FRONT_SIDE_LEFT, Zone.FRONT_SIDE_RIGHT);
      case BACK_UPPER -> EnumSet.of(Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT);
      case NAPE -> EnumSet.of(Zone.NAPE_LEFT, Zone.NAPE_RIGHT);
      case BACK ->
          EnumSet.of(
              Zone.CROWN,
              Zone.BACK_UPPER_LEFT,
              Zone.BACK_UPPER_RIGHT,
              Zone.NAPE_LEFT,
              Zone.NAPE_RIGHT);
      case ALL -> EnumSet.allOf(Zone.class);
    };
  }
}
