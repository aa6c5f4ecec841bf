package foilwright.service;

import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.placement.Placement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * One foil's turn: setting its section, if it is the section's first, and placing it.
 *
 * @param section the section's place among the placement's sections
 * @param setting none but before the first foil of a section
 */
public record PlacingStep(PlacedFoil foil, int section, ThreePoint setting, ThreePoint placing) {

  /** All foils in working order. */
  public static List<PlacingStep> of(Placement placement, PaceProfile pace) {
    Map<Integer, Integer> sectionOf = new HashMap<>();
    for (int s = 0; s < placement.sections().size(); s++) {
      PlacedSection section = placement.sections().get(s);
      for (PlacedFoil foil : section.foils()) {
        sectionOf.put(foil.number(), s);
      }
    }
    boolean[] set = new boolean[placement.sections().size()];
    List<PlacingStep> steps = new ArrayList<>();
    for (PlacedFoil foil : placement.foils()) {
      int section = sectionOf.get(foil.number());
      ThreePoint setting = set[section] ? ThreePoint.NONE : pace.of(PaceEntry.SET_SECTION);
      set[section] = true;
      steps.add(new PlacingStep(foil, section, setting, pace.placing(foil, steps.size() + 1)));
    }
    return steps;
  }

  /** The independent times of one step. */
  public List<ThreePoint> times() {
    return List.of(setting, placing);
  }
}
