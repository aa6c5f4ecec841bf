package foilwright.app;

import foilwright.anatomy.PartSide;
import foilwright.drawing.Raster;
import foilwright.fall.Body;
import foilwright.fall.Fall;
import foilwright.fall.FallSettings;
import foilwright.fall.HairStyle;
import foilwright.fall.Strands;
import foilwright.fall.Watch;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.head.HairlineSettings;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import foilwright.look.Dye;
import foilwright.look.Look;
import foilwright.look.LookFigures;
import foilwright.look.LookPicture;
import foilwright.look.LookSettings;
import foilwright.look.LookSide;
import foilwright.look.Studio;
import foilwright.look.Tone;
import foilwright.units.Length;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/**
 * Looks at plans again and again while they are edited.
 *
 * <p>What no pattern changes is kept between looks: the hair on the head, what it lies on, how it
 * falls, and the figure without hair; the longest unused goes first when it grows too large. A
 * picture depends on nothing but the plan and what is wanted: not on what was looked at before, nor
 * on the number of processors. All pictures of one head in one style have one scale and place,
 * however many hairs are followed, wherever the part is and up to {@value #FRAME_MONTHS} months on,
 * so that one can take another's place without a jump.
 *
 * <p>Safe for use by several threads. Looks are made one after another, since each uses all
 * processors.
 */
public final class LiveLook {
  /** Memory for what is kept, as far as it is counted: hair and figures. */
  public static final long USUAL_BYTES = 256L << 20;

  private static final int FRAME_HAIRS = 3000;
  private static final int FRAME_MONTHS = 3;
  private static final long BODY_BYTES = 4L << 20;
  private static final long HAIR_BYTES = 2L << 20;
  private static final long POINT_BYTES = 12;
  private static final long ROOT_BYTES = 120;
  private static final long FIGURE_PIXEL_BYTES = 20;
  private static final double FALL_SHARE = 0.4;

  private final long mostBytes;
  private final ReentrantLock turn = new ReentrantLock(true);
  private final Map<String, Object> newest = new ConcurrentHashMap<>();

  /** In order of last use; only by who has the turn. */
  private final Map<Object, Kept> kept = new LinkedHashMap<>(16, 0.75f, true);

  public LiveLook() {
    this(USUAL_BYTES);
  }

  /** Keeps at most so much between looks; a look itself may need more. */
  public LiveLook(long mostBytes) {
    this.mostBytes = mostBytes;
  }

