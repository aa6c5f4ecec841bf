package foilwright.web;

import foilwright.app.LiveLook;
import foilwright.app.Looking;
import foilwright.app.Mark;
import foilwright.app.Plan;
import foilwright.fall.Watch;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.look.Advice;
import foilwright.look.LookFigures;
import foilwright.look.LookPicture;
import foilwright.look.LookSide;
import foilwright.web.LookShown.Picture;
import foilwright.web.LookShown.Untouched;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/** Looks at the hair for pages, and keeps the last pictures until they are fetched. */
final class LookDesk {
  /** Some fifteen looks of ten pictures; a picture weighs about 150 kB. */
  private static final int KEPT_PICTURES = 160;

  private static final int KEPT_BEFORE = 12;

  private final int hairs;
  private final LiveLook live = new LiveLook();
  private final Map<String, byte[]> pictures = Collections.synchronizedMap(latest(KEPT_PICTURES));
  private final Map<BeforeKey, Map<LookSide, Untouched>> before =
      Collections.synchronizedMap(latest(KEPT_BEFORE));
  private final Map<String, Step> under = new ConcurrentHashMap<>();
  private volatile boolean stopped;

  /** Makes looks of no more than so many hairs. */
  LookDesk(int hairs) {
    this.hairs = hairs;
  }

  /** All that hair before the visit depends on; a head is itself alone. */
  private record BeforeKey(Head head, HairProfile hair, LiveLook.Wanted wanted) {}

  /** A look under way: how much is done, and whether it is still wanted. */
  private static final class Step {
    private volatile double done;
    private volatile boolean wanted = true;
  }

  private static <K, V> Map<K, V> latest(int most) {
    return new LinkedHashMap<>(16, 0.75f, true) {
      private static final long serialVersionUID = 1;

      @Override
      protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
        return size() > most;
      }
    };
  }

  /**
   * Looks at a plan.
   *
   * @throws CancellationException when the same viewer asked anew or wants no more
   */
  LookShown look(Plan plan, LookAsk ask) {
    LiveLook.Wanted wanted = ask.wanted(plan, hairs);
    boolean grows = ask.fine() && wanted.months() > 0;
    Step step = begin(ask.viewer());
    try {
      LiveLook.Seen after = live.look(ask.viewer(), plan, wanted, part(step, 0, grows ? 0.5 : 0.7));
      LookFigures figures = after.figures().orElseThrow();
      Optional<LookFigures> now =
          grows
              ? live.look(ask.viewer(), plan, wanted.withMonths(0), part(step, 0.5, 0.8)).figures()
              : Optional.empty();
      Map<LookSide, Untouched> untouched = before(plan, wanted, ask, part(step, 0.8, 1));
      List<Advice> advice =
          Looking.advice(
              plan,
              now.orElse(figures),
              now.isPresent() ? Optional.of(figures) : Optional.empty(),
              wanted.months());
      return LookShown.of(
          wanted,
          ask.fine(),
          figures,
          shown(after, figures, untouched),
          advice.stream().map(Advice::text).toList());
    } finally {
      under.remove(ask.viewer(), step);
    }
  }

  /** Looks at two plans on one guest in the same way. */
  LookBeside beside(Plan one, Plan other, LookAsk ask) {
    Step step = begin(ask.viewer());
    try {
      LiveLook.Wanted wanted = ask.wanted(one, hairs);
      LiveLook.Seen first = live.look(ask.viewer(), one, wanted, part(step, 0, 0.5));
      LiveLook.Seen second = live.look(ask.viewer(), other, wanted, part(step, 0.5, 1));
      return LookBeside.of(
          LookBeside.Half.of(one, first, shown(first, first.figures().orElseThrow(), Map.of())),
          LookBeside.Half.of(
              other, second, shown(second, second.figures().orElseThrow(), Map.of())),
          wanted);
    } finally {
      under.remove(ask.viewer(), step);
    }
  }

  private Step begin(String viewer) {
    Step step = new Step();
    Step last = under.put(viewer, step);
    if (last != null) {
      last.wanted = false;
    }
    return step;
  }

  private Watch part(Step step, double from, double to) {
    return share -> {
      step.done = from + (to - from) * share;
      return step.wanted && !stopped;
    };
  }

  /** How much of the look under way is done, 0 to 1; 1 when there is none. */
  double done(String viewer) {
    Step step = under.get(viewer);
    return step == null ? 1 : step.done;
  }

  /** Ends what is under way for a viewer. */
  void leave(String viewer) {
    Step step = under.get(viewer);
    if (step != null) {
      step.wanted = false;
    }
  }

  /** Ends whatever is under way, for good. */
  void stop() {
    stopped = true;
  }

  /** What no pattern changes is looked at once. */
  private Map<LookSide, Untouched> before(
      Plan plan, LiveLook.Wanted after, LookAsk ask, Watch watch) {
    LiveLook.Wanted wanted = after.withBefore(true);
    BeforeKey key = new BeforeKey(plan.head(), plan.guest().hair(), wanted);
    Map<LookSide, Untouched> found = before.get(key);
    if (found == null || found.values().stream().anyMatch(u -> !pictures.containsKey(u.name()))) {
      LiveLook.Seen seen = live.look(ask.viewer(), plan, wanted, watch);
      Map<LookSide, Untouched> made = new LinkedHashMap<>();
      names(seen)
          .forEach(
              (side, name) ->
                  made.put(
                      side,
                      Untouched.of(side, name, seen.figures().orElseThrow().sides().get(side))));
      before.put(key, made);
      return made;
    }
    return found;
  }

  private List<Picture> shown(
      LiveLook.Seen seen, LookFigures figures, Map<LookSide, Untouched> untouched) {
    Map<LookSide, String> names = names(seen);
    return seen.pictures().stream()
        .map(
            picture ->
                Picture.of(
                    picture,
                    names.get(picture.side()),
                    Optional.ofNullable(untouched.get(picture.side())),
                    figures.sides().get(picture.side()),
                    seen.wanted().hairs()))
        .toList();
  }

  private Map<LookSide, String> names(LiveLook.Seen seen) {
    Map<LookSide, byte[]> files =
        seen.pictures().parallelStream()
            .map(LookPicture::side)
            .collect(Collectors.toConcurrentMap(side -> side, seen::png));
    Map<LookSide, String> names = new LinkedHashMap<>();
    files.forEach((side, file) -> names.put(side, keep(file)));
    return names;
  }

  /** A picture's name tells what it holds, so that it never means another. */
  private String keep(byte[] file) {
    String name = Mark.of(file);
    pictures.put(name, file);
    return name;
  }

  /**
   * A picture as a PNG file.
   *
   * @throws NoSuchElementException when it is not kept any more
   */
  byte[] picture(String name) {
    byte[] file = pictures.get(name);
    if (file == null) {
      throw new NoSuchElementException("This picture is not kept any more. Load the page again.");
    }
    return file;
  }
}
