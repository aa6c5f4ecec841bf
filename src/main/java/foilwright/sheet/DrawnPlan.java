package foilwright.sheet;

import foilwright.drawing.SurfaceLoops;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.placement.Placement;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * A placement prepared for drawing: every foil, section and parting with its normals. Made once and
 * used by every sheet of a plan.
 */
public final class DrawnPlan {
  private final DrawnHead head;
  private final Placement placement;
  private final List<String> slots;
  private final List<DrawnFoil> foils;
  private final List<Ground> grounds;

  /**
   * What lies under the foils of a section.
   *
   * @param place of the section in the placement
   * @param partings both edges of each slice
   */
  record Ground(
      int place,
      PlacedSection section,
      SurfaceLoops whole,
      SurfaceLoops untouched,
      List<List<SurfaceLoops.At>> partings) {
    Ground {
      partings = List.copyOf(partings);
    }
  }

  private DrawnPlan(DrawnHead head, Placement placement) {
    this.head = head;
    this.placement = placement;
    slots = List.copyOf(new TreeSet<>(placement.foils().stream().map(PlacedFoil::mix).toList()));
    List<DrawnFoil> drawn = new ArrayList<>();
    for (PlacedFoil foil : placement.foils()) {
      int slot = slots.indexOf(foil.mix());
      String label = foil.number() + (slot > 0 ? foil.mix() : "");
      drawn.add(DrawnFoil.of(foil, head, label, slot));
    }
    foils = List.copyOf(drawn);
    List<Ground> below = new ArrayList<>();
    for (int i = 0; i < placement.sections().size(); i++) {
      PlacedSection section = placement.sections().get(i);
      below.add(
          new Ground(
              i,
              section,
              head.loops(section.region()),
              head.loops(section.untouched()),
              section.partings().stream().map(head::line).toList()));
    }
    grounds = List.copyOf(below);
  }

  /** A placement on a head that is ready for drawing. */
  public static DrawnPlan of(DrawnHead head, Placement placement) {
    return new DrawnPlan(head, placement);
  }

  /** The head it lies on. */
  public DrawnHead head() {
    return head;
  }

  /** What is drawn. */
  public Placement placement() {
    return placement;
  }

  /** Mix slots in use, in the order of the alphabet. */
  List<String> slots() {
    return slots;
  }

  /** In working order: the foil of number n is at index n - 1. */
  List<DrawnFoil> foils() {
    return foils;
  }

  /** In the order of the placement's sections. */
  List<Ground> grounds() {
    return grounds;
  }

  boolean isRooted() {
    return placement.foils().stream().anyMatch(f -> f.startFromScalp().toMillimetres() > 0);
  }
}
