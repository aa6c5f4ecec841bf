package foilwright.placement;

import foilwright.geometry.Plane;
import foilwright.geometry.Polyline;
import foilwright.geometry.surface.LinearValues;
import foilwright.geometry.surface.Region;
import foilwright.pattern.FoilRule;
import foilwright.pattern.ShortEnds;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Divides a slice along its middle line into foils lying side by side. */
final class FoilDivider {
  /**
   * A part of a slice.
   *
   * @param region its scalp
   * @param middle its stretch of the slice's middle line
   * @param held whether a foil holds it; else it stays background
   */
  record Part(Region region, Polyline middle, boolean held) {}

  /** A stretch of the middle line, in mm of arc. */
  private record Stretch(double from, double to, boolean held) {
    double length() {
      return to - from;
    }
  }

  /** Mark of fragments that no cut comes near. */
  private static final int FREE = -1;

  /** Mark of fragments near the place where a closed middle line begins. */
  private static final int SEAM = -2;

  private FoilDivider() {}

  /**
   * Divides a slice.
   *
   * @param slice one connected slice
   * @param middle the line half way through it, in the order of work
   * @param usable widest parting that one foil holds, mm
   * @param shifted brick-lay: this row is shifted by half a foil
   * @return the parts in the order of the middle line; their regions add up to the slice
   */
  static List<Part> divide(
      Region slice,
      Polyline middle,
      FoilRule rule,
      ShortEnds shortEnds,
      double usable,
      boolean shifted) {
    List<Stretch> stretches = stretches(middle.length(), rule, shortEnds, usable, shifted);
    double[] cuts =
        IntStream.range(1, stretches.size()).mapToDouble(i -> stretches.get(i).from()).toArray();
    List<Region> regions = split(slice, middle, cuts);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < stretches.size(); i++) {
      Stretch s = stretches.get(i);
      parts.add(new Part(regions.get(i), middle.between(s.from(), s.to()), s.held()));
    }
    return parts;
  }

  private static List<Stretch> stretches(
      double length, FoilRule rule, ShortEnds shortEnds, double usable, boolean shifted) {
    double shortest = shortEnds.minimum().toMillimetres();
    if (length < shortest) {
      return List.of(new Stretch(0, length, false));
    }
    return rule.match(
        evenly ->
            evenly(length, (int) Math.ceil(length / usable - 1e-9), shortEnds, usable, shifted),
        centred -> centred(length, usable),
        count -> evenly(length, count.foils(), shortEnds, usable, shifted));
  }

  private static List<Stretch> centred(double length, double usable) {
    if (length <= usable) {
      return List.of(new Stretch(0, length, true));
    }
    double from = (length - usable) / 2;
    return List.of(
        new Stretch(0, from, false),
        new Stretch(from, from + usable, true),
        new Stretch(from + usable, length, false));
  }

  private static List<Stretch> evenly(
      double length, int count, ShortEnds shortEnds, double usable, boolean shifted) {
    double width = length / count;
    List<Stretch> foils = new ArrayList<>();
    if (!shifted) {
      for (int i = 0; i < count; i++) {
        foils.add(new Stretch(i * width, (i + 1) * width, true));
      }
      return foils;
    }
    foils.add(new Stretch(0, width / 2, true));
    for (int i = 0; i + 1 < count; i++) {
      foils.add(new Stretch((i + 0.5) * width, (i + 1.5) * width, true));
    }
    foils.add(new Stretch(length - width / 2, length, true));
    return width / 2 < shortEnds.minimum().toMillimetres()
        ? endsDealtWith(foils, shortEnds, usable)
        : foils;
  }

  private static List<Stretch> endsDealtWith(List<Stretch> foils, ShortEnds rule, double usable) {
    List<Stretch> dealt = new ArrayList<>(foils);
    Stretch first = dealt.get(0);
    Stretch last = dealt.get(dealt.size() - 1);
    boolean joins =
        rule.rule() == ShortEnds.Rule.JOIN
            && dealt.size() > 2
            && first.length() + dealt.get(1).length() <= usable;
    if (!joins) {
      dealt.set(0, new Stretch(first.from(), first.to(), false));
      dealt.set(dealt.size() - 1, new Stretch(last.from(), last.to(), false));
      return dealt;
    }
    Stretch second = dealt.get(1);
    dealt.set(1, new Stretch(first.from(), second.to(), true));
    dealt.remove(0);
    Stretch before = dealt.get(dealt.size() - 2);
    dealt.set(dealt.size() - 2, new Stretch(before.from(), last.to(), true));
    dealt.remove(dealt.size() - 1);
    return dealt;
  }

  /**
   * Cuts a strip square to its middle line at given arcs. Each cut acts only on what lies near it,
   * so that a strip may bend or close; the parts always add up to the strip.
   */
  private static List<Region> split(Region strip, Polyline middle, double[] cuts) {
    if (cuts.length == 0) {
      return List.of(strip);
    }
    boolean closed = middle.closed();
    LinearValues seam = closed ? square(strip, middle, 0) : (t, k) -> 0;
    LinearValues[] across = new LinearValues[cuts.length];
    for (int i = 0; i < cuts.length; i++) {
      across[i] = square(strip, middle, cuts[i]);
    }
    double reach = 2 * strip.mesh().longestEdge();
    if (keepsItsWay(middle, cuts, reach)) {
      return inOrder(strip, across);
    }
    int[] near = new int[strip.fragmentCount()];
    int[] part = new int[strip.fragmentCount()];
    for (int f = 0; f < near.length; f++) {
      double arc = middle.nearestArc(strip.vertex(f, 0));
      near[f] = FREE;
      int before = 0;
      for (int i = 0; i < cuts.length; i++) {
        if (arc > cuts[i]) {
          before = i + 1;
        }
        if (Math.abs(arc - cuts[i]) < reach
            && (near[f] < 0 || Math.abs(arc - cuts[i]) < Math.abs(arc - cuts[near[f]]))) {
          near[f] = i;
        }
      }
      part[f] = before;
      if (closed && near[f] == FREE && Math.min(arc, middle.length() - arc) < reach) {
        near[f] = SEAM;
      }
    }
    List<Region> parts = new ArrayList<>();
    for (int i = 0; i <= cuts.length; i++) {
      int n = i;
      List<Region> pieces = new ArrayList<>();
      pieces.add(strip.fragments(f -> near[f] == FREE && part[f] == n));
      if (i > 0) {
        pieces.add(
            strip
                .fragments(f -> near[f] == n - 1)
                .clip(across[i - 1], 0, Double.POSITIVE_INFINITY));
      }
      if (i < cuts.length) {
        pieces.add(strip.fragments(f -> near[f] == n).clip(across[i], Double.NEGATIVE_INFINITY, 0));
      }
      if (i == 0 || i == cuts.length) {
        pieces.add(
            strip
                .fragments(f -> near[f] == SEAM)
                .clip(
                    seam,
                    i == 0 ? 0 : Double.NEGATIVE_INFINITY,
                    i == 0 ? Double.POSITIVE_INFINITY : 0));
      }
      parts.add(Region.join(strip.mesh(), pieces));
    }
    return parts;
  }

  /**
   * Whether a line lies well ahead of every cut after it and well behind before it, so that planes
   * alone tell.
   */
  private static boolean keepsItsWay(Polyline middle, double[] cuts, double reach) {
    if (middle.closed()) {
      return false;
    }
    for (double cut : cuts) {
      Plane plane = Plane.through(middle.at(cut), middle.tangentAt(cut));
      for (int i = 0; i < middle.size(); i++) {
        double ahead = middle.arcAt(i) - cut;
        double needed = Math.min(Math.abs(ahead) / 2, 2 * reach);
        if (Math.signum(ahead) * plane.distance(middle.points().get(i)) < needed) {
          return false;
        }
      }
    }
    return true;
  }

  private static List<Region> inOrder(Region strip, LinearValues[] across) {
    List<Region> parts = new ArrayList<>();
    Region rest = strip;
    for (LinearValues cut : across) {
      parts.add(rest.clip(cut, Double.NEGATIVE_INFINITY, 0));
      rest = rest.clip(cut, 0, Double.POSITIVE_INFINITY);
    }
    parts.add(rest);
    return parts;
  }

  private static LinearValues square(Region strip, Polyline middle, double arc) {
    Plane plane = Plane.through(middle.at(arc), middle.tangentAt(arc));
    return (t, k) -> plane.distance(strip.mesh().vertex(strip.mesh().corner(t, k)));
  }
}
