package foilwright.pattern;

import java.util.Optional;
import java.util.function.Function;

/**
 * A named shape of region. Distances along the centre line are surface distances counted back from
 * the front hairline; widths are surface distances across.
 */
public sealed interface NamedArea {
  /** Base on the front hairline, point on the centre line. */
  record Triangle(Extent baseWidth, Extent depth) implements NamedArea {
    public Triangle {
      Require.positive(baseWidth, "a triangle's base");
      Require.positive(depth, "a triangle's depth");
    }
  }

  /** Centred on the centre line, points to the front, back and sides. */
  record Diamond(Extent centre, Extent length, Extent width) implements NamedArea {
    public Diamond {
      Require.notNegative(centre, "a diamond's centre");
      Require.positive(length, "a diamond's length");
      Require.positive(width, "a diamond's width");
    }
  }

  /** Across the centre line, half its width to each side. */
  record Box(Extent from, Extent to, Extent width) implements NamedArea {
    public Box {
      Require.notNegative(from, "a box's near end");
      Require.positive(to, "a box's far end");
      Require.positive(width, "a box's width");
    }
  }

  /**
   * Round at the back, open at the front hairline.
   *
   * @param depth how far back along the centre line
   * @param width across at its widest; out to the parietal ridge when absent
   */
  record Horseshoe(Extent depth, Optional<Extent> width) implements NamedArea {
    public Horseshoe {
      Require.positive(depth, "a horseshoe's depth");
      width.ifPresent(w -> Require.positive(w, "a horseshoe's width"));
    }
  }

  /** Along the front hairline from ear to ear, this far in. */
  record FaceFrameStrip(Extent width) implements NamedArea {
    public FaceFrameStrip {
      Require.positive(width, "a face-frame strip's width");
    }
  }

  /** Along the part line (the centre line when there is none), this far to each side. */
  record PartLineStrip(Extent width) implements NamedArea {
    public PartLineStrip {
      Require.positive(width, "a part-line strip's width");
    }
  }

  default <R> R match(
      Function<Triangle, R> triangle,
      Function<Diamond, R> diamond,
      Function<Box, R> box,
      Function<Horseshoe, R> horseshoe,
      Function<FaceFrameStrip, R> faceFrame,
      Function<PartLineStrip, R> partLine) {
    if (this instanceof Triangle a) {
      return triangle.apply(a);
    } else if (this instanceof Diamond a) {
      return diamond.apply(a);
    } else if (this instanceof Box a) {
      return box.apply(a);
    } else if (this instanceof Horseshoe a) {
      return horseshoe.apply(a);
    } else if (this instanceof FaceFrameStrip a) {
      return faceFrame.apply(a);
    }
    return partLine.apply((PartLineStrip) this);
  }
}
