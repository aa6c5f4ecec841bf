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
import foilwright.drawing.Polygon;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.SurfaceLoops;
import foilwright.pattern.Pattern;
import foilwright.pattern.Section;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Sheets for practice: the head without foils, to draw the partings on and plan; and the same with
 * the planned partings, to compare. Paper across.
 */
public final class PracticeSheet {
  private static final double LEAST_AREA_MM2 = 0.4;
  private static final double LABEL_MM = 20;
  private static final double LABEL_GAP_MM = 0.3;
  private static final int BLANK_SECTIONS = 3;
  private static final Pen PARTING = Pen.of(Ink.BLACK, LineWeight.MEDIUM);

  private final DrawnPlan plan;
  private final SheetLayout layout;

  private PracticeSheet(DrawnPlan plan, Paper paper) {
    this.plan = plan;
    this.layout = new SheetLayout(paper);
  }

  /** The head without foils and lines to write the plan on. */
  public static Scene blank(DrawnPlan plan, String title, String subtitle, Paper paper) {
    return new PracticeSheet(plan, paper).blank(title, subtitle);
  }

  /**
   * The planned partings with the foils' numbers, and what was planned; a second page shows the
   * unrolled scalp large where the words or the numbers find no room on the first.
   */
  public static List<Scene> answer(DrawnPlan plan, Pattern pattern, String subtitle, Paper paper) {
    return new PracticeSheet(plan, paper).answer(pattern, subtitle);
  }

  private Scene blank(String title, String subtitle) {
    List<Mark> marks = new ArrayList<>(layout.titles(title + ": practice", subtitle));
    for (Frame frame : layout.frames(plan.head())) {
      marks.addAll(frame.ground(plan.head()));
    }
    TextFlow flow = layout.words();
    flow.blank("learner", LABEL_MM);
    flow.blank("date", LABEL_MM);
    for (int i = 1; i <= BLANK_SECTIONS; i++) {
      flow.heading("Section " + i);
      for (String label :
          List.of("where", "partings", "lower end", "slice", "background", "foils")) {
        flow.blank(label, LABEL_MM);
      }
    }
    flow.placed().stream().filter(p -> p.page() == 0).forEach(p -> marks.add(p.mark()));
    marks.addAll(signs(List.of()));
    marks.add(layout.scaleBox());
    return layout.scene(
        "blank",
        "Practice: " + title,
        "The head without foils from five sides and unrolled, with lines to write a plan on.",
        marks);
  }

  private List<Mark> signs(List<SheetLayout.Sign> first) {
    List<SheetLayout.Sign> signs = new ArrayList<>(first);
    signs.add(SheetLayout.Sign.line(SheetInk.HAIRLINE, "hairline"));
    signs.add(SheetLayout.Sign.line(SheetInk.ZONE_BORDER, "zone border"));
    if (plan.head().partLine().isPresent()) {
      signs.add(SheetLayout.Sign.line(SheetInk.PART_LINE, "part line"));
    }
    return layout.signs(signs, SheetLayout.unrolledNote(plan.head()));
  }

