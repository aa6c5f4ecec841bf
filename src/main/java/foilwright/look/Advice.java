package foilwright.look;

import foilwright.placement.PlacedFoil;
import foilwright.placement.Thinning;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

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

  /** So deep, about what grows in six weeks, dark at the root is noticed: this program's choice. */
  private static final double NOTICED_MM = 15;

  /** A share of the hair seen that a person would notice. */
  private static final double MOVED = 0.008;

  static final int MOST = 6;

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
   * The same hair grown out.
   *
   * @param months since the visit
   * @param growth what grows until then, as a range in words
   */
  public record Later(LookFigures figures, double months, String growth) {}

  /**
   * Advice from looks at one plan, at most {@value #MOST}, what can be acted on first.
   *
   * @param down as the hair is worn
   * @param up the same tied up, if it was looked at
   * @param flipped the same with the part on the other side, if it was looked at
   * @param later the same after some growth, if it was looked at
   * @param minutes of placing a foil
   */
  public static List<Advice> from(
      LookFigures down,
      Optional<LookFigures> up,
      Optional<LookFigures> flipped,
      Optional<Later> later,
      ToDoubleFunction<PlacedFoil> minutes) {
    List<Advice> advice = new ArrayList<>();
    buried(down, up, minutes).ifPresent(advice::add);
    frontAndBack(down).ifPresent(advice::add);
    reads(down).ifPresent(advice::add);
    later.flatMap(l -> growth(down, l)).ifPresent(advice::add);
    flipped.flatMap(f -> flipped(down, f)).ifPresent(advice::add);
    balance(down).ifPresent(advice::add);
    worth(down, minutes).ifPresent(advice::add);
    return advice.subList(0, Math.min(MOST, advice.size()));
  }

  private static Optional<Advice> buried(
      LookFigures down, Optional<LookFigures> up, ToDoubleFunction<PlacedFoil> minutes) {
    double usual = down.hairSeen().toFraction();
    List<FoilSeen> hidden =
        down.foils().stream().filter(f -> f.seen().toFraction() < BURIED * usual).toList();
    if (hidden.isEmpty()) {
      return Optional.empty();
    }
    Map<String, List<Integer>> sections = new LinkedHashMap<>();
    hidden.forEach(
        f ->
            sections
                .computeIfAbsent(f.foil().section(), s -> new ArrayList<>())
                .add(f.foil().number()));
    String which =
        sections.entrySet().stream()
            .map(e -> numbers(e.getValue()) + " (" + e.getKey() + ")")
            .collect(Collectors.joining(", "));
    List<Integer> numbers = hidden.stream().map(f -> f.foil().number()).toList();
    String them = numbers.size() == 1 ? "it" : "them";
    String worn =
        up.map(
                u ->
                    mean(
                        u.foils().stream()
                            .filter(f -> numbers.contains(f.foil().number()))
                            .toList()))
            .map(
                shown ->
                    shown > 1.5 * mean(hidden)
                        ? format(
                            "Tied up it is %s: keep %s for that, or leave %s out",
                            percent(shown), them, them)
                        : format("Tied up it is no more: leave %s out", them))
            .orElse(format("Leave %s out", them));
    double time = hidden.stream().mapToDouble(f -> minutes.applyAsDouble(f.foil())).sum();
    return Optional.of(
        new Advice(
            format(
                "%s%s hardly %s: %s of the colour comes to light, where %s of all hair does. %s and"
                    + " save about %.0f min.",
                which.substring(0, 1).toUpperCase(Locale.ROOT),
                which.substring(1),
                numbers.size() == 1 ? "shows" : "show",
                percent(mean(hidden)),
                percent(usual),
                worn,
                Math.max(1, time)),
            numbers));
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

  private static Optional<Advice> frontAndBack(LookFigures down) {
    SideFigures front = down.sides().get(LookSide.FRONT);
    SideFigures back = down.sides().get(LookSide.BACK);
    double picked = down.picked().toFraction();
    if (front == null || back == null || !(picked > 0)) {
      return Optional.empty();
    }
    double f = front.visible().toFraction();
    double b = back.visible().toFraction();
    String so =
        b > LOPSIDED * f
            ? "Foils at the hairline or along the part bring it forward."
            : f > LOPSIDED * b
                ? "Foils over the crown carry it round."
                : "Front and back belong together.";
    return Optional.of(
        new Advice(
            format(
                "The front shows %s light, the back %s, with %s of all hair lightened. %s",
                percent(f), percent(b), percent(picked), so),
            List.of()));
  }

  private static Optional<Advice> reads(LookFigures down) {
    List<String> sides = new ArrayList<>();
    for (LookSide side : List.of(LookSide.FRONT, LookSide.BACK)) {
      SideFigures f = down.sides().get(side);
      if (f != null && f.visible().toFraction() > 0) {
        sides.add(
            format(
                "%s, %s light, %s",
                side == LookSide.FRONT ? "from the front" : "at the back",
                percent(f.visible().toFraction()),
                f.reading()));
      }
    }
    return sides.isEmpty()
        ? Optional.empty()
        : Optional.of(new Advice("It reads " + String.join("; ", sides) + ".", List.of()));
  }

  private static Optional<Advice> growth(LookFigures down, Later later) {
    SideFigures now = down.sides().get(LookSide.BACK);
    SideFigures then = later.figures().sides().get(LookSide.BACK);
    SideFigures frontNow = down.sides().get(LookSide.FRONT);
    SideFigures frontThen = later.figures().sides().get(LookSide.FRONT);
    if (now == null || then == null || frontNow == null || frontThen == null) {
      return Optional.empty();
    }
    if (now.visible().toFraction() == 0 && frontNow.visible().toFraction() == 0) {
      return Optional.empty();
    }
    double back = then.shelf().toMillimetres();
    double front = frontThen.shelf().toMillimetres();
    boolean line =
        isLine(frontNow.shelf().toMillimetres(), front)
            || isLine(now.shelf().toMillimetres(), back);
    String months =
        format(later.months() == Math.rint(later.months()) ? "%.0f" : "%.1f", later.months());
    return Optional.of(
        new Advice(
            format(
                "%s %s, %s new at the root: dark above the light %.0f mm deep in front and %.0f mm"
                    + " at the back, today %.0f and %.0f mm. %s",
                months,
                later.months() == 1 ? "month on" : "months on",
                later.growth(),
                front,
                back,
                frontNow.shelf().toMillimetres(),
                now.shelf().toMillimetres(),
                line
                    ? "Regrowth will be noticed; blur the root or book before then."
                    : "It grows out without a line."),
            List.of()));
  }

  /** Whether dark above the light has become both deeper and deep enough to be seen as a line. */
  private static boolean isLine(double nowMm, double thenMm) {
    return thenMm - nowMm > WORTH_SAYING_MM && thenMm > NOTICED_MM;
  }

  private static Optional<Advice> flipped(LookFigures down, LookFigures flipped) {
    double now = down.sides().get(LookSide.FRONT).visible().toFraction();
    double then = flipped.sides().get(LookSide.FRONT).visible().toFraction();
    if (Math.abs(then - now) < MOVED || Math.max(then, now) < LOPSIDED * Math.min(then, now)) {
      return Optional.empty();
    }
    return Optional.of(
        new Advice(
            format(
                "Parted on the other side the front shows %s instead of %s: %s.",
                percent(then),
                percent(now),
                then > now
                    ? "show the guest both"
                    : "the look hangs on this part, so ask how it is worn"),
            List.of()));
  }

  private static Optional<Advice> balance(LookFigures down) {
    for (LookSide side : List.of(LookSide.FRONT, LookSide.BACK)) {
      SideFigures f = down.sides().get(side);
      if (f == null) {
        continue;
      }
      double left = f.left().toFraction();
      double right = f.right().toFraction();
      double least = Math.min(left, right);
      double most = Math.max(left, right);
      if (most > LOPSIDED * least && most - least > MOVED) {
        return Optional.of(
            new Advice(
                format(
                    "From the %s the client's %s half shows %s and the %s %s: move a foil across,"
                        + " or mean it.",
                    side.words(),
                    left > right ? "left" : "right",
                    percent(most),
                    left > right ? "right" : "left",
                    percent(least)),
                List.of()));
      }
    }
    return Optional.empty();
  }

  private static Optional<Advice> worth(LookFigures down, ToDoubleFunction<PlacedFoil> minutes) {
    List<Worth> ranked = ranked(down, minutes);
    if (ranked.size() < 2) {
      return Optional.empty();
    }
    Worth best = ranked.get(0);
    Worth last = ranked.get(ranked.size() - 1);
    return Optional.of(
        new Advice(
            format(
                "Short of time, begin with foil %d, which brings %.1f cm2 of colour to light for a"
                    + " minute of placing; foil %d brings least, %.1f cm2.",
                best.seen().foil().number(),
                best.shownCm2PerMinute(),
                last.seen().foil().number(),
                last.shownCm2PerMinute()),
            List.of(best.seen().foil().number(), last.seen().foil().number())));
  }

  /** Such as {@code foil 3} or {@code foils 1-4, 7}. */
  private static String numbers(List<Integer> numbers) {
    StringBuilder text = new StringBuilder(numbers.size() == 1 ? "foil " : "foils ");
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
