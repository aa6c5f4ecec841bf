package foilwright.sheet;

import foilwright.service.MixSettings;
import foilwright.service.mix.FoilSheets;
import foilwright.service.mix.MixPlan;
import foilwright.service.mix.TonerMix;
import foilwright.units.Minutes;
import java.time.LocalTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What the mix sheet shows. The plan's moments are in minutes from the first parting.
 *
 * @param plan bowls of every slot
 * @param settings by which it was weighed
 * @param toner empty when nothing is toned
 * @param sheets foil to cut; empty when the house named no foil
 * @param missing what nothing on file answers, each in a few words; the makers' sheets of the
 *     products need not be among it, the mix sheet looks for them itself
 * @param beforeFirstParting from the start of the visit to the first parting, 0 or more
 * @param start when the visit starts; without it the sheet counts from 0:00
 */
public record MixCard(
    MixPlan plan,
    MixSettings settings,
    Optional<TonerMix> toner,
    Optional<FoilSheets> sheets,
    List<String> missing,
    Minutes beforeFirstParting,
    Optional<LocalTime> start) {
  public MixCard {
    Objects.requireNonNull(plan);
    Objects.requireNonNull(settings);
    Objects.requireNonNull(toner);
    Objects.requireNonNull(sheets);
    Objects.requireNonNull(start);
    missing = List.copyOf(missing);
    if (beforeFirstParting.compareTo(Minutes.ZERO) < 0) {
      throw new IllegalArgumentException(
          "the first parting cannot lie " + beforeFirstParting + " after the visit's start");
    }
  }
}
