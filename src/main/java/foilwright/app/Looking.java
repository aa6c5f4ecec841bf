package foilwright.app;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.fall.Body;
import foilwright.fall.Fall;
import foilwright.fall.FallSettings;
import foilwright.fall.HairStyle;
import foilwright.fall.Strands;
import foilwright.fall.Watch;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.hair.Level;
import foilwright.hair.Texture;
import foilwright.head.Head;
import foilwright.head.PartSetting;
import foilwright.look.Advice;
import foilwright.look.Dye;
import foilwright.look.HairColours;
import foilwright.look.Look;
import foilwright.look.LookFigures;
import foilwright.look.LookSettings;
import foilwright.look.LookSide;
import foilwright.look.Studio;
import foilwright.look.Tone;
import foilwright.pattern.MixSlot;
import foilwright.placement.PlacedFoil;
import foilwright.service.ThreePoint;
import foilwright.service.visit.Growth;
import foilwright.units.Length;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Shows what will be seen of a plan: the hair as it falls, before, after, and later. */
public final class Looking {
  /** Growth of a month, the mean for anybody of whom nothing is known. */
  static final Length GROWTH_OF_MONTH = Growth.USUAL.mean();

  /** The level that is drawn when the guest's is not known. */
  static final Level USUAL_LEVEL = new Level(5);

  /** Mean length from which hair reaches a tie at the crown: from the nape that is about so far. */
  private static final Length LEAST_TIED = Length.ofMillimetres(180);

  private static final List<LookSide> LESS = List.of(LookSide.FRONT, LookSide.BACK, LookSide.TOP);

  private final Plan plan;
  private final LookRequest request;
  private final Telling telling;
  private final HairOnHead hair;
  private final Body body;
  private final Texture texture;
  private final FallSettings fall;
  private final LookSettings settings;

  private Looking(Plan plan, LookRequest request, Consumer<String> progress) {
    this.plan = plan;
    this.request = request;
    telling = new Telling(progress, request.months() > 0);
    progress.accept("measuring the hair");
    hair = HairOnHead.of(plan.head(), plan.guest().hair());
    body = Body.of(plan.head());
    texture = plan.guest().hair().texture();
    fall = FallSettings.USUAL.withHairs(request.hairs()).withStyle(request.style());
    settings = LookSettings.of(colours(plan, request.tone())).withHeight(request.heightPx());
  }

  /** Tells each step of the work as it begins, and each tenth of all of it as it is done. */
  private static final class Telling {
    /** What letting hair fall takes, beside a look from one side. */
    private static final double FALL = 2;

    private static final int TENTHS = 10;

    private final Consumer<String> progress;
    private final double all;
    private String step = "";
    private double before;
    private int tenths;

    Telling(Consumer<String> progress, boolean later) {
      this.progress = progress;
      int sides = LookSide.values().length;
      all = 3 * FALL + 2 * sides + LESS.size() + sides + (later ? FALL + LESS.size() : 0);
    }

    void begins(String words) {
      step = words;
      progress.accept(words);
    }

    Watch fall() {
      return part(FALL);
    }

    Watch look(LookSettings shown) {
      return part(shown.sides().size());
    }

    private Watch part(double size) {
      double from = before;
      before += size;
      return share -> {
        told((int) (TENTHS * (from + size * share) / all));
        return true;
      };
    }

    private synchronized void told(int done) {
      if (done > tenths && done < TENTHS) {
        tenths = done;
        progress.accept(step + ", " + 100 / TENTHS * done + " % of the whole look");
      }
    }
  }

  /**
   * Plans a pattern and looks at it.
   *
   * @param progress is told each step as it begins, and after each tenth how much is done
   */
  public static LookOutcome look(
      Workspace workspace, LookRequest request, Consumer<String> progress) {
    PlanOutcome outcome = Planning.plan(workspace, request.plan(), progress);
    return new LookOutcome(
        outcome.plan().map(plan -> at(plan, request, progress)),
        outcome.problems(),
        outcome.unreachable());
  }

  /** Looks at a plan. */
  public static LookedPlan at(Plan plan, LookRequest request, Consumer<String> progress) {
    return new Looking(plan, request, progress).run();
  }

