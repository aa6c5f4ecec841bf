package foilwright.app;

import foilwright.document.HouseDocument;
import foilwright.fall.Body;
import foilwright.fall.Fall;
import foilwright.fall.FallSettings;
import foilwright.fall.Strands;
import foilwright.fall.Watch;
import foilwright.hair.HairOnHead;
import foilwright.hair.Level;
import foilwright.look.Advice;
import foilwright.look.Dye;
import foilwright.look.HairColours;
import foilwright.look.Look;
import foilwright.look.LookFigures;
import foilwright.look.LookSettings;
import foilwright.look.Studio;
import foilwright.look.Tone;
import foilwright.pattern.MixSlot;
import foilwright.pattern.Pattern;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.placement.Thinning;
import foilwright.service.LiftAdvice;
import foilwright.service.mix.FoilSheets;
import foilwright.service.mix.TonerMix;
import foilwright.service.schedule.Cure;
import foilwright.service.schedule.OrderSearch;
import foilwright.service.schedule.Removal;
import foilwright.service.visit.Price;
import foilwright.service.visit.Visit;
import foilwright.service.visit.VisitPlanner;
import foilwright.service.visit.VisitTerms;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** One guest's head in one house, on which patterns are laid and put on the clocks. */
final class Workbench {
  /** Enough for an order; a foil of 200 hairs is followed by about 30. */
  private static final int HAIRS_FOR_RANKING = 15_000;

  private final FittedHeads heads;
  private final HouseDocument room;
  private final PlannedHouse with;
  private final HairOnHead hair;
  private final Optional<Level> wish;
  private final Working working;
  private final boolean clocked;
  private final Length meanLength;

  Workbench(
      FittedHeads heads,
      HouseDocument room,
      PlannedHouse with,
      HairOnHead hair,
      Optional<Level> wish,
      Working working,
      boolean clocked) {
    this.heads = heads;
    this.room = room;
    this.with = with;
    this.hair = hair;
    this.wish = wish;
    this.working = working;
    this.clocked = clocked;
    this.meanLength = hair.meanLength(hair.head().scalp());
  }

  /**
   * A pattern laid on the head.
   *
   * @param times absent when none are wanted, a mix slot has no product or there is no foil
   * @param order what a search for a better order found, when one was asked for
   */
  record Laid(
      Pattern pattern,
      Placement placement,
      LiftAdvice lift,
      Optional<PlannedTimes> times,
      Optional<OrderSearch.Result> order) {
    boolean keeps(Limits limits) {
      return limits.mostFoils().map(most -> placement.foils().size() <= most).orElse(true)
          && limits
              .within()
              .map(time -> times.map(t -> t.within(time)).orElse(placement.foils().isEmpty()))
              .orElse(true);
    }
  }

  Length meanLength() {
    return meanLength;
  }

  HairOnHead hair() {
    return hair;
  }

  Set<MixSlot> lightening() {
    return with.placing().lightening();
  }

  Laid lay(Pattern pattern) {
    Placer.Laid laid =
        Placer.place(
            pattern, hair, with.placing(), heads.fall(pattern, hair), heads.laid(hair, pattern));
    heads.keep(hair, pattern, laid);
    Placement placement = laid.placement();
    boolean filled =
        placement.foils().stream().allMatch(foil -> with.products().containsKey(foil.mix()));
    if (!clocked || placement.foils().isEmpty() || !filled) {
      return new Laid(pattern, placement, lift(placement), Optional.empty(), Optional.empty());
    }
    if (working.aims().isEmpty()) {
      return timed(pattern, placement);
    }
    OrderSearch.Result order = WorkingOrders.search(placement, terms(placement), working.aims());
    Placement improved =
        placement.inOrder(order.order().stream().map(item -> item.foil().number()).toList());
    Laid timed = timed(pattern, improved);
    return new Laid(pattern, timed.placement(), timed.lift(), timed.times(), Optional.of(order));
  }

  private LiftAdvice lift(Placement placement) {
    return LiftAdvice.of(placement, hair.hair(), wish, with.products(), room.lift());
  }

  private VisitTerms terms(Placement placement) {
    return new VisitTerms(
        with.pace(),
        with.products(),
        room.mixing(),
        lift(placement),
        meanLength,
        hair.hair().density());
  }

  private Laid timed(Pattern pattern, Placement placement) {
    return switch (working.wayOut()) {
      case BEST -> oneVisit(pattern, placement, Optional.empty());
      case TOGETHER -> oneVisit(pattern, placement, Optional.of(Removal.TOGETHER));
      case IN_ORDER -> oneVisit(pattern, placement, Optional.of(Removal.IN_PLACING_ORDER));
      case WHILE_PLACING -> oneVisit(pattern, placement, Optional.of(Removal.WHILE_PLACING));
      case WAVES -> oneVisit(pattern, placement, Optional.of(Removal.IN_WAVES));
      case TWO_MIXES -> twoMixes(pattern, placement);
      case TWO_VISITS -> twoVisits(pattern, placement);
    };
  }

  private VisitPlanner.Outcome outcome(Placement placement, Optional<Removal> removal) {
    return VisitPlanner.plan(placement, terms(placement), removal, working.hands());
  }

  private Laid oneVisit(Pattern pattern, Placement placement, Optional<Removal> removal) {
    VisitPlanner.Outcome outcome = outcome(placement, removal);
    return laid(pattern, placement, outcome, outcome.visit().stream().toList());
  }

