package foilwright.service;

import foilwright.placement.Placement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How long one person takes from the first parting to the last foil: setting every section, placing
 * every foil.
 *
 * @param pace whose
 * @param foils time of each foil, in working order
 * @param sections time of each section with its setting, in the order of the placement's sections
 * @param total everything
 */
public record PlacingTime(
    PaceProfile pace, List<ThreePoint> foils, List<TimeEstimate> sections, TimeEstimate total) {
  public PlacingTime {
    foils = List.copyOf(foils);
    sections = List.copyOf(sections);
  }

  public static PlacingTime of(Placement placement, PaceProfile pace) {
    List<PlacingStep> steps = PlacingStep.of(placement, pace);
    return new PlacingTime(
        pace,
        steps.stream().map(PlacingStep::placing).toList(),
        IntStream.range(0, placement.sections().size())
            .mapToObj(s -> sum(steps.stream().filter(step -> step.section() == s).toList(), pace))
            .toList(),
        sum(steps, pace));
  }

  private static TimeEstimate sum(List<PlacingStep> steps, PaceProfile pace) {
    List<ThreePoint> parts = new ArrayList<>();
    steps.forEach(step -> parts.addAll(step.times()));
    return TimeEstimate.ofSum(parts, List.of(), pace.daySpread());
  }
}
