package foilwright.app;

import foilwright.service.LiftAdvice;
import foilwright.service.mix.Bowl;
import foilwright.service.mix.FoilSheets;
import foilwright.service.mix.SlotMix;
import foilwright.service.mix.TonerMix;
import foilwright.service.schedule.Cure;
import foilwright.service.schedule.OrderSearch;
import foilwright.service.schedule.OverTime;
import foilwright.service.visit.Block;
import foilwright.service.visit.Checks;
import foilwright.service.visit.Growth;
import foilwright.service.visit.Price;
import foilwright.service.visit.Rebooking;
import foilwright.service.visit.Regrowth;
import foilwright.service.visit.Visit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Clocks, scale and growth of a plan as parts of its tree. */
final class TimesTree {
  private TimesTree() {}

  static Map<String, Object> of(PlannedTimes times) {
    Group group = new Group();
    Group straight = new Group().put("lastSafeFoil", times.straight().lastSafe());
    times.straight().usual().ifPresent(over -> straight.put("usualDay", over(over)));
    times.straight().slow().ifPresent(over -> straight.put("slowDay", over(over)));
    group.put("straight", straight.members());
    times.failed().ifPresent(over -> group.put("failed", over(over)));
    group.put("cures", times.cures().stream().map(Cure::words).toList());
    List<Object> visits = new ArrayList<>();
    for (int i = 0; i < times.visits().size(); i++) {
      Group visit = visit(times.visits().get(i));
      visit.put("prices", times.prices().get(i).quotes().stream().map(TimesTree::price).toList());
      if (i < times.toner().size()) {
        visit.put("toner", toner(times.toner().get(i)));
      }
      visits.add(visit.members());
    }
    group.put("visits", visits);
    group.put("foilsToCut", times.sheets().counts().stream().map(TimesTree::count).toList());
    return group.members();
  }

  private static Map<String, Object> over(OverTime over) {
    return new Group()
        .put("foilsOver", over.foils())
        .minutes("firstOverMinutes", over.by())
        .minutes("mostOverMinutes", over.most())
        .put("proven", over.proven())
        .members();
  }

  private static Group visit(Visit visit) {
    int first = visit.firstDue();
    Group group =
        new Group()
            .put("foils", visit.foils().size())
            .put("removal", visit.removal().words())
            .put("hands", visit.schedule().hands())
            .minutes("firstPartingMinutes", visit.before())
            .minutes("allInMinutes", visit.sinceStart(visit.schedule().allIn()))
            .minutes("allOutMinutes", visit.sinceStart(visit.schedule().end()))
            .minutes("allOutBoundMinutes", visit.sinceStart(visit.schedule().lowerBound()))
            .put("firstDueFoil", visit.foils().get(first).number())
            .minutes("firstDueMinutes", visit.sinceStart(visit.schedule().outBy(first)))
            .range("foilMinutes", visit.foilTime())
            .range("chairMinutes", visit.chair());
    visit.freeGap().ifPresent(gap -> group.put("freeGap", block(gap)));
    List<Object> phases = new ArrayList<>();
    visit
        .phases()
        .forEach(
            (phase, range) ->
                phases.add(
                    new Group()
                        .put("name", phase.words())
                        .put("hands", phase.hands())
                        .range("minutes", range)
                        .members()));
    group.put("phases", phases);
    group.put("blocks", visit.blocks().stream().map(TimesTree::block).toList());
    List<Object> checks = new ArrayList<>();
    for (Checks.Round round : visit.checks().rounds()) {
      checks.add(
          new Group()
              .minutes("startMinutes", visit.sinceStart(round.start()))
              .minutes("endMinutes", visit.sinceStart(round.end()))
              .put("inPassing", round.inPassing())
              .members());
    }
    group.put("checks", checks);
    Group slots = new Group();
    visit.mix().slots().forEach(slot -> slots.put(slot.slot(), slot(slot)));
    group.put("mix", slots.members());
    group.put("bowls", visit.mix().bowls().stream().map(bowl -> bowl(visit, bowl)).toList());
    return group.put("bowlsOnASlowDay", visit.slowBowls());
  }

  private static Map<String, Object> block(Block block) {
    return new Group()
        .put("name", block.name())
        .put("kind", block.kind().words())
        .minutes("startMinutes", block.start())
        .minutes("endMinutes", block.end())
        .members();
  }

  private static Map<String, Object> slot(SlotMix slot) {
    return new Group()
        .put("product", slot.product().name())
        .put("foils", slot.foils())
        .grams("hairGrams", slot.hair())
        .grams("onFoilsGrams", slot.onFoils())
        .grams("productGrams", slot.productWeight())
        .grams("developerGrams", slot.developerWeight())
        .number("developerVolumes", slot.developer().toVolumes(), 2)
        .share("readyToUseShare", slot.readyToUse())
        .members();
  }

  private static Map<String, Object> bowl(Visit visit, Bowl bowl) {
    return new Group()
        .put("name", bowl.name())
        .put("firstFoil", bowl.firstFoil())
        .put("lastFoil", bowl.foils().get(bowl.foils().size() - 1))
        .put("foils", bowl.foils().size())
        .minutes("mixAtMinutes", visit.sinceStart(bowl.mixedAt()))
        .minutes("goodUntilMinutes", visit.sinceStart(bowl.goodUntil()))
        .grams("productGrams", bowl.product())
        .grams("developerGrams", bowl.developer())
        .members();
  }