  /** The fewest of the first foils get the weaker mix, so that all can go straight in. */
  private Laid twoMixes(Pattern pattern, Placement placement) {
    VisitPlanner.Outcome plain = outcome(placement, Optional.of(Removal.IN_PLACING_ORDER));
    Optional<String> weaker = VisitPlanner.weaker(placement, terms(placement));
    if (plain.visit().isPresent() || weaker.isEmpty()) {
      return laid(pattern, placement, plain, plain.visit().stream().toList());
    }
    Map<Integer, String> mixes = new HashMap<>();
    for (PlacedFoil foil : placement.foils()) {
      if (with.lightens(foil.mix())) {
        mixes.put(foil.number(), weaker.get());
        Placement mixed = placement.withMixes(mixes);
        VisitPlanner.Outcome outcome = outcome(mixed, Optional.of(Removal.IN_PLACING_ORDER));
        if (outcome.visit().isPresent()) {
          return laid(pattern, mixed, outcome, outcome.visit().stream().toList());
        }
      }
    }
    return laid(pattern, placement, plain, List.of());
  }

  /** Shared so that the longer day is as short as can be; by halves where one day would do. */
  private Laid twoVisits(Pattern pattern, Placement placement) {
    VisitPlanner.Outcome whole = outcome(placement, Optional.empty());
    List<PlacedFoil> foils = placement.foils();
    int first =
        whole.cures().stream()
            .filter(cure -> cure instanceof Cure.TwoVisits && cure.works())
            .map(cure -> ((Cure.TwoVisits) cure).visits().get(0).foils().size())
            .findFirst()
            .orElse((foils.size() + 1) / 2);
    List<Visit> visits = new ArrayList<>();
    for (List<PlacedFoil> day :
        List.of(foils.subList(0, first), foils.subList(first, foils.size()))) {
      Set<Integer> numbers = new HashSet<>();
      day.forEach(foil -> numbers.add(foil.number()));
      if (!numbers.isEmpty()) {
        outcome(placement.keeping(numbers), Optional.empty()).visit().ifPresent(visits::add);
      }
    }
    return laid(pattern, placement, whole, visits);
  }

  private Laid laid(
      Pattern pattern, Placement placement, VisitPlanner.Outcome outcome, List<Visit> visits) {
    return new Laid(
        pattern,
        placement,
        lift(placement),
        Optional.of(
            new PlannedTimes(
                visits,
                visits.isEmpty() ? outcome.failed() : Optional.empty(),
                outcome.straight(),
                outcome.cures(),
                FoilSheets.of(placement.foils(), room.foils()),
                visits.stream().flatMap(v -> toner(v).stream()).toList(),
                visits.stream().map(this::price).toList())),
        Optional.empty());
  }

  private Optional<TonerMix> toner(Visit visit) {
    Mass lightened =
        visit.foils().stream()
            .filter(foil -> with.lightens(foil.mix()))
            .map(PlacedFoil::hair)
            .reduce(Mass.ZERO, Mass::plus);
    return room.toners().stream()
        .findFirst()
        .filter(toner -> lightened.compareTo(Mass.ZERO) > 0)
        .map(toner -> TonerMix.of(toner, lightened, room.mixing()));
  }

  private Price price(Visit visit) {
    return Price.of(
        room.prices(),
        visit.foils().size(),
        Minutes.ofMinutes(Math.rint(visit.chair().p50().toMinutes())),
        Minutes.ofMinutes(Math.ceil(visit.chair().p90().toMinutes())),
        visit.mix().bowls().size(),
        !room.toners().isEmpty());
  }

  /**
   * Gives up foils, least seen first, until what is left keeps within the limits; the fewest that
   * do.
   *
   * @param whole the pattern laid whole
   * @return empty when even a single foil does not keep within them
   */
  Optional<Trim> trim(Laid whole, Limits limits) {
    int all = whole.placement().foils().size();
    if (whole.keeps(limits)) {
      return Optional.of(new Trim(whole, new Trimmed(limits, all, List.of(), whole.pattern())));
    }
    List<Thinning.Choice> order = Thinning.rank(whole.placement(), seen(whole));
    int fails = 0;
    int keeps = all;
    Optional<Laid> best = Optional.empty();
    while (keeps - fails > 1) {
      int given = (fails + keeps) / 2;
      Laid laid = without(whole, order.subList(0, given));
      if (laid.keeps(limits)) {
        keeps = given;
        best = Optional.of(laid);
      } else {
        fails = given;
      }
    }
    List<Thinning.Choice> givenUp = order.subList(0, keeps);
    return best.map(laid -> new Trim(laid, new Trimmed(limits, all, givenUp, laid.pattern())));
  }

  /** How much of each foil's colour some side sees as this hair falls with this part. */
  private Function<PlacedFoil, Thinning.Seen> seen(Laid whole) {
    Strands strands =
        Fall.of(
            hair,
            Body.of(hair.head()),
            FallSettings.USUAL.withHairs(HAIRS_FOR_RANKING),
            hair.hair().texture(),
            Watch.NOBODY);
    Level level = hair.hair().nature().level().orElse(Looking.USUAL_LEVEL);
    LookSettings settings = LookSettings.of(HairColours.usual(level, lightening(), Tone.NEUTRAL));
    Dye dye =
        Dye.after(strands.roots(), whole.placement(), hair.head(), whole.pattern(), Length.ZERO);
    Look look =
        Look.at(strands, dye, Studio.of(strands, settings.heightPx()), settings, Watch.NOBODY);
    return Advice.seen(LookFigures.of(look));
  }

  /** A pattern that keeps within limits, and what that took. */
  record Trim(Laid laid, Trimmed trimmed) {}

  private Laid without(Laid whole, List<Thinning.Choice> givenUp) {
    return lay(
        Thinning.leaveOut(whole.pattern(), givenUp.stream().map(Thinning.Choice::foil).toList()));
  }
}