  /**
   * What to look at.
   *
   * @param before as the guest comes in; else as the pattern leaves the hair
   * @param part where the hair is parted; lengths stay as they were cut
   * @param months since the visit, 0 to 12
   * @param hairs how many are followed at most, 100 to 400000; 10 thousand for a first picture
   * @param heightPx of the level pictures, 40 to 2000; those from above have the same scale
   * @param sides each once, in the order wanted
   * @param tone of the lightened hair
   * @param figures whether to take figures too
   */
  public record Wanted(
      boolean before,
      PartSide part,
      double months,
      HairStyle style,
      int hairs,
      int heightPx,
      List<LookSide> sides,
      Tone tone,
      boolean figures) {
    /** Hairs of a picture that is there at once. */
    public static final int FIRST_HAIRS = 10_000;

    public Wanted {
      Objects.requireNonNull(part);
      Objects.requireNonNull(style);
      Objects.requireNonNull(tone);
      if (!(months >= 0 && months <= LookRequest.MOST_MONTHS)) {
        throw new IllegalArgumentException(
            months + " months are outside 0 to " + LookRequest.MOST_MONTHS);
      }
      FallSettings.USUAL.withHairs(hairs);
      if (heightPx < LookSettings.LEAST_HEIGHT || heightPx > LookSettings.MOST_HEIGHT) {
        throw new IllegalArgumentException(
            heightPx
                + " pixels are outside "
                + LookSettings.LEAST_HEIGHT
                + " to "
                + LookSettings.MOST_HEIGHT);
      }
      sides = List.copyOf(sides);
    }

    /** After the visit, worn as planned, from all sides, without figures. */
    public static Wanted of(Plan plan) {
      return new Wanted(
          false,
          plan.head().part().side(),
          0,
          HairStyle.NATURAL,
          FallSettings.USUAL_HAIRS,
          LookSettings.USUAL_HEIGHT,
          List.of(LookSide.values()),
          Tone.NEUTRAL,
          false);
    }

    public Wanted withBefore(boolean asTheGuestComesIn) {
      return new Wanted(
          asTheGuestComesIn, part, months, style, hairs, heightPx, sides, tone, figures);
    }

    public Wanted withPart(PartSide other) {
      return new Wanted(before, other, months, style, hairs, heightPx, sides, tone, figures);
    }

    public Wanted withMonths(double later) {
      return new Wanted(before, part, later, style, hairs, heightPx, sides, tone, figures);
    }

    public Wanted withStyle(HairStyle other) {
      return new Wanted(before, part, months, other, hairs, heightPx, sides, tone, figures);
    }

    public Wanted withHairs(int count) {
      return new Wanted(before, part, months, style, count, heightPx, sides, tone, figures);
    }

    public Wanted withHeight(int pixels) {
      return new Wanted(before, part, months, style, hairs, pixels, sides, tone, figures);
    }

    public Wanted withSides(List<LookSide> shown) {
      return new Wanted(before, part, months, style, hairs, heightPx, shown, tone, figures);
    }

    public Wanted withTone(Tone other) {
      return new Wanted(before, part, months, style, hairs, heightPx, sides, other, figures);
    }

    public Wanted withFigures(boolean too) {
      return new Wanted(before, part, months, style, hairs, heightPx, sides, tone, too);
    }
  }

  /**
   * A look.
   *
   * @param pictures one of each side that was wanted, in that order
   * @param figures when they were wanted
   */
  public record Seen(Wanted wanted, List<LookPicture> pictures, Optional<LookFigures> figures) {
    public Seen {
      pictures = List.copyOf(pictures);
    }

    /**
     * The picture of a side as a PNG file, clear where there is neither figure nor hair.
     *
     * @throws IllegalArgumentException when that side was not wanted
     */
    public byte[] png(LookSide side) {
      LookPicture picture =
          pictures.stream()
              .filter(p -> p.side() == side)
              .findFirst()
              .orElseThrow(
                  () -> new IllegalArgumentException("not looked at: the " + side.words()));
      return Raster.of(picture.width(), picture.height(), picture.toArray()).toPng();
    }
  }

  /**
   * Looks at a plan.
   *
   * @param viewer who asks: a later call of the same viewer, with whatever plan, ends this one
   * @param watch is told how much is done and may stop it
   * @throws CancellationException when the watcher stops it or the viewer asks anew
   */
  public Seen look(String viewer, Plan plan, Wanted wanted, Watch watch) {
    Object call = new Object();
    newest.put(viewer, call);
    Watch either = share -> newest.get(viewer) == call && watch.goOn(share);
    turn.lock();
    try {
      either.told(0);
      return look(plan, wanted, either);
    } finally {
      makeRoom();
      turn.unlock();
      newest.remove(viewer, call);
    }
  }

  /** All that a head but its part depends on. */
  private record BodyKey(
      HeadKind kind, TapeMeasurements tapes, HairlineSettings hairline, HeadSettings settings) {
    static BodyKey of(Head head) {
      return new BodyKey(head.kind(), head.tapes(), head.hairlineSettings(), head.settings());
    }
  }

  private record HairKey(Head head, HairProfile profile, PartSide part) {}

  private record StrandsKey(HairKey hair, FallSettings fall) {}

  private record StudioKey(HairKey hair, HairStyle style, double months, int heightPx) {}

  /** Something that is kept and what it weighs. */
  private record Kept(Object value, long bytes) {}

