package foilwright.pattern;

import foilwright.units.Angle;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.MatchResult;

/**
 * One section: a region, a shape and a fill.
 *
 * @param name unique in its pattern, as the colourist would call it
 * @param why one sentence on what the section is for; may be empty
 * @param from where the work starts
 * @param mirror whether the same is done on the other side, as a pair
 * @param turned turns the partings in the view, counter-clockwise as the viewer sees it; straight
 *     shapes only; -90 to 90 deg
 * @param brickLay each row of foils shifted by half a foil
 * @param seen how a person looks at the section
 * @param leaveOut foils that are not placed; their hair stays background
 */
public record Section(
    String name,
    String why,
    RegionSpec region,
    SectionShape shape,
    TravelFrom from,
    Fill fill,
    boolean mirror,
    Angle turned,
    Optional<ZigzagParting> zigzagParting,
    boolean brickLay,
    KeptCover keptCover,
    ViewedFrom seen,
    List<FoilPlace> leaveOut) {
  private static final java.util.regex.Pattern SIDES =
      java.util.regex.Pattern.compile("\\b(left|right)\\b");

  public Section {
    Require.text(name, "a section's name");
    Objects.requireNonNull(why);
    Objects.requireNonNull(region);
    Objects.requireNonNull(shape);
    Objects.requireNonNull(from);
    Objects.requireNonNull(fill);
    Require.within(turned, -90, 90, "a turn");
    Objects.requireNonNull(zigzagParting);
    Objects.requireNonNull(keptCover);
    Objects.requireNonNull(seen);
    leaveOut = List.copyOf(leaveOut);
  }

  /** A plain section: no pair, no turn, straight-edged partings, nothing kept, seen by zone. */
  public static Section of(
      String name, RegionSpec region, SectionShape shape, TravelFrom from, Fill fill) {
    return new Section(
        name,
        "",
        region,
        shape,
        from,
        fill,
        false,
        Angle.ZERO,
        Optional.empty(),
        false,
        KeptCover.NONE,
        ViewedFrom.AUTO,
        List.of());
  }

  /** All that one says, to be changed before it becomes another. */
  private static final class Parts {
    private String name;
    private String why;
    private RegionSpec region;
    private SectionShape shape;
    private TravelFrom from;
    private Fill fill;
    private boolean mirror;
    private Angle turned;
    private Optional<ZigzagParting> zigzagParting;
    private boolean brickLay;
    private KeptCover keptCover;
    private ViewedFrom seen;
    private List<FoilPlace> leaveOut;

    Parts(Section before) {
      name = before.name;
      why = before.why;
      region = before.region;
      shape = before.shape;
      from = before.from;
      fill = before.fill;
      mirror = before.mirror;
      turned = before.turned;
      zigzagParting = before.zigzagParting;
      brickLay = before.brickLay;
      keptCover = before.keptCover;
      seen = before.seen;
      leaveOut = before.leaveOut;
    }

    Section made() {
      return new Section(
          name,
          why,
          region,
          shape,
          from,
          fill,
          mirror,
          turned,
          zigzagParting,
          brickLay,
          keptCover,
          seen,
          leaveOut);
    }
  }

  private Section with(Consumer<Parts> change) {
    Parts parts = new Parts(this);
    change.accept(parts);
    return parts.made();
  }

  public Section withRegion(RegionSpec described) {
    return with(parts -> parts.region = described);
  }

  public Section withShape(SectionShape drawn) {
    return with(parts -> parts.shape = drawn);
  }

  public Section withFill(Fill other) {
    return with(parts -> parts.fill = other);
  }

  public Section withMirror(boolean pair) {
    return with(parts -> parts.mirror = pair);
  }

  public Section withTurned(Angle turn) {
    return with(parts -> parts.turned = turn);
  }

  public Section withZigzagParting(ZigzagParting teeth) {
    return with(parts -> parts.zigzagParting = Optional.of(teeth));
  }

  public Section withBrickLay(boolean shifted) {
    return with(parts -> parts.brickLay = shifted);
  }

  public Section withKeptCover(KeptCover cover) {
    return with(parts -> parts.keptCover = cover);
  }

  public Section withSeen(ViewedFrom view) {
    return with(parts -> parts.seen = view);
  }

  public Section withLeaveOut(List<FoilPlace> foils) {
    return with(parts -> parts.leaveOut = foils);
  }

  /**
   * The name of the pair's other half: left and right exchanged, or the side that it lies on put
   * after the name.
   */
  public String mirroredName() {
    String exchanged =
        SIDES
            .matcher(name)
            .replaceAll((MatchResult side) -> side.group().equals("left") ? "right" : "left");
    return exchanged.equals(name) ? name + ", " + region.keptSide().mirrored().words() : exchanged;
  }

  /**
   * The other half of the pair: left and right exchanged throughout; not itself to be mirrored.
   * Foils to be left out keep the side they name.
   */
  public Section mirrored() {
    return new Section(
        mirroredName(),
        why,
        region.mirrored(),
        shape.mirrored(),
        from.mirrored(),
        fill.mirrored(),
        false,
        turned.times(-1),
        zigzagParting,
        brickLay,
        keptCover,
        seen,
        leaveOut);
  }
}
