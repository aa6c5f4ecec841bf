package foilwright.placement;

import foilwright.geometry.Polyline;
import foilwright.geometry.surface.Region;
import foilwright.pattern.FoilPlace;
import foilwright.units.Area;
import foilwright.units.Share;
import java.util.List;

/**
 * One section of the pattern as it lies on this head; a mirrored section gives two, left and right
 * apart.
 *
 * @param index the section's place in the pattern, from 0
 * @param name the section's name
 * @param shape the section's shape in trade words
 * @param region what the section may use
 * @param foils the section's foils in working order
 * @param partings both edges of each slice that holds a foil or could not, in the order of travel
 * @param remainders parts of slices that no foil holds, among them foils that are left out
 * @param backgrounds the background between slices, and any cover asked for, in the order of travel
 * @param untouched what is left of the region before the first and after the last slice
 * @param figures sums over the section
 * @param remainderWords what was left at the end and how it was dealt with
 * @param leftOut foils that the pattern leaves out here, in working order
 */
public record PlacedSection(
    int index,
    String name,
    String shape,
    Region region,
    List<PlacedFoil> foils,
    List<Polyline> partings,
    List<Region> remainders,
    List<Region> backgrounds,
    Region untouched,
    Figures figures,
    String remainderWords,
    List<FoilPlace> leftOut) {

  /**
   * Sums over a section.
   *
   * @param area scalp area of the region
   * @param hairs hairs that root in it
   * @param pickedHairs hairs that the picks take
   * @param lightenedShare picked hairs of slots that lighten over all hairs of the region
   */
  public record Figures(Area area, double hairs, double pickedHairs, Share lightenedShare) {}

  public PlacedSection {
    foils = List.copyOf(foils);
    partings = List.copyOf(partings);
    remainders = List.copyOf(remainders);
    backgrounds = List.copyOf(backgrounds);
    leftOut = List.copyOf(leftOut);
  }

  /** The same section with its foils under other numbers or mixes, in working order. */
  PlacedSection withFoils(List<PlacedFoil> others) {
    return new PlacedSection(
        index,
        name,
        shape,
        region,
        others,
        partings,
        remainders,
        backgrounds,
        untouched,
        figures,
        remainderWords,
        leftOut);
  }
}
