package foilwright.look;

import foilwright.placement.PlacedFoil;
import foilwright.placement.Thinning;
import foilwright.units.Length;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * What the figures of a look say to the person who holds the comb.
 *
 * @param text in trade words, with the numbers that led to it
 * @param foils numbers of the foils it speaks of; none when it speaks of the whole
 */
public record Advice(String text, List<Integer> foils) {
  /** A foil is buried when less than this share of what is usual of all hair is seen of it. */
  private static final double BURIED = 0.25;

  /** Sides differ when one shows this much more than the other. */
  private static final double LOPSIDED = 1.3;

  private static final double WORTH_SAYING_MM = 5;

  public Advice {
    Objects.requireNonNull(text);
    foils = List.copyOf(foils);
  }

  /**
   * What one foil shows for the time it takes.
   *
   * @param shownCm2PerMinute area of its coloured hair that is seen, over minutes of placing
   */
  public record Worth(FoilSeen seen, double shownCm2PerMinute) {}

  /** All foils, the one that shows most for its time first. */
  public static List<Worth> ranked(LookFigures figures, ToDoubleFunction<PlacedFoil> minutes) {
    List<Worth> worths = new ArrayList<>();
    for (FoilSeen seen : figures.foils()) {
      double m = minutes.applyAsDouble(seen.foil());
      if (!(m > 0)) {
        throw new IllegalArgumentException(
            "foil " + seen.foil().number() + " takes " + m + " minutes");
      }
      worths.add(new Worth(seen, seen.shown().toSquareCentimetres() / m));
    }
    worths.sort(
        Comparator.comparingDouble(Worth::shownCm2PerMinute)
            .reversed()
            .thenComparing(w -> w.seen().foil().number()));
    return worths;
  }

  /**
   * How much of each foil is seen, for {@link Thinning#rank(foilwright.placement.Placement,
   * Function)}: its share against that of all hair, at most 1.
   */
  public static Function<PlacedFoil, Thinning.Seen> seen(LookFigures figures) {
    Map<Integer, FoilSeen> byNumber = new HashMap<>();
    figures.foils().forEach(f -> byNumber.put(f.foil().number(), f));
    double usual = Math.max(1e-9, figures.hairSeen().toFraction());
    return foil -> {
      double share = byNumber.get(foil.number()).seen().toFraction();
      return new Thinning.Seen(
          Share.ofFraction(Math.min(1, share / usual)),
          format(
              "shows %s of its colour where all hair shows %s", // as this hair falls
              percent(share), percent(usual)));
    };
  }

  /**
   * Advice from looks at one plan.
   *
   * @param down as the hair is worn
   * @param up the same tied up, if it was looked at
   * @param later the same after some growth, if it was looked at
   * @param grown what grows until then
   * @param minutes of placing a foil
   */
  public static List<Advice> from(
      LookFigures down,
      Optional<LookFigures> up,
      Optional<LookFigures> later,
      Length grown,
      ToDoubleFunction<PlacedFoil> minutes) {
    List<Advice> advice = new ArrayList<>();
    shares(down, advice);
    buried(down, up, advice);
    later.ifPresent(l -> growth(down, l, grown, advice));
    balance(down, advice);
    worth(down, minutes, advice);
    return advice;
  }

  private static void shares(LookFigures down, List<Advice> advice) {
    SideFigures front = down.sides().get(LookSide.FRONT);
    SideFigures back = down.sides().get(LookSide.BACK);
    if (front != null && back != null) {
      advice.add(
          new Advice(
              format(
                  "%s of the hair is lightened; %s of what is seen from the front is, %s beside the"
                      + " face and %s at the back.",
                  percent(down.picked().toFraction()),
                  percent(front.visible().toFraction()),
                  percent(down.faceFrame().visible().toFraction()),
                  percent(back.visible().toFraction())),
              List.of()));
    }
  }

  private static void buried(LookFigures down, Optional<LookFigures> up, List<Advice> advice) {
    double usual = down.hairSeen().toFraction();
    List<FoilSeen> group = new ArrayList<>();
    for (FoilSeen seen : down.foils()) {
      boolean hidden = seen.seen().toFraction() < BURIED * usual;
      boolean joins =
          !group.isEmpty() && group.get(0).foil().section().equals(seen.foil().section()) && hidden;
      if (!joins && !group.isEmpty()) {
        advice.add(buried(group, usual, up));
        group.clear();
      }
      if (hidden) {
        group.add(seen);
      }
    }
    if (!group.isEmpty()) {
      advice.add(buried(group, usual, up));
    }
  }

