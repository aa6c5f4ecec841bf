package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Curve;
import foilwright.drawing.Ink;
import foilwright.drawing.LabelPlacer;
import foilwright.drawing.Layer;
import foilwright.drawing.LineWeight;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Pen;
import foilwright.drawing.Point;
import foilwright.drawing.Polygon;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.SurfaceLoops;
import foilwright.drawing.TextSize;
import foilwright.drawing.View;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import foilwright.problem.Severity;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.Supplier;

/**
 * The map for working at the chair: the head from five sides and its unrolled scalp, every foil
 * lying on the surface and numbered in working order, with legend, totals and cautions. Paper
 * across.
 *
 * <p>Every foil's number stands in at least one picture; with more than 90 foils, or where numbers
 * find no room, a second page shows the unrolled scalp large.
 */
public final class MapSheet {
  private static final int MOST_FOILS_ON_ONE_PAGE = 90;
  private static final double LEAST_AREA_MM2 = 0.4;
  private static final double LABEL_GAP_MM = 0.3;
  private static final double LEAST_FACING_OF_A_POINTER = 0.25;

  /** No section's hatch has this direction, this spacing or black lines. */
  private static final double OVERLAP_DEG = 65;

  private static final double OVERLAP_SPACING_MM = 0.6;
  private static final Pen OVERLAP = Pen.of(Ink.BLACK, LineWeight.MEDIUM);

  /** Millimetres of a picture that stands alone for one of the head. */
  private static final double ALONE_SCALE = 0.5;

  private static final double PICTURE_MARGIN_MM = 1.5;
  private static final MapNotes NO_NOTES = new MapNotes("Head", "", List.of(), List.of());

  private final DrawnHead head;
  private final SheetLayout layout;
  private final List<Frame> frames;
  private final Frame large;

  /** The pictures as they stand alone. */
  private final List<Frame> alone;

  private MapSheet(DrawnHead head, Paper paper) {
    this.head = head;
    this.layout = new SheetLayout(paper);
    this.frames = layout.frames(head);
    this.large = layout.large(head.flat());
    this.alone = frames.stream().map(frame -> alone(frame.picture())).toList();
  }

  /** A map sheet for a head, to be used for every plan on it. */
  public static MapSheet on(DrawnHead head, Paper paper) {
    return new MapSheet(head, paper);
  }

  /** The pages of one map; for several plans on one head, keep {@link #on}. */
  public static List<Scene> build(
      DrawnHead head, Placement placement, MapNotes notes, Paper paper) {
    return on(head, paper).pages(placement, notes);
  }

  /** The pages of the map of a placement. */
  public List<Scene> pages(Placement placement, MapNotes notes) {
    return pages(placement, notes, Map.of());
  }

  /**
   * The pages of the map of a placement, with a mark where new foils lie on old lightener.
   *
   * @param onOldLightener by foil number, the part of the foil's strip whose hair was lightened
   *     before; foils without such a part are left out
   */
  public List<Scene> pages(
      Placement placement, MapNotes notes, Map<Integer, Region> onOldLightener) {
    return pages(DrawnPlan.of(head, placement), notes, onOldLightener);
  }

  /** The same for a placement that is ready for drawing on the same head. */
  public List<Scene> pages(DrawnPlan plan, MapNotes notes, Map<Integer, Region> onOldLightener) {
    List<Problem> pinned =
        plan.placement().problems().stream()
            .filter(p -> p.place().isPresent() && p.severity() != Severity.NOTE)
            .toList();
    return new Drawing(plan, notes, onOldLightener, pinned).pages();
  }

  /**
   * Each picture of the map by itself, for a screen that shows words and signs in its own way: five
   * sides and the unrolled scalp. A picture's name ends with its side, as in {@code view-back}.
   *
   * @param onOldLightener as in {@link #pages(Placement, MapNotes, Map)}
   * @param pinned problems that have a place, in the order of their pins
   */
  public List<Alone> pictures(
      Placement placement, Map<Integer, Region> onOldLightener, List<Problem> pinned) {
    return new Drawing(DrawnPlan.of(head, placement), NO_NOTES, onOldLightener, pinned).pictures();
  }

  /**
   * A picture that stands alone.
   *
   * @param drawn draws it, anew whenever asked; not from two threads at once
   */
  public record Alone(String id, String title, Supplier<Scene> drawn) {}

