package foilwright.service.visit;

import foilwright.geometry.surface.Region;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import foilwright.service.visit.Growth.Grown;
import foilwright.units.Share;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What has grown out since the last visit, and which new foils lie over old ones.
 *
 * @param last date of the last visit
 * @param visit date of this one, not before the last
 * @param growth how fast this hair grows
 */
public record Regrowth(LocalDate last, LocalDate visit, Growth growth) {
  /** A foil that lies over an old one by less than this is out of a hand's reach to tell. */
  public static final Share LEAST_SHARE = Share.ofPercent(5);

  /** More cautions than this are told section by section, more sections than this all in one. */
  private static final int MOST_SENTENCES = 4;

  /**
   * Part of a new foil that lies over an old one.
   *
   * @param old foil of the last visit
   * @param share of the new foil's scalp area
   */
  public record Over(PlacedFoil old, Share share) {}

  /**
   * A new foil that lies over old ones.
   *
   * @param share of its scalp area over old foils, at least {@link #LEAST_SHARE}
   * @param over the old foils, largest share first
   * @param oldLightener where along the hair from the scalp old lightener begins, if the hair there
   *     was lightened and is long enough to still carry it
   */
  public record Overlap(
      PlacedFoil foil, Share share, List<Over> over, Optional<Grown> oldLightener) {
    public Overlap {
      over = List.copyOf(over);
    }
  }

  /**
   * @param overlaps in working order of the new foils
   * @param problems cautions for lightener over old lightener
   */
  public record Overlaps(List<Overlap> overlaps, List<Problem> problems) {
    public Overlaps {
      overlaps = List.copyOf(overlaps);
      problems = List.copyOf(problems);
    }
  }

  public Regrowth {
    if (visit.isBefore(last)) {
      throw new IllegalArgumentException(
          "the last visit on " + last + " lies after this one on " + visit);
    }
  }

  /** Months since the last visit, exact in days. */
  public double months() {
    return Growth.months(last, visit);
  }

  /** What has grown out since the last visit. */
  public Grown grown() {
    return growth.over(months());
  }

  /**
   * Which foils of this visit lie over foils of the last one; areas are exact.
   *
   * @param before the foils of the last visit
   * @param lightenedBefore mix slots that lightened then
   * @param now the foils of this visit, on the same head with the same part
   * @param lightensNow mix slots that lighten now
   * @throws IllegalArgumentException when the two lie on different heads
   */
  public Overlaps overlaps(
      Placement before, Set<String> lightenedBefore, Placement now, Set<String> lightensNow) {
    List<BitSet> beneath = before.foils().stream().map(f -> triangles(f.region())).toList();
    List<Overlap> overlaps = new ArrayList<>();
    for (PlacedFoil foil : now.foils()) {
      BitSet touched = triangles(foil.region());
      List<Over> over = new ArrayList<>();
      for (int i = 0; i < before.foils().size(); i++) {
        PlacedFoil old = before.foils().get(i);
        if (!old.region().mesh().equals(foil.region().mesh())) {
          throw new IllegalArgumentException("old and new foils lie on different heads");
        }
        if (touched.intersects(beneath.get(i))) {
          double area = foil.region().intersect(old.region()).area();
          if (area > 0) {
            over.add(new Over(old, Share.ofFraction(area / foil.region().area())));
          }
        }
      }
      double share = Math.min(1, over.stream().mapToDouble(o -> o.share().toFraction()).sum());
      if (share >= LEAST_SHARE.toFraction()) {
        over.sort((a, b) -> b.share().compareTo(a.share()));
        Optional<Grown> begins = oldLightener(foil, over, lightenedBefore);
        overlaps.add(new Overlap(foil, Share.ofFraction(share), over, begins));
      }
    }
    return new Overlaps(overlaps, cautions(overlaps, lightensNow));
  }

  private static BitSet triangles(Region region) {
    BitSet touched = new BitSet();
    for (int f = 0; f < region.fragmentCount(); f++) {
      touched.set(region.triangle(f));
    }
    return touched;
  }