  private static Advice buried(List<FoilSeen> group, double usual, Optional<LookFigures> up) {
    List<Integer> numbers = group.stream().map(s -> s.foil().number()).toList();
    String worn =
        up.map(
                u ->
                    format(
                        ", %s tied up",
                        percent(
                            mean(
                                u.foils().stream()
                                    .filter(s -> numbers.contains(s.foil().number()))
                                    .toList()))))
            .orElse("");
    return new Advice(
        format(
            "%s (%s) %s buried: %s of the colour is seen as the hair falls%s; of all hair %s is"
                + " seen.",
            numbers(numbers),
            group.get(0).foil().section(),
            numbers.size() == 1 ? "lies" : "lie",
            percent(mean(group)),
            worn,
            percent(usual)),
        numbers);
  }

  private static double mean(List<FoilSeen> group) {
    double all = 0;
    double seen = 0;
    for (FoilSeen s : group) {
      all += s.coloured().toMillimetres();
      seen += s.coloured().toMillimetres() * s.seen().toFraction();
    }
    return all > 0 ? seen / all : 0;
  }

  private static void growth(
      LookFigures down, LookFigures later, Length grown, List<Advice> advice) {
    for (LookSide side : List.of(LookSide.FRONT, LookSide.BACK)) {
      SideFigures now = down.sides().get(side);
      SideFigures then = later.sides().get(side);
      if (now == null || then == null || then.ribbons() == 0) {
        continue;
      }
      double deeper = then.shelf().toMillimetres() - now.shelf().toMillimetres();
      String shelf =
          deeper > WORTH_SAYING_MM
              ? format(
                  "leaves a darker shelf of %.0f mm where it was %.0f mm",
                  then.shelf().toMillimetres(), now.shelf().toMillimetres())
              : format("leaves no shelf (%.0f mm more)", Math.max(0, deeper));
      advice.add(
          new Advice(
              format(
                  "From the %s, %.0f mm of growth %s; ribbons stand off by %.1f instead of %.1f.",
                  side.words(), grown.toMillimetres(), shelf, then.contrast(), now.contrast()),
              List.of()));
    }
  }

  private static void balance(LookFigures down, List<Advice> advice) {
    for (LookSide side : List.of(LookSide.FRONT, LookSide.BACK)) {
      SideFigures f = down.sides().get(side);
      if (f == null) {
        continue;
      }
      double left = f.left().toFraction();
      double right = f.right().toFraction();
      double least = Math.min(left, right);
      if (Math.max(left, right) > LOPSIDED * least && Math.max(left, right) > 0.01) {
        advice.add(
            new Advice(
                format(
                    "From the %s the client's %s half shows %s, the %s %s.",
                    side.words(),
                    left > right ? "left" : "right",
                    percent(Math.max(left, right)),
                    left > right ? "right" : "left",
                    percent(least)),
                List.of()));
      }
    }
  }

  private static void worth(
      LookFigures down, ToDoubleFunction<PlacedFoil> minutes, List<Advice> advice) {
    List<Worth> ranked = ranked(down, minutes);
    if (ranked.size() >= 2) {
      Worth best = ranked.get(0);
      Worth last = ranked.get(ranked.size() - 1);
      advice.add(
          new Advice(
              format(
                  "Foil %d shows most for its time, %.1f cm2 of colour for a minute of placing;"
                      + " foil %d least, %.1f cm2.",
                  best.seen().foil().number(),
                  best.shownCm2PerMinute(),
                  last.seen().foil().number(),
                  last.shownCm2PerMinute()),
              List.of(best.seen().foil().number(), last.seen().foil().number())));
    }
  }

  /** Such as {@code Foil 3} or {@code Foils 1-4, 7}. */
  private static String numbers(List<Integer> numbers) {
    StringBuilder text = new StringBuilder(numbers.size() == 1 ? "Foil " : "Foils ");
    for (int i = 0; i < numbers.size(); i++) {
      int from = numbers.get(i);
      int to = from;
      while (i + 1 < numbers.size() && numbers.get(i + 1) == to + 1) {
        to = numbers.get(++i);
      }
      text.append(i > 0 && from != numbers.get(0) ? ", " : "").append(from);
      if (to > from) {
        text.append(to > from + 1 ? "-" : ", ").append(to);
      }
    }
    return text.toString();
  }

  private static String percent(double fraction) {
    return format("%.1f %%", 100 * fraction);
  }

  private static String format(String text, Object... values) {
    return String.format(Locale.ROOT, text, values);
  }
}
