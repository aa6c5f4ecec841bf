package foilwright.app;

import foilwright.pattern.Extent;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.problem.Problem;
import foilwright.service.schedule.Cure;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Which problems of a plan the program can cure by itself, by their codes. */
public final class Remedies {
  private static final Pattern PLACE =
      Pattern.compile("sections\\[(\\d{1,4})\\](?:.*\\.picks\\[(\\d{1,4})\\])?.*");

  private Remedies() {}

  /** What cures a problem, each on its own; empty when that needs judgement. */
  public static List<Remedy> of(Plan plan, Problem problem) {
    if (problem.code().equals(OverTimeWords.FAILED)) {
      return plan.times().map(times -> waysOut(times.told())).orElse(List.of());
    }
    Matcher place = PLACE.matcher(problem.path());
    if (!place.matches()) {
      return List.of();
    }
    int index = Integer.parseInt(place.group(1));
    Section section = plan.pattern().sections().get(index);
    String name = section.name();
    return switch (problem.code()) {
      case "count-does-not-fit" -> List.of(new Remedy.FillToTheEnd(index, name));
      case "foil-too-narrow" -> List.of(new Remedy.DivideEvenly(index, name));
      case "brick-lay-without-rows" ->
          List.of(new Remedy.DivideEvenly(index, name), new Remedy.DoNotShiftRows(index, name));
      case "depth-beyond-slice" ->
          thinnest(section.fill().slice()).stream()
              .map(
                  slice ->
                      (Remedy)
                          new Remedy.SetPickDepth(
                              index, name, Integer.parseInt(place.group(2)), slice))
              .toList();
      default -> List.of();
    };
  }

  private static List<Remedy> waysOut(List<Cure> cures) {
    List<Remedy> remedies = new ArrayList<>();
    for (Cure cure : cures) {
      way(cure).map(Remedy.TakeOut::new).ifPresent(remedies::add);
    }
    return remedies;
  }

  /** Fewer foils, faster hands and another pair are for a person to find. */
  private static Optional<WayOut> way(Cure cure) {
    if (cure instanceof Cure.InWaves) {
      return Optional.of(WayOut.WAVES);
    } else if (cure instanceof Cure.OutWhilePlacing) {
      return Optional.of(WayOut.WHILE_PLACING);
    } else if (cure instanceof Cure.WeakerMixFirst) {
      return Optional.of(WayOut.TWO_MIXES);
    } else if (cure instanceof Cure.TwoVisits) {
      return Optional.of(WayOut.TWO_VISITS);
    }
    return Optional.empty();
  }

  private static Optional<Length> thinnest(Run slice) {
    if (slice.first() instanceof Extent.Absolute first
        && slice.last() instanceof Extent.Absolute last) {
      return Optional.of(
          first.length().compareTo(last.length()) <= 0 ? first.length() : last.length());
    }
    return Optional.empty();
  }
}
