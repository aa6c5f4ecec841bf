package foilwright.placement;

import foilwright.geometry.Polyline;
import foilwright.geometry.surface.Isolines;
import foilwright.geometry.surface.LinearValues;
import foilwright.geometry.surface.Region;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;

/** One parting: it cuts what is left of a section into what was passed and what lies ahead. */
interface Cut {
  /** The part of a region that the parting leaves behind it in the direction of travel. */
  Region behind(Region rest);

  /** The part of a region that lies ahead of the parting. */
  Region ahead(Region rest);

  /** The parting itself, within a region. */
  List<Polyline> lines(Region within);

  /** The same parting with its value raised by a function that is linear in each triangle. */
  Cut shifted(LinearValues by);

  /** A line of equal value of a field that grows in the direction of travel. */
  record Level(LinearValues field, double level) implements Cut {
    @Override
    public Region behind(Region rest) {
      return rest.clip(field, Double.NEGATIVE_INFINITY, level);
    }

    @Override
    public Region ahead(Region rest) {
      return rest.clip(field, level, Double.POSITIVE_INFINITY);
    }

    @Override
    public List<Polyline> lines(Region within) {
      return Isolines.of(within, field, level);
    }

    @Override
    public Cut shifted(LinearValues by) {
      return new Level(sum(field, by), level);
    }
  }

  /**
   * A half-plane that ends on an axis, one of a family that turns about it.
   *
   * @param last signed distance from the half-plane of the parting before, positive ahead of it
   * @param here signed distance from this half-plane, positive ahead of it
   * @param out distance from the axis in this half-plane's own direction, positive on its side
   */
  record Turn(LinearValues last, LinearValues here, LinearValues out) implements Cut {
    @Override
    public Region behind(Region rest) {
      return rest.clip(here, Double.NEGATIVE_INFINITY, 0).clip(last, 0, Double.POSITIVE_INFINITY);
    }

    @Override
    public Region ahead(Region rest) {
      Region far = rest.clip(here, Double.NEGATIVE_INFINITY, 0);
      return Region.join(
          rest.mesh(),
          List.of(
              rest.clip(here, 0, Double.POSITIVE_INFINITY),
              far.clip(last, Double.NEGATIVE_INFINITY, 0)));
    }

    @Override
    public List<Polyline> lines(Region within) {
      return Isolines.of(within.clip(out, 0, Double.POSITIVE_INFINITY), here, 0);
    }

    @Override
    public Cut shifted(LinearValues by) {
      return new Turn(sum(last, by), sum(here, by), out);
    }
  }

  /**
   * A parting drawn in teeth: it swings by half the tooth depth to either side, evenly along a
   * field.
   *
   * @param along millimetres along the parting; its zero is where all partings of a family have a
   *     tooth, so that the teeth of neighbours run side by side
   * @param reach half the depth of a tooth, unit of the plain parting's field
   * @param period width of a tooth, millimetres
   */
  record Teeth(Cut plain, LinearValues along, double reach, double period) implements Cut {
    @Override
    public Region behind(Region rest) {
      List<Region> kept = new ArrayList<>();
      forFlanks(rest, (flank, cut) -> kept.add(cut.behind(flank)));
      return Region.join(rest.mesh(), kept);
    }

    @Override
    public Region ahead(Region rest) {
      List<Region> kept = new ArrayList<>();
      forFlanks(rest, (flank, cut) -> kept.add(cut.ahead(flank)));
      return Region.join(rest.mesh(), kept);
    }

    @Override
    public List<Polyline> lines(Region within) {
      List<Polyline> pieces = new ArrayList<>();
      forFlanks(within, (flank, cut) -> pieces.addAll(cut.lines(flank)));
      return Isolines.join(pieces);
    }

    @Override
    public Cut shifted(LinearValues by) {
      return new Teeth(plain.shifted(by), along, reach, period);
    }

    /** On each flank of a tooth the swing is linear, so that the cut there is exact. */
    private void forFlanks(Region region, BiConsumer<Region, Cut> use) {
      if (region.isEmpty()) {
        return;
      }
      double half = period / 2;
      long first = (long) Math.floor(region.least(along) / half);
      long last = (long) Math.floor(region.greatest(along) / half);
      double[] kinks = new double[(int) (last - first)];
      for (int i = 0; i < kinks.length; i++) {
        kinks[i] = (first + 1 + i) * half;
      }
      List<Region> flanks = region.bands(along, kinks);
      for (int i = 0; i < flanks.size(); i++) {
        long k = first + i;
        double peak = k % 2 == 0 ? reach : -reach;
        use.accept(
            flanks.get(i),
            plain.shifted((t, c) -> peak * (1 - 2 * (along.at(t, c) - k * half) / half)));
      }
    }
  }

  private static LinearValues sum(LinearValues a, LinearValues b) {
    return (t, k) -> a.at(t, k) + b.at(t, k);
  }
}