  private Seen look(Plan plan, Wanted wanted, Watch watch) {
    HairKey key = new HairKey(plan.head(), plan.guest().hair(), wanted.part());
    Length grown = Looking.GROWTH_OF_MONTH.times(wanted.months());
    FallSettings fall =
        FallSettings.USUAL.withHairs(wanted.hairs()).withStyle(wanted.style()).withGrown(grown);
    LookSettings settings =
        LookSettings.of(Looking.colours(plan, wanted.tone()))
            .withHeight(wanted.heightPx())
            .withSides(wanted.sides());
    Studio studio = studio(key, wanted);
    Strands strands = strands(key, fall, share -> watch.goOn(FALL_SHARE * share));
    Dye dye =
        wanted.before()
            ? Dye.before(strands.roots(), grown)
            : Dye.after(strands.roots(), plan.placement(), plan.head(), plan.pattern(), grown);
    Look look =
        Look.at(
            strands,
            dye,
            studio,
            settings,
            share -> watch.goOn(FALL_SHARE + (1 - FALL_SHARE) * share));
    Optional<LookFigures> figures =
        wanted.figures() ? Optional.of(LookFigures.of(look)) : Optional.empty();
    return new Seen(wanted, look.pictures(), figures);
  }

  /** The window is that of hair parted as planned, so that moving the part does not move it. */
  private Studio studio(HairKey hair, Wanted wanted) {
    HairKey planned = new HairKey(hair.head(), hair.profile(), hair.head().part().side());
    double months = Math.max(FRAME_MONTHS, Math.ceil(wanted.months()));
    StudioKey key = new StudioKey(planned, wanted.style(), months, wanted.heightPx());
    return keep(
        key,
        Studio.class,
        () -> {
          FallSettings few = FallSettings.USUAL.withHairs(FRAME_HAIRS).withStyle(wanted.style());
          Length grown = Looking.GROWTH_OF_MONTH.times(months);
          return Studio.of(
              List.of(
                  strands(planned, few, Watch.NOBODY),
                  strands(planned, few.withGrown(grown), Watch.NOBODY)),
              wanted.heightPx());
        },
        studio -> FIGURE_PIXEL_BYTES * studio.pixels());
  }

  private Strands strands(HairKey hair, FallSettings fall, Watch watch) {
    return keep(
        new StrandsKey(hair, fall),
        Strands.class,
        () -> Fall.of(hair(hair), body(hair.head()), fall, hair.profile().texture(), watch),
        strands -> POINT_BYTES * strands.pointCount() + ROOT_BYTES * strands.count());
  }

  private HairOnHead hair(HairKey key) {
    return keep(
        key,
        HairOnHead.class,
        () -> {
          PartSetting own = key.head().part();
          if (key.part() == own.side()) {
            return HairOnHead.of(key.head(), key.profile());
          }
          HairOnHead cut = hair(new HairKey(key.head(), key.profile(), own.side()));
          return cut.worn(key.head().withPart(new PartSetting(key.part(), own.fromCentre())));
        },
        hair -> HAIR_BYTES);
  }

  private Body body(Head head) {
    return keep(BodyKey.of(head), Body.class, () -> Body.of(head), body -> BODY_BYTES);
  }

  private interface Weight<T> {
    long bytes(T value);
  }

  private <T> T keep(Object key, Class<T> type, Supplier<T> made, Weight<T> weight) {
    Kept found = kept.get(key);
    if (found != null) {
      return type.cast(found.value());
    }
    T value = made.get();
    kept.put(key, new Kept(value, weight.bytes(value)));
    return value;
  }

  private void makeRoom() {
    long bytes = kept.values().stream().mapToLong(Kept::bytes).sum();
    for (Iterator<Kept> oldest = kept.values().iterator(); bytes > mostBytes; ) {
      bytes -= oldest.next().bytes();
      oldest.remove();
    }
  }
}