  private LookedPlan run() {
    telling.begins("letting the hair fall");
    Strands worn = Fall.of(hair, body, fall, texture, telling.fall());
    telling.begins("looking at it");
    Studio studio = Studio.of(worn, settings.heightPx());
    LookedPlan.Seen after = seen(worn, dyed(worn, Length.ZERO), studio, settings);
    LookedPlan.Seen before = seen(worn, Dye.before(worn.roots(), Length.ZERO), studio, settings);

    telling.begins("moving the part");
    LookSettings less = settings.withSides(LESS);
    PartSide other = otherSide(plan.head().part().side());
    Head combed = plan.head().withPart(new PartSetting(other, plan.head().part().fromCentre()));
    LookedPlan.Seen flipped = fallen(hair.worn(combed), fall, Length.ZERO, less);

    telling.begins("tying it up");
    LookedPlan.Seen up = fallen(hair, fall.withStyle(HairStyle.TIED_UP), Length.ZERO, settings);

    Length grown = GROWTH_OF_MONTH.times(request.months());
    Optional<LookedPlan.Seen> later = Optional.empty();
    if (request.months() > 0) {
      telling.begins("letting it grow");
      later = Optional.of(fallen(hair, fall.withGrown(grown), grown, less));
    }
    ToDoubleFunction<PlacedFoil> minutes = foil -> minutes(plan, foil);
    List<Advice> advice =
        Advice.from(
            after.figures(),
            Optional.of(up.figures()).filter(tied -> canBeTied(hair)),
            Optional.of(flipped.figures()),
            later.map(then -> new Advice.Later(then.figures(), request.months(), growth(request))),
            minutes);
    return new LookedPlan(
        plan,
        request,
        after,
        before,
        flipped,
        other,
        up,
        later,
        advice,
        Advice.ranked(after.figures(), minutes));
  }

  /**
   * What the figures of looks at one plan say.
   *
   * @param now as the hair is worn after the visit
   * @param later the same after some months, if it was looked at
   * @param months until then
   */
  public static List<Advice> advice(
      Plan plan, LookFigures now, Optional<LookFigures> later, double months) {
    return Advice.from(
        now,
        Optional.empty(),
        Optional.empty(),
        later.map(then -> new Advice.Later(then, months, Growth.USUAL.over(months).words())),
        foil -> minutes(plan, foil));
  }

  private LookedPlan.Seen fallen(
      HairOnHead on, FallSettings how, Length grown, LookSettings shown) {
    Strands strands = Fall.of(on, body, how, texture, telling.fall());
    return seen(strands, dyed(strands, grown), Studio.of(strands, shown.heightPx()), shown);
  }

  private LookedPlan.Seen seen(Strands strands, Dye dye, Studio studio, LookSettings shown) {
    return LookedPlan.Seen.of(Look.at(strands, dye, studio, shown, telling.look(shown)));
  }

  private Dye dyed(Strands strands, Length grown) {
    return Dye.after(strands.roots(), plan.placement(), plan.head(), plan.pattern(), grown);
  }

  /**
   * Which colours a guest's hair has and gets, zone by zone: from the level that grows there to
   * what the lift towards the wish reaches with each slot's product, and a usual lift without a
   * wish.
   */
  static HairColours colours(Plan plan, Tone tone) {
    HairProfile profile = plan.guest().hair();
    Function<Zone, Level> natural = zone -> profile.natureIn(zone).level().orElse(USUAL_LEVEL);
    Set<MixSlot> lightening = plan.house().placing().lightening();
    return HairColours.of(
        natural,
        (slot, zone) ->
            lightening.contains(slot)
                ? Optional.ofNullable(plan.house().products().get(slot.name()))
                    .flatMap(product -> plan.lift().expected(natural.apply(zone), product))
                    .orElse(HairColours.lifted(natural.apply(zone), HairColours.USUAL_LIFT))
                : HairColours.deepened(natural.apply(zone)),
        lightening,
        tone);
  }

  /** Whether hair is long enough that anybody would tie it up. */
  private static boolean canBeTied(HairOnHead hair) {
    return hair.meanLength(hair.head().scalp()).compareTo(LEAST_TIED) >= 0;
  }

  /** What grows until the later pictures, such as {@code 32 mm (24 to 39)}. */
  static String growth(LookRequest request) {
    return Growth.USUAL.over(request.months()).words();
  }

  /** Where the part goes when it is combed to the other side. */
  static PartSide otherSide(PartSide side) {
    return switch (side) {
      case LEFT -> PartSide.RIGHT;
      case RIGHT, CENTRE -> PartSide.LEFT;
      case NONE -> PartSide.CENTRE;
    };
  }

  private static double minutes(Plan plan, PlacedFoil foil) {
    ThreePoint time = plan.house().pace().placing(foil);
    return Math.max(0.01, time.mean().toMinutes());
  }
}