  private static Map<String, Object> toner(TonerMix toner) {
    Group shades = new Group();
    toner.shades().forEach(shade -> shades.grams(shade.shade(), shade.weight()));
    return new Group()
        .put("name", toner.toner().name())
        .put("shadesGrams", shades.members())
        .grams("developerGrams", toner.developer())
        .share("developerShare", toner.toner().developerStrength())
        .share("readyToUseShare", toner.readyToUse())
        .minutes("leastMinutes", toner.toner().window().least())
        .minutes("mostMinutes", toner.toner().window().most())
        .members();
  }

  private static Map<String, Object> price(Price.Quote quote) {
    return new Group()
        .put("rule", quote.rule().words())
        .put("currency", quote.currency())
        .put("least", quote.least())
        .put("most", quote.most())
        .put("lines", quote.lines().stream().map(quote::words).toList())
        .members();
  }

  private static Map<String, Object> count(FoilSheets.Count count) {
    return new Group()
        .put("size", count.stock().name())
        .mm("widthMm", count.stock().width())
        .mm("lengthMm", count.stock().length())
        .put("laying", count.laying().words())
        .put("foils", count.foils())
        .put("sheets", count.sheets())
        .members();
  }

  /** One foil's minutes, from the start of its visit. */
  static Map<String, Object> clock(FoilClock clock) {
    return new Group()
        .put("visit", clock.visit())
        .minutes("beginMinutes", clock.begun())
        .minutes("inMinutes", clock.in())
        .minutes("dueFromMinutes", clock.dueFrom())
        .minutes("outByMinutes", clock.outBy())
        .minutes("outMinutes", clock.out())
        .minutes("exposureMinutes", clock.exposure())
        .members();
  }

  static Map<String, Object> lift(LiftAdvice lift) {
    Group group = new Group();
    lift.wish().ifPresent(level -> group.put("wish", level.number()));
    List<Object> zones = new ArrayList<>();
    for (LiftAdvice.ZoneLift zone : lift.zones()) {
      Group one = new Group().put("name", zone.zone().words()).put("foils", zone.foils());
      zone.nature().level().ifPresent(level -> one.put("level", level.number()));
      zone.levels().ifPresent(levels -> one.put("levelsOfLift", levels));
      Group windows = new Group();
      zone.windows()
          .forEach(
              (slot, window) ->
                  windows.put(
                      slot,
                      new Group()
                          .minutes("leastMinutes", window.least())
                          .minutes("mostMinutes", window.most())
                          .members()));
      one.put("windows", windows.members());
      zone.warmth().ifPresent(warmth -> one.put("warmth", warmth));
      zones.add(one.members());
    }
    return group.put("zonesInOrder", zones).members();
  }

  static Map<String, Object> regrowth(PlannedRegrowth planned) {
    Regrowth regrowth = planned.regrowth();
    Growth.Grown grown = regrowth.grown();
    Group group =
        new Group()
            .put("lastVisit", regrowth.last().toString())
            .put("visit", regrowth.visit().toString())
            .number("months", regrowth.months(), 3)
            .mm("grownMm", grown.mean())
            .mm("grownLeastMm", grown.least())
            .mm("grownMostMm", grown.most());
    planned.pattern().ifPresent(name -> group.put("pattern", name));
    List<Object> overlaps = new ArrayList<>();
    for (Regrowth.Overlap overlap : planned.overlaps().overlaps()) {
      overlaps.add(
          new Group()
              .put("foil", overlap.foil().number())
              .share("share", overlap.share())
              .put("oldFoils", overlap.over().stream().map(o -> o.old().number()).toList())
              .members());
    }
    return group.put("overlaps", overlaps).members();
  }

  static Map<String, Object> rebooking(Rebooking rebooking) {
    return new Group()
        .put("from", rebooking.from().toString())
        .put("to", rebooking.to().toString())
        .members();
  }

  static Map<String, Object> order(OrderSearch.Result result) {
    List<Object> reached = new ArrayList<>();
    for (OrderSearch.Reached aim : result.reached()) {
      reached.add(
          new Group()
              .put("aim", aim.aim().words())
              .number("before", aim.before(), 3)
              .number("value", aim.value(), 3)
              .number("lowerBound", aim.lowerBound(), 3)
              .members());
    }
    return new Group()
        .put("aims", reached)
        .put("proven", result.proven())
        .put("ordersTried", result.tried())
        .members();
  }

  static Map<String, Object> trimmed(Trimmed trimmed) {
    Group group = new Group();
    trimmed.limits().within().ifPresent(time -> group.minutes("withinMinutes", time));
    trimmed.limits().mostFoils().ifPresent(most -> group.put("atMostFoils", most));
    return group
        .put("foilsBefore", trimmed.before())
        .put(
            "givenUp",
            trimmed.givenUp().stream()
                .map(
                    choice ->
                        new Group()
                            .put("foil", choice.foil().number())
                            .put("reason", choice.reason())
                            .members())
                .toList())
        .members();
  }
}
