package foilwright.pattern;

import foilwright.units.Length;
import foilwright.units.Share;
import java.util.List;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.function.Consumer;

/**
 * What is done along the partings of a section. Offsets, slices and backgrounds are surface
 * distances along the section's guide line, in the direction of travel.
 *
 * @param slices how many; as many as fit when absent
 * @param offset from the start edge of the region to the first slice
 * @param slice thickness, more than nothing
 * @param picks one or more, each taken out of what the one before left
 * @param mix slots repeating over the section's foils in working order; at least one
 * @param startFromScalp where the mix starts, along the hair from the scalp
 */
public record Fill(
    OptionalInt slices,
    Extent offset,
    Run slice,
    Background background,
    Remainder remainder,
    List<Pick> picks,
    FoilRule foils,
    ShortEnds shortEnds,
    List<MixSlot> mix,
    Length startFromScalp) {
  public Fill {
    if (slices.isPresent() && slices.getAsInt() < 1) {
      throw new IllegalArgumentException("a fill needs at least 1 slice, not " + slices.getAsInt());
    }
    Require.notNegative(offset, "an offset");
    Require.positive(slice.first(), "a slice");
    Require.positive(slice.last(), "a slice");
    Objects.requireNonNull(background);
    Objects.requireNonNull(remainder);
    picks = List.copyOf(picks);
    Objects.requireNonNull(foils);
    Objects.requireNonNull(shortEnds);
    mix = List.copyOf(mix);
    if (picks.isEmpty() || mix.isEmpty()) {
      throw new IllegalArgumentException("a fill needs at least one pick and one mix slot");
    }
    Require.notNegative(startFromScalp, "a start from the scalp");
  }

  /** As many solid slices as fit, foils evenly, slot A, to the scalp. */
  public static Fill of(Run slice, Background background) {
    return new Fill(
        OptionalInt.empty(),
        Extent.zero(),
        slice,
        background,
        Remainder.LEAVE,
        List.of(new Pick.Solid()),
        new FoilRule.Evenly(),
        ShortEnds.USUAL,
        List.of(MixSlot.A),
        Length.ZERO);
  }

  /** All that one says, to be changed before it becomes another. */
  private static final class Parts {
    private OptionalInt slices;
    private Extent offset;
    private Run slice;
    private Background background;
    private Remainder remainder;
    private List<Pick> picks;
    private FoilRule foils;
    private ShortEnds shortEnds;
    private List<MixSlot> mix;
    private Length startFromScalp;

    Parts(Fill before) {
      slices = before.slices;
      offset = before.offset;
      slice = before.slice;
      background = before.background;
      remainder = before.remainder;
      picks = before.picks;
      foils = before.foils;
      shortEnds = before.shortEnds;
      mix = before.mix;
      startFromScalp = before.startFromScalp;
    }

    Fill made() {
      return new Fill(
          slices,
          offset,
          slice,
          background,
          remainder,
          picks,
          foils,
          shortEnds,
          mix,
          startFromScalp);
    }
  }

  private Fill with(Consumer<Parts> change) {
    Parts parts = new Parts(this);
    change.accept(parts);
    return parts.made();
  }

  public Fill withSlices(int count) {
    return withSlices(OptionalInt.of(count));
  }

  /**
   * @param count as many as fit when absent
   */
  public Fill withSlices(OptionalInt count) {
    return with(parts -> parts.slices = count);
  }

  public Fill withOffset(Extent toFirstSlice) {
    return with(parts -> parts.offset = toFirstSlice);
  }

  public Fill withSlice(Run thickness) {
    return with(parts -> parts.slice = thickness);
  }

  public Fill withBackground(Background leftOut) {
    return with(parts -> parts.background = leftOut);
  }

  public Fill withRemainder(Remainder rule) {
    return with(parts -> parts.remainder = rule);
  }

  public Fill withPicks(Pick... taken) {
    return with(parts -> parts.picks = List.of(taken));
  }

  public Fill withFoils(FoilRule rule, ShortEnds ends) {
    return with(
        parts -> {
          parts.foils = rule;
          parts.shortEnds = ends;
        });
  }

  public Fill withMix(MixSlot... order) {
    return with(parts -> parts.mix = List.of(order));
  }

  /** Share of the hair of a slice of this thickness that is taken: the product over the picks. */
  public Share pickedShare(Length sliceThickness) {
    double share = 1;
    for (Pick pick : picks) {
      share *= pick.pickedShare(sliceThickness).toFraction();
    }
    return Share.ofFraction(share);
  }

  /**
   * Strokes of the comb per millimetre of parting. A later pick works only on the length that the
   * earlier ones took, so 10 mm teeth with 10 mm gaps and then 4 mm picks with 4 mm gaps make 1/20
   * + 1/2 x 1/8 strokes a millimetre.
   */
  public double picksPerMillimetre() {
    double strokes = 0;
    double along = 1;
    for (Pick pick : picks) {
      strokes += along * pick.picksPerMillimetre();
      along *= pick.shareAlong().toFraction();
    }
    return strokes;
  }

  public Fill mirrored() {
    return withBackground(background.mirrored());
  }
}