  /** The ground of the foils of a section, by its place in the pattern from 0. */
  public static Ink ground(int section) {
    return SectionStyle.of(section).tint();
  }

  /**
   * Where a point of the surface lies on a picture that stands alone.
   *
   * @param at millimetres of the picture, from its corner
   * @param facing how squarely the surface faces the viewer there: 1 squarely, 0 at the contour,
   *     below it turned away
   */
  public record Spot(Point at, double facing) {}

  /** Where a point of the surface lies on one of the {@link #pictures}. */
  public Spot spot(View view, Vector3 point) {
    Frame frame =
        alone.stream().filter(f -> f.picture().id().equals(view.words())).findFirst().orElseThrow();
    SurfaceLoops.At at = head.at(point);
    return new Spot(frame.at(at), frame.picture().facing(at));
  }

  private static Frame alone(Picture picture) {
    Box extent = picture.extent();
    return Frame.centred(
        picture,
        new Box(
            PICTURE_MARGIN_MM,
            PICTURE_MARGIN_MM,
            ALONE_SCALE * extent.width() + 2 * Frame.STRIP_MM,
            ALONE_SCALE * extent.height() + PICTURE_MARGIN_MM + Frame.CAPTION_MM),
        ALONE_SCALE);
  }

  /** One drawing; its scratch space. */
  private final class Drawing {
    private final Placement placement;
    private final MapNotes notes;
    private final List<String> slots;
    private final List<DrawnFoil> foils;
    private final DrawnPlan plan;
    private final List<Problem> pointed;
    private final Map<Integer, SurfaceLoops> overlaps = new TreeMap<>();
    private final Set<Integer> numbered = new HashSet<>();

    /** Slots of which some foil on the page is drawn wide enough to carry the line of its mix. */
    private final Set<Integer> lined = new HashSet<>();

    Drawing(
        DrawnPlan plan, MapNotes notes, Map<Integer, Region> onOldLightener, List<Problem> pinned) {
      this.plan = plan;
      this.placement = plan.placement();
      this.notes = notes;
      slots = plan.slots();
      foils = plan.foils();
      onOldLightener.forEach((number, region) -> overlaps.put(number, head.loops(region)));
      pointed = pinned;
    }

    List<Scene> pages() {
      Map<String, Map<DrawnFoil, Polygon>> seen = seen(frames);
      Map<Integer, String> homes = homes(seen);
      List<Mark> first = new ArrayList<>();
      List<Box> taken = new ArrayList<>();
      for (Frame frame : frames) {
        first.addAll(draw(frame, seen.get(frame.picture().id()), homes, taken));
      }
      boolean more =
          foils.size() > MOST_FOILS_ON_ONE_PAGE
              || foils.stream().anyMatch(f -> !numbered.contains(f.number()));
      List<Mark> second = new ArrayList<>();
      TextFlow flow = words();
      if (more || flow.pages() > 1) {
        if (flow.pages() == 1) {
          flow.nextPage();
        }
        lined.clear();
        second.addAll(draw(large, areas(large), homes, new ArrayList<>()));
        sections(flow);
      }
      List<List<Mark>> pages = new ArrayList<>();
      pages.add(first);
      if (!second.isEmpty()) {
        pages.add(second);
      }
      while (pages.size() < flow.pages()) {
        pages.add(new ArrayList<>());
      }
      flow.placed().forEach(p -> pages.get(p.page()).add(p.mark()));
      List<Scene> scenes = new ArrayList<>();
      for (int i = 0; i < pages.size(); i++) {
        pages.get(i).addAll(titles(i, pages.size()));
        pages.get(i).addAll(signs(pages.get(i)));
        pages.get(i).add(layout.scaleBox());
        scenes.add(scene(i, pages.size(), pages.get(i)));
      }
      return List.copyOf(scenes);
    }

    List<Alone> pictures() {
      Map<String, Map<DrawnFoil, Polygon>> seen = seen(alone);
      Map<Integer, String> homes = homes(seen);
      return alone.stream()
          .map(
              frame ->
                  new Alone(
                      "view-" + frame.picture().id(),
                      frame.picture().caption(),
                      () -> picture(frame, seen.get(frame.picture().id()), homes)))
          .toList();
    }

