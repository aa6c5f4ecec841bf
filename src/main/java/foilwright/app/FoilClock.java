package foilwright.app;

import foilwright.placement.PlacedFoil;
import foilwright.service.mix.Bowl;
import foilwright.service.mix.FoilMix;
import foilwright.service.schedule.Schedule;
import foilwright.service.visit.Visit;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.util.HashMap;
import java.util.Map;

/**
 * One foil on both clocks and on the scale; minutes from the start of its visit, on a usual day.
 *
 * @param visit 1, or 2 when the foils are shared between two days
 * @param begun when its placing begins
 * @param in when it is in
 * @param dueFrom when it has had its least time
 * @param outBy when it has had its greatest time
 * @param out when it is planned to be out
 * @param mixed what it takes out of the bowl
 * @param bowl the bowl that serves it, such as {@code A2}
 */
public record FoilClock(
    PlacedFoil foil,
    int visit,
    Minutes begun,
    Minutes in,
    Minutes dueFrom,
    Minutes outBy,
    Minutes out,
    Mass mixed,
    String bowl) {

  /** From the end of placing to the end of removal. */
  public Minutes exposure() {
    return out.minus(in);
  }

  /** Every foil of a plan that has times, by its number. */
  public static Map<Integer, FoilClock> byNumber(Plan plan) {
    Map<Integer, FoilClock> clocks = new HashMap<>();
    plan.times()
        .ifPresent(
            times -> {
              for (int v = 0; v < times.visits().size(); v++) {
                add(times.visits().get(v), v + 1, clocks);
              }
            });
    return clocks;
  }

  private static void add(Visit visit, int number, Map<Integer, FoilClock> clocks) {
    Map<Integer, String> bowls = new HashMap<>();
    for (Bowl bowl : visit.mix().bowls()) {
      bowl.foils().forEach(foil -> bowls.put(foil, bowl.name()));
    }
    Map<Integer, Mass> mixed = new HashMap<>();
    for (FoilMix mix : visit.mix().foils()) {
      mixed.put(mix.number(), mix.mixed());
    }
    Schedule schedule = visit.schedule();
    for (int i = 0; i < visit.foils().size(); i++) {
      PlacedFoil foil = visit.foils().get(i);
      Minutes in = visit.sinceStart(schedule.in(i));
      clocks.put(
          foil.number(),
          new FoilClock(
              foil,
              number,
              visit.sinceStart(schedule.begun(i)),
              in,
              in.plus(schedule.foils().get(i).window().least()),
              visit.sinceStart(schedule.outBy(i)),
              visit.sinceStart(schedule.out(i)),
              mixed.get(foil.number()),
              bowls.get(foil.number())));
    }
  }
}
