package foilwright.placement;

import foilwright.geometry.Polyline;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.Region;
import foilwright.hair.HairOnHead;
import foilwright.pattern.Fill;
import foilwright.pattern.HaloBoundary;
import foilwright.pattern.Pattern;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;

/**
 * One section of a pattern drawn again and again with other values: shows where its partings would
 * go, by the rules by which it is placed, without dividing them into foils. Sections before it stay
 * as they are. Not for use by several threads.
 */
public final class SectionTrial {
  private final BiFunction<Section, Boolean, Drawn> drawing;

  /**
   * @param drawing of a section, or of the second half of its pair
   */
  SectionTrial(BiFunction<Section, Boolean, Drawn> drawing) {
    this.drawing = drawing;
  }

  /**
   * Prepares it: lays the earlier sections that this one speaks of.
   *
   * @param index of the section in the pattern, from 0
   */
  public static SectionTrial of(
      Pattern pattern, HairOnHead hair, PlacingSettings settings, DirectionField fall, int index) {
    Set<String> needed = new HashSet<>(references(pattern.sections().get(index)));
    for (int i = index - 1; i >= 0; i--) {
      if (needed.contains(pattern.sections().get(i).name())) {
        needed.addAll(references(pattern.sections().get(i)));
      }
    }
    return Placer.trial(pattern, hair, settings, fall, index, needed);
  }

  private static List<String> references(Section section) {
    List<String> names = new ArrayList<>(section.region().references());
    if (section.shape() instanceof SectionShape.Halo halo
        && halo.measuredFrom() instanceof HaloBoundary.InnerEdgeOf inner) {
      names.add(inner.section());
    }
    return names;
  }

  /** A section, or one half of a pair, whose fill can be changed. */
  public static final class Drawn {
    private final Region region;
    private final Optional<SectionLayout> layout;

    Drawn(Region region, Optional<SectionLayout> layout) {
      this.region = region;
      this.layout = layout;
    }

    /** What it may use, kept covers included. */
    public Region region() {
      return region;
    }

    /**
     * An edge of a slice of its first arm with a fill, without teeth; no line when there is no such
     * slice.
     *
     * @param fill with a background of the same kind as the section's
     * @param slice in the direction of travel, from 0
     * @param first whether it is the edge where travel begins
     */
    public List<Polyline> edge(Fill fill, int slice, boolean first) {
      return layout.map(l -> l.edge(fill, slice, first)).orElse(List.of());
    }
  }

  /** The section, and its pair if it has one, in another form. */
  public List<Drawn> draw(Section section) {
    Drawn own = drawing.apply(section, false);
    return section.mirror() ? List.of(own, drawing.apply(section.mirrored(), true)) : List.of(own);
  }
}