    private Scene picture(Frame frame, Map<DrawnFoil, Polygon> areas, Map<Integer, String> homes) {
      return new Scene(
          "view-" + frame.picture().id(),
          frame.picture().caption(),
          foils.size() + " foils, numbered in working order.",
          frame.cell().right() + PICTURE_MARGIN_MM,
          frame.cell().bottom() + PICTURE_MARGIN_MM,
          draw(frame, areas, homes, new ArrayList<>()));
    }

    private Map<String, Map<DrawnFoil, Polygon>> seen(List<Frame> from) {
      Map<String, Map<DrawnFoil, Polygon>> seen = new HashMap<>();
      for (Frame frame : from) {
        Map<DrawnFoil, Polygon> areas = areas(frame);
        areas.values().removeIf(area -> area.area() < LEAST_AREA_MM2);
        seen.put(frame.picture().id(), areas);
      }
      return seen;
    }

    private Map<DrawnFoil, Polygon> areas(Frame frame) {
      Map<DrawnFoil, Polygon> areas = new TreeMap<>(Comparator.comparing(DrawnFoil::number));
      foils.forEach(foil -> areas.put(foil, frame.area(foil.border())));
      return areas;
    }

    /** For each foil's number, the side from which most of it is seen. */
    private Map<Integer, String> homes(Map<String, Map<DrawnFoil, Polygon>> seen) {
      Map<Integer, String> homes = new HashMap<>();
      Map<Integer, Double> most = new HashMap<>();
      for (Frame frame : frames) {
        if (frame.picture() instanceof SideView) {
          String id = frame.picture().id();
          seen.get(id)
              .forEach(
                  (foil, area) -> {
                    if (area.area() > most.getOrDefault(foil.number(), 0.0)) {
                      most.put(foil.number(), area.area());
                      homes.put(foil.number(), id);
                    }
                  });
        }
      }
      return homes;
    }

    private Scene scene(int page, int of, List<Mark> marks) {
      String suffix = page == 0 ? "" : "-" + (page + 1);
      String title = "Map: " + notes.title() + (of > 1 ? ", page " + (page + 1) : "");
      String description =
          foils.size()
              + " foils in "
              + placement.sections().size()
              + " sections, numbered in working order, "
              + (page == 0
                  ? "on the head from the front, back, left, right and top and on the unrolled"
                      + " scalp."
                  : "on the unrolled scalp.");
      return layout.scene("map" + suffix, title, description, marks);
    }

    private List<Mark> titles(int page, int of) {
      return layout.titles(notes.title(), SheetLayout.subtitle(notes.subtitle(), page, of));
    }

    private List<Mark> draw(
        Frame frame, Map<DrawnFoil, Polygon> areas, Map<Integer, String> homes, List<Box> taken) {
      List<Mark> marks = new ArrayList<>(frame.ground(head));
      addGrounds(frame, marks);
      addPointers(frame, marks, taken);
      List<DrawnFoil> wanted = new ArrayList<>();
      areas.forEach(
          (foil, area) -> {
            marks.add(foil.mark(frame, area));
            if (foil.core(frame, area).isPresent()) {
              lined.add(foil.slot());
            }
            addOverlap(frame, foil, marks);
            wanted.add(foil);
          });
      String here = frame.picture().id();
      Predicate<DrawnFoil> atHome =
          foil -> !(frame.picture() instanceof SideView) || here.equals(homes.get(foil.number()));
      wanted.sort(
          Comparator.comparing((DrawnFoil foil) -> atHome.test(foil) ? 0 : 1)
              .thenComparing(DrawnFoil::number));
      Map<String, DrawnFoil> byLabel = new HashMap<>();
      List<LabelPlacer.Wish> wishes = new ArrayList<>();
      Polygon scalp = frame.area(head.scalp());
      for (DrawnFoil foil : wanted) {
        byLabel.put(foil.label(), foil);
        wishes.add(foil.wish(frame, areas.get(foil), scalp, atHome.test(foil)));
      }
      LabelPlacer.Result result = LabelPlacer.place(wishes, frame.strips(), taken, LABEL_GAP_MM);
      for (LabelPlacer.Placed placed : result.placed()) {
        DrawnFoil foil = byLabel.get(placed.name());
        taken.add(placed.box());
        numbered.add(foil.number());
        marks.add(foil.number(frame, placed));
      }
      return marks;
    }