  /** The nearest to the scalp of all the old foils' beginnings. */
  private Optional<Grown> oldLightener(PlacedFoil foil, List<Over> over, Set<String> lightened) {
    return over.stream()
        .map(Over::old)
        .filter(old -> lightened.contains(old.mix()))
        .map(old -> grown().plus(old.startFromScalp()))
        .min((a, b) -> a.mean().compareTo(b.mean()))
        .filter(begins -> begins.least().compareTo(foil.hairLength()) < 0);
  }

  private static List<Problem> cautions(List<Overlap> overlaps, Set<String> lightensNow) {
    List<Overlap> carried =
        overlaps.stream()
            .filter(o -> o.oldLightener().isPresent() && lightensNow.contains(o.foil().mix()))
            .toList();
    if (carried.size() <= MOST_SENTENCES) {
      return carried.stream().map(o -> caution(List.of(o))).toList();
    }
    Map<String, List<Overlap>> bySection = new LinkedHashMap<>();
    for (Overlap overlap : carried) {
      bySection.computeIfAbsent(overlap.foil().section(), s -> new ArrayList<>()).add(overlap);
    }
    return bySection.size() <= MOST_SENTENCES
        ? bySection.values().stream().map(Regrowth::caution).toList()
        : List.of(caution(carried));
  }

  private static Problem caution(List<Overlap> group) {
    TreeSet<Integer> foils = new TreeSet<>();
    TreeSet<Integer> olds = new TreeSet<>();
    Overlap most = group.get(0);
    Share least = most.share();
    Grown begins = most.oldLightener().orElseThrow();
    for (Overlap overlap : group) {
      foils.add(overlap.foil().number());
      olds.addAll(told(overlap));
      least = overlap.share().compareTo(least) < 0 ? overlap.share() : least;
      most = overlap.share().compareTo(most.share()) > 0 ? overlap : most;
      Grown own = overlap.oldLightener().orElseThrow();
      begins = own.mean().compareTo(begins.mean()) < 0 ? own : begins;
    }
    String shares =
        percent(least).equals(percent(most.share()))
            ? percent(least)
            : percent(least) + " to " + percent(most.share());
    return Problem.warning(
            "old-lightener",
            "",
            (foils.size() == 1 ? "foil " : "foils ")
                + numbers(foils)
                + (foils.size() == 1 ? " lies " : " lie ")
                + shares
                + " % over old "
                + (olds.size() == 1 ? "foil " : "foils ")
                + numbers(olds)
                + "; old lightener begins "
                + begins.words()
                + " from the scalp",
            "keep new product off it: on the regrowth alone, or on hair that was left out last"
                + " time")
        .at(most.foil().centre());
  }

  /** Old foils with a share that a hand can tell, or else the one with the largest. */
  private static List<Integer> told(Overlap overlap) {
    List<Over> over = overlap.over();
    long enough = over.stream().filter(o -> o.share().compareTo(LEAST_SHARE) >= 0).count();
    return over.stream().limit(Math.max(1, enough)).map(o -> o.old().number()).toList();
  }

  private static String percent(Share share) {
    return String.format(Locale.ROOT, "%.0f", share.toPercent());
  }

  /** Runs of three and more are drawn together: {@code 1, 2, 5 to 9}. */
  private static String numbers(Set<Integer> sorted) {
    List<Integer> all = List.copyOf(sorted);
    List<String> parts = new ArrayList<>();
    for (int i = 0; i < all.size(); ) {
      int j = i;
      while (j + 1 < all.size() && all.get(j + 1) == all.get(j) + 1) {
        j++;
      }
      if (j - i >= 2) {
        parts.add(all.get(i) + " to " + all.get(j));
        i = j + 1;
      } else {
        parts.add(Integer.toString(all.get(i)));
        i++;
      }
    }
    return String.join(", ", parts);
  }
}
