package foilwright.pattern;

import foilwright.anatomy.Side;
import foilwright.anatomy.Zone;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Which part of the scalp a section takes: everything that meets all of the stated bounds. A
 * reference to a section means that section and, when it is mirrored, its pair.
 *
 * @param zones the zones taken; empty means the whole scalp
 * @param side the side kept
 * @param insetFromHairline surface distance kept free along the whole hairline
 * @param insetFromPart surface distance kept free along the part line
 * @param above the region lies above every one of these
 * @param below the region lies below every one of these
 * @param earLine in front of or behind the ear line, or both
 * @param within a named shape that the region lies in
 * @param between two earlier sections that the region lies between
 * @param inside an earlier section whose outline encloses the region
 * @param except earlier sections left out
 */
public record RegionSpec(
    Set<Zone> zones,
    RegionSide side,
    Optional<Extent> insetFromHairline,
    Optional<Extent> insetFromPart,
    List<HeightBound> above,
    List<HeightBound> below,
    EarLineSide earLine,
    Optional<NamedArea> within,
    Optional<Between> between,
    Optional<String> inside,
    List<String> except) {

  /** The whole scalp, without a bound. */
  public static final RegionSpec WHOLE_SCALP =
      new RegionSpec(
          Set.of(),
          RegionSide.BOTH,
          Optional.empty(),
          Optional.empty(),
          List.of(),
          List.of(),
          EarLineSide.BOTH,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of());

  /** The names of two earlier sections. */
  public record Between(String first, String second) {
    public Between {
      Require.text(first, "a section's name");
      Require.text(second, "a section's name");
    }
  }

  public RegionSpec {
    EnumSet<Zone> copy = EnumSet.noneOf(Zone.class);
    copy.addAll(zones);
    zones = Collections.unmodifiableSet(copy);
    Objects.requireNonNull(side);
    insetFromHairline.ifPresent(e -> Require.notNegative(e, "an inset from the hairline"));
    insetFromPart.ifPresent(e -> Require.notNegative(e, "an inset from the part"));
    above = List.copyOf(above);
    below = List.copyOf(below);
    Objects.requireNonNull(earLine);
    Objects.requireNonNull(within);
    Objects.requireNonNull(between);
    inside.ifPresent(name -> Require.text(name, "a section's name"));
    except = List.copyOf(except);
  }

  public static RegionSpec ofZones(Zone first, Zone... others) {
    return WHOLE_SCALP.withZones(EnumSet.of(first, others));
  }

  /** All that one says, to be changed before it becomes another. */
  private static final class Parts {
    private Set<Zone> zones;
    private RegionSide side;
    private Optional<Extent> insetFromHairline;
    private Optional<Extent> insetFromPart;
    private List<HeightBound> above;
    private List<HeightBound> below;
    private EarLineSide earLine;
    private Optional<NamedArea> within;
    private Optional<Between> between;
    private Optional<String> inside;
    private List<String> except;

    Parts(RegionSpec before) {
      zones = before.zones;
      side = before.side;
      insetFromHairline = before.insetFromHairline;
      insetFromPart = before.insetFromPart;
      above = before.above;
      below = before.below;
      earLine = before.earLine;
      within = before.within;
      between = before.between;
      inside = before.inside;
      except = before.except;
    }

    RegionSpec made() {
      return new RegionSpec(
          zones,
          side,
          insetFromHairline,
          insetFromPart,
          above,
          below,
          earLine,
          within,
          between,
          inside,
          except);
    }
  }

  private RegionSpec with(Consumer<Parts> change) {
    Parts parts = new Parts(this);
    change.accept(parts);
    return parts.made();
  }

  public RegionSpec withZones(Collection<Zone> taken) {
    return with(parts -> parts.zones = Set.copyOf(taken));
  }

  public RegionSpec withSide(RegionSide kept) {
    return with(parts -> parts.side = kept);
  }

  public RegionSpec withInsetFromHairline(Extent inset) {
    return with(parts -> parts.insetFromHairline = Optional.of(inset));
  }

  public RegionSpec withInsetFromPart(Extent inset) {
    return with(parts -> parts.insetFromPart = Optional.of(inset));
  }

  public RegionSpec withAbove(HeightBound... bounds) {
    return with(parts -> parts.above = List.of(bounds));
  }

  public RegionSpec withBelow(HeightBound... bounds) {
    return with(parts -> parts.below = List.of(bounds));
  }

  public RegionSpec withEarLine(EarLineSide kept) {
    return with(parts -> parts.earLine = kept);
  }

  public RegionSpec withWithin(NamedArea area) {
    return with(parts -> parts.within = Optional.of(area));
  }

  public RegionSpec withBetween(String first, String second) {
    return with(parts -> parts.between = Optional.of(new Between(first, second)));
  }

  public RegionSpec withInside(String section) {
    return with(parts -> parts.inside = Optional.of(section));
  }

  public RegionSpec withExcept(String... sections) {
    return with(parts -> parts.except = List.of(sections));
  }

  /** Every earlier section named here, in the order of the fields; may repeat. */
  public List<String> references() {
    List<String> names = new ArrayList<>();
    for (List<HeightBound> bounds : List.of(above, below)) {
      for (HeightBound bound : bounds) {
        bound
            .<Optional<String>>match(
                e -> Optional.empty(),
                l -> Optional.empty(),
                c -> Optional.empty(),
                s -> Optional.of(s.section()),
                e -> Optional.of(e.section()))
            .ifPresent(names::add);
      }
    }
    between.ifPresent(b -> names.addAll(List.of(b.first(), b.second())));
    inside.ifPresent(names::add);
    names.addAll(except);
    return List.copyOf(names);
  }

  /** Left or right when nothing of the other side can belong to the region; else the middle. */
  public Side keptSide() {
    if (side != RegionSide.BOTH) {
      return side.side();
    }
    Set<Side> sides = zones.stream().map(Zone::side).collect(Collectors.toSet());
    return sides.size() == 1 ? sides.iterator().next() : Side.MIDDLE;
  }

  /** Left and right exchanged; references keep their names. */
  public RegionSpec mirrored() {
    return withZones(zones.stream().map(Zone::mirrored).toList()).withSide(side.mirrored());
  }
}