    /** A dense black hatch over the part of a foil that lies on old lightener. */
    private void addOverlap(Frame frame, DrawnFoil foil, List<Mark> marks) {
      SurfaceLoops part = overlaps.get(foil.number());
      if (part == null) {
        return;
      }
      Curve hatch = overlapHatch(frame.area(part));
      if (!hatch.isEmpty()) {
        marks.add(
            new Mark(
                frame.id("overlap-" + foil.number()),
                Role.OVERLAP,
                Layer.LINES,
                "Foil " + foil.number() + " lies on old lightener here",
                Map.of("number", Integer.toString(foil.number())),
                List.of(Part.Shape.drawn(hatch, OVERLAP))));
      }
    }

    private static Curve overlapHatch(Polygon area) {
      return area.isEmpty()
          ? Curve.builder().build()
          : area.hatched(Math.toRadians(OVERLAP_DEG), OVERLAP_SPACING_MM);
    }

    private void addGrounds(Frame frame, List<Mark> marks) {
      for (DrawnPlan.Ground ground : plan.grounds()) {
        Polygon whole = frame.area(ground.whole());
        if (whole.area() < LEAST_AREA_MM2) {
          continue;
        }
        PlacedSection section = ground.section();
        List<Part> parts = new ArrayList<>();
        parts.add(Part.Shape.filled(whole.curve(), SheetInk.BACKGROUND));
        Polygon untouched = frame.area(ground.untouched());
        if (!untouched.isEmpty()) {
          parts.add(Part.Shape.filled(untouched.curve(), SheetInk.UNTOUCHED));
        }
        marks.add(
            new Mark(
                frame.id("background-" + (ground.place() + 1)),
                Role.BACKGROUND,
                Layer.SCALP,
                "Background of " + section.name(),
                Map.of("section", section.name()),
                parts));
      }
    }

    private void addPointers(Frame frame, List<Mark> marks, List<Box> obstacles) {
      for (int i = 0; i < pointed.size(); i++) {
        SurfaceLoops.At at = head.at(pointed.get(i).place().orElseThrow());
        if (frame.picture().facing(at) < LEAST_FACING_OF_A_POINTER) {
          continue;
        }
        Point tip = frame.at(at);
        List<Part> parts = pointer(tip, letter(i));
        obstacles.add(Pointer.box(tip));
        marks.add(
            new Mark(
                frame.id("problem-" + (i + 1)),
                Role.PROBLEM,
                Layer.NOTES,
                "To look at, " + letter(i) + ": " + pointed.get(i).message(),
                Map.of("code", pointed.get(i).code()),
                parts));
      }
    }

    private List<Part> pointer(Point tip, String letter) {
      return Pointer.parts(tip, letter);
    }

    private String letter(int i) {
      return i < 26 ? Character.toString('a' + i) : Integer.toString(i + 1);
    }

    private TextFlow words() {
      TextFlow flow = layout.words();
      flow.heading("Totals");
      notes.totals().forEach(total -> flow.figure(total.label(), total.value()));
      sections(flow);
      flow.heading("Before you start");
      notes.cautions().forEach(flow::paragraph);
      if (!pointed.isEmpty()) {
        flow.heading("Look at these first");
        for (int i = 0; i < pointed.size(); i++) {
          flow.paragraph(letter(i) + "  " + pointed.get(i).message());
        }
      }
      return flow;
    }

    private void sections(TextFlow flow) {
      flow.heading("Sections, in working order");
      Map<Integer, String> names = new LinkedHashMap<>();
      placement.sections().stream()
          .sorted(Comparator.comparingInt(Drawing::firstNumber))
          .forEach(
              section ->
                  names.merge(
                      section.index(), section.name(), (a, b) -> a.equals(b) ? a : a + ", " + b));
      names.forEach(
          (index, name) ->
              flow.legend(
                  box -> SectionStyle.of(index).parts(Polygon.of(box)),
                  name + ": " + range(index)));
      if (slots.size() > 1) {
        for (int slot = 0; slot < slots.size(); slot++) {
          int place = slot;
          flow.legend(
              box -> mixSample(box, place),
              "mix " + slots.get(slot) + (slot > 0 ? ", letter by the number" : ""));
        }
      }
    }