  private List<Scene> answer(Pattern pattern, String subtitle) {
    TextFlow flow = layout.words();
    Map<Integer, List<PlacedFoil>> foils = new LinkedHashMap<>();
    plan.placement()
        .foils()
        .forEach(f -> foils.computeIfAbsent(f.sectionIndex(), k -> new ArrayList<>()).add(f));
    foils.forEach(
        (index, placed) -> {
          Optional<Section> section = pattern.sections().stream().skip(index).findFirst();
          flow.heading(names(index));
          flow.entry("foils", StepSheet.numbers(placed), LABEL_MM);
          flow.entry("partings", placed.get(0).shape() + ", " + Lesson.angle(placed), LABEL_MM);
          flow.entry("slice", Lesson.slice(placed), LABEL_MM);
          flow.entry("background", Lesson.background(placed, section), LABEL_MM);
        });
    List<Scene> scenes = new ArrayList<>();
    Set<Integer> numbered = new HashSet<>();
    for (int page = 0;
        page < flow.pages() || (page == 1 && numbered.size() < plan.foils().size());
        page++) {
      int here = page;
      List<Mark> marks = new ArrayList<>();
      String words = subtitle + (page > 0 ? ", page " + (page + 1) : "");
      marks.addAll(layout.titles(pattern.title() + ": answer", words));
      if (page == 0) {
        List<Box> taken = new ArrayList<>();
        for (Frame frame : layout.frames(plan.head())) {
          marks.addAll(draw(frame, taken, numbered));
        }
        marks.add(layout.scaleBox());
      } else {
        marks.addAll(draw(layout.large(plan.head().flat()), new ArrayList<>(), numbered));
      }
      marks.addAll(
          signs(
              List.of(
                  SheetLayout.Sign.line(PARTING, "parting"),
                  SheetLayout.Sign.filled(SheetInk.UNTOUCHED, "section"))));
      flow.placed().stream().filter(p -> p.page() == here).forEach(p -> marks.add(p.mark()));
      scenes.add(
          layout.scene(
              "answer" + (page == 0 ? "" : "-" + (page + 1)),
              "Answer: " + pattern.title(),
              "The planned partings of " + plan.foils().size() + " foils on the head.",
              marks));
    }
    return List.copyOf(scenes);
  }

  private String names(int index) {
    return plan.placement().sections().stream()
        .filter(s -> s.index() == index)
        .map(PlacedSection::name)
        .reduce((a, b) -> a + ", " + b)
        .orElse("");
  }

  private List<Mark> draw(Frame frame, List<Box> taken, Set<Integer> numbered) {
    List<Mark> marks = new ArrayList<>(frame.ground(plan.head()));
    for (DrawnPlan.Ground ground : plan.grounds()) {
      Polygon whole = frame.area(ground.whole());
      if (whole.area() >= LEAST_AREA_MM2) {
        marks.add(
            Mark.plain(
                frame.id("section-" + (ground.place() + 1)),
                Role.BACKGROUND,
                Layer.SCALP,
                Part.Shape.filled(whole.curve(), SheetInk.UNTOUCHED)));
      }
      Curve.Builder lines = Curve.builder();
      for (List<SurfaceLoops.At> parting : ground.partings()) {
        lines.every(frame.line(parting));
      }
      Curve drawn = lines.build();
      if (!drawn.isEmpty()) {
        marks.add(
            new Mark(
                frame.id("partings-" + (ground.place() + 1)),
                Role.PARTING,
                Layer.FOILS,
                "Partings of " + ground.section().name(),
                Map.of("section", ground.section().name()),
                List.of(Part.Shape.drawn(drawn, PARTING))));
      }
    }
    Map<String, DrawnFoil> byLabel = new HashMap<>();
    List<LabelPlacer.Wish> wishes = new ArrayList<>();
    Polygon scalp = frame.area(plan.head().scalp());
    for (DrawnFoil foil : plan.foils()) {
      Polygon area = frame.area(foil.border());
      if (area.area() >= LEAST_AREA_MM2) {
        marks.add(
            new Mark(
                frame.id("slice-" + foil.number()),
                Role.FOIL,
                Layer.BACKGROUND,
                "Foil " + foil.number() + ", " + foil.foil().section(),
                Map.of("number", Integer.toString(foil.number())),
                List.of(Part.Shape.filled(area.curve(), Ink.PAPER))));
        byLabel.put(foil.label(), foil);
        wishes.add(foil.wish(frame, area, scalp, frame.picture() instanceof FlatMap));
      }
    }
    for (LabelPlacer.Placed placed :
        LabelPlacer.place(wishes, frame.strips(), taken, LABEL_GAP_MM).placed()) {
      taken.add(placed.box());
      numbered.add(byLabel.get(placed.name()).number());
      marks.add(byLabel.get(placed.name()).plainNumber(frame, placed));
    }
    return marks;
  }
}