    private static int firstNumber(PlacedSection section) {
      return section.foils().stream().mapToInt(PlacedFoil::number).min().orElse(Integer.MAX_VALUE);
    }

    private List<Mark> signs(List<Mark> page) {
      List<SheetLayout.Sign> signs = new ArrayList<>();
      signs.add(SheetLayout.Sign.filled(SheetInk.BACKGROUND, "background"));
      signs.add(SheetLayout.Sign.filled(SheetInk.UNTOUCHED, "section, not reached"));
      signs.add(SheetLayout.Sign.filled(SheetInk.SCALP, "not in a section"));
      if (plan.isRooted()) {
        signs.add(new SheetLayout.Sign(DrawnFoil::softSample, "soft end: off the scalp"));
      }
      signs.add(SheetLayout.Sign.line(SheetInk.ZONE_BORDER, "zone border"));
      if (head.partLine().isPresent()) {
        signs.add(SheetLayout.Sign.line(SheetInk.PART_LINE, "part line"));
      }
      if (page.stream().anyMatch(m -> m.role() == Role.OVERLAP)) {
        signs.add(new SheetLayout.Sign(Drawing::overlapSample, "on old lightener"));
      }
      return layout.signs(signs, SheetLayout.unrolledNote(head));
    }

    private String range(int index) {
      List<Integer> numbers =
          placement.foils().stream()
              .filter(f -> f.sectionIndex() == index)
              .map(PlacedFoil::number)
              .sorted()
              .toList();
      if (numbers.isEmpty()) {
        return "no foil";
      }
      StringBuilder text = new StringBuilder();
      int from = numbers.get(0);
      for (int i = 0; i < numbers.size(); i++) {
        boolean ends = i + 1 == numbers.size() || numbers.get(i + 1) != numbers.get(i) + 1;
        if (ends) {
          text.append(text.isEmpty() ? "" : ", ").append(from);
          if (numbers.get(i) > from) {
            text.append('\u2013').append(numbers.get(i));
          }
          from = i + 1 < numbers.size() ? numbers.get(i + 1) : from;
        }
      }
      return text.toString();
    }

    private static List<Part> overlapSample(Box box) {
      return List.of(
          Part.Shape.drawn(Curve.rectangle(box), Pen.of(Ink.BLACK, LineWeight.FINE)),
          Part.Shape.drawn(overlapHatch(Polygon.of(box)), OVERLAP));
    }

    private List<Part> mixSample(Box box, int slot) {
      List<Part> parts = new ArrayList<>();
      parts.add(Part.Shape.drawn(Curve.rectangle(box), Pen.of(Ink.BLACK, LineWeight.FINE)));
      if (lined.contains(slot)) {
        DrawnFoil.core(slot, LineWeight.MEDIUM)
            .ifPresent(pen -> parts.add(Part.Shape.drawn(SheetLayout.Sign.acrossOf(box), pen)));
      } else if (slot > 0) {
        parts.add(Part.Lettering.centred(slots.get(slot), box.centre(), TextSize.SMALL, Ink.BLACK));
      }
      return parts;
    }
  }

  /** A pin that points at a place, with a letter. */
  private static final class Pointer {
    private static final double SIZE_MM = 4;
    private static final double TIP_MM = 1.6;

    static Box box(Point tip) {
      return new Box(tip.x() - SIZE_MM / 2, tip.y() - TIP_MM - SIZE_MM, SIZE_MM, SIZE_MM + TIP_MM);
    }

    static List<Part> parts(Point tip, String letter) {
      double half = SIZE_MM / 2;
      Curve pin =
          Curve.polygon(
              List.of(
                  tip,
                  tip.plus(-half, -TIP_MM),
                  tip.plus(-half, -TIP_MM - SIZE_MM),
                  tip.plus(half, -TIP_MM - SIZE_MM),
                  tip.plus(half, -TIP_MM)));
      return List.of(
          Part.Shape.of(pin, Ink.PAPER, Pen.of(Ink.BLACK, LineWeight.STRONG)),
          Part.Lettering.centred(letter, tip.plus(0, -TIP_MM - half), TextSize.SMALL, Ink.BLACK));
    }
  }
}
