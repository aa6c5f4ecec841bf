package foilwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.drawing.Box;
import foilwright.drawing.Ink;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.png.PngWriter;
import foilwright.drawing.svg.SvgLetters;
import foilwright.drawing.svg.SvgWriter;
import foilwright.geometry.surface.Region;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TimeZone;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class MapSheetTest {
  private static final Head HEAD = SampleMaps.head(HeadKind.WOMAN);
  private static final DrawnHead DRAWN = DrawnHead.of(HEAD);
  private static final MapSheet SHEET = MapSheet.on(DRAWN, Paper.A4);
  private static final Placement PLACEMENT = SampleMaps.place("diagonals-back", HEAD);

  private static Scene page() {
    return SHEET.pages(PLACEMENT, SampleMaps.notes(PLACEMENT)).get(0);
  }

  private static List<Mark> marks(Scene page, Role role) {
    return page.marks().stream().filter(m -> m.role() == role).toList();
  }

  private static Mark mark(Scene page, String id) {
    return page.marks().stream().filter(m -> m.id().equals(id)).findFirst().orElseThrow();
  }

  @Test
  void sameBytesAgainAndInAnyLocaleAndTimeZone() {
    String expected = SvgWriter.write(page(), SvgLetters.EMBEDDED);
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
      Scene again = MapSheet.build(DRAWN, PLACEMENT, SampleMaps.notes(PLACEMENT), Paper.A4).get(0);
      assertEquals(expected, SvgWriter.write(again, SvgLetters.EMBEDDED));
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void aFoilIsFoundByItsNumberInEveryPictureThatShowsIt() {
    Scene page = page();
    assertEquals(
        PLACEMENT.foils().size(),
        marks(page, Role.FOIL).stream()
            .filter(m -> m.id().startsWith("unrolled-"))
            .map(m -> m.data().get("number"))
            .distinct()
            .count());
    for (Mark foil : marks(page, Role.FOIL)) {
      int number = Integer.parseInt(foil.data().get("number"));
      assertEquals(PLACEMENT.foils().get(number - 1).section(), foil.data().get("section"));
      assertTrue(foil.id().endsWith("foil-" + number));
      assertTrue(foil.title().startsWith("Foil " + number + ", "), foil.title());
    }
  }

  @Test
  void foilsOfTheLeftAreNotSeenFromTheRight() {
    Scene page = page();
    Set<String> left = sections(page, "left-foil");
    Set<String> right = sections(page, "right-foil");
    assertTrue(left.contains("left side") && !left.contains("right side"), left.toString());
    assertTrue(right.contains("right side") && !right.contains("left side"), right.toString());
    assertTrue(
        centre(page, "top-foil-", "left side") < centre(page, "top-foil-", "right side"),
        "from above the client's right is on the right");
    assertTrue(
        centre(page, "front-foil-", "left side") > centre(page, "front-foil-", "right side"),
        "facing the client, the right is on the left");
  }

  private static Set<String> sections(Scene page, String prefix) {
    return marks(page, Role.FOIL).stream()
        .filter(m -> m.id().startsWith(prefix))
        .map(m -> m.data().get("section"))
        .collect(Collectors.toSet());
  }

  private static double centre(Scene page, String prefix, String section) {
    return marks(page, Role.FOIL).stream()
        .filter(m -> m.id().startsWith(prefix) && m.data().get("section").equals(section))
        .mapToDouble(m -> m.bounds().centre().x())
        .average()
        .orElseThrow();
  }

  @Test
  void everyPictureSaysLeftAndRight() {
    Scene page = page();
    for (String picture : List.of("front", "back", "left", "right", "top", "unrolled")) {
      String words =
          mark(page, picture + "-caption").parts().stream()
              .map(p -> ((Part.Lettering) p).text())
              .collect(Collectors.joining(" "));
      assertTrue(words.matches(".*\\bL\\b.*") && words.matches(".*\\bR\\b.*"), words);
    }
  }

  @Test
  void foilsLieInsideTheOutlineOfTheHead() {
    Scene page = page();
    for (String picture : List.of("front", "back", "left", "right", "top")) {
      Box head = mark(page, picture + "-outline").bounds().grown(0.3);
      for (Mark foil : marks(page, Role.FOIL)) {
        if (foil.id().startsWith(picture + "-")) {
          assertTrue(head.contains(foil.bounds()), foil.id());
        }
      }
    }
  }

  @Test
  void aProblemIsPointedAtInItsPlace() {
    Problem problem =
        Problem.warning("thick", "", "Too thick here.", "Make it thinner.")
            .at(PLACEMENT.foils().get(0).centre());
    Placement told = new Placement(PLACEMENT.sections(), PLACEMENT.foils(), List.of(problem));
    Scene page = SHEET.pages(told, SampleMaps.notes(told)).get(0);
    Mark pointer = mark(page, "unrolled-problem-1");
    Mark foil = mark(page, "unrolled-foil-1");
    assertTrue(pointer.title().contains("Too thick here."));
    assertTrue(
        foil.bounds()
            .grown(0.01)
            .contains(
                new foilwright.drawing.Point(
                    pointer.bounds().centre().x(), pointer.bounds().bottom())),
        "the tip of the pin lies on the foil");
  }

  @Test
  void foilsOnOldLightenerAreHatchedWhereTheyLieOnIt() {
    Map<Integer, Region> old =
        Map.of(2, PLACEMENT.foils().get(1).region(), 5, PLACEMENT.foils().get(4).region());
    Scene page = SHEET.pages(PLACEMENT, SampleMaps.notes(PLACEMENT), old).get(0);
    assertEquals(
        Set.of("2", "5"),
        marks(page, Role.OVERLAP).stream()
            .map(m -> m.data().get("number"))
            .collect(Collectors.toSet()));
    for (Mark hatch : marks(page, Role.OVERLAP)) {
      Box foil = mark(page, hatch.id().replace("overlap", "foil")).bounds();
      assertTrue(foil.grown(0.01).contains(hatch.bounds()), hatch.id());
    }
    assertTrue(saysOnOldLightener(page), "the hatch is explained");
    assertFalse(saysOnOldLightener(page()), "nothing is explained that is not there");
  }

  private static boolean saysOnOldLightener(Scene page) {
    return marks(page, Role.LEGEND).stream()
        .flatMap(m -> m.parts().stream())
        .anyMatch(p -> p instanceof Part.Lettering l && l.text().equals("on old lightener"));
  }

  @Test
  void theLegendShowsTheLineOfAMixOnlyWhereSomeFoilCarriesIt() {
    assertEquals(0, lines(SampleMaps.pages("fringe-veil", HeadKind.WOMAN).get(0), "mix C"));
    assertEquals(
        1, lines(SampleMaps.pages("full-head-fine-weave", HeadKind.WOMAN).get(0), "mix B"));
  }

  /** Open lines in the sample of a legend line. */
  private static long lines(Scene page, String start) {
    Mark legend =
        marks(page, Role.LEGEND).stream()
            .filter(
                m ->
                    m.parts().stream()
                        .anyMatch(p -> p instanceof Part.Lettering l && l.text().startsWith(start)))
            .findFirst()
            .orElseThrow();
    return legend.parts().stream()
        .filter(p -> p instanceof Part.Shape && p.bounds().height() == 0)
        .count();
  }

  @Test
  void everyPageHasTheScaleBox() {
    Placement many = SampleMaps.place("full-head-fine-weave", HEAD);
    List<Problem> problems = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      problems.add(
          Problem.warning("thick", "", "Too thick here, place " + i + ".", "Make it thinner.")
              .at(many.foils().get(i).centre()));
    }
    List<Scene> pages =
        SHEET.pages(new Placement(many.sections(), many.foils(), problems), SampleMaps.notes(many));
    assertTrue(pages.size() > 1);
    for (Scene page : pages) {
      assertEquals(50, mark(page, "scale-box").parts().get(0).bounds().width(), 1e-9);
    }
  }

  @Test
  void theScaleBoxIsFiftyMillimetresInTheRenderedPicture() throws Exception {
    Scene page = page();
    Box box = mark(page, "scale-box").parts().get(0).bounds();
    assertEquals(50, box.width(), 1e-9);
    double pixelsPerMm = 16;
    byte[] png = PngWriter.write(page, pixelsPerMm);
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
    assertEquals(297 * pixelsPerMm, image.getWidth(), 1);
    int row = (int) Math.round(box.centre().y() * pixelsPerMm);
    int middle = (int) Math.round(box.centre().x() * pixelsPerMm);
    int left = edge(image, row, middle, -1);
    int right = edge(image, row, middle, 1);
    assertEquals(50 * pixelsPerMm, right - left, 1.01);
  }

  private static int edge(BufferedImage image, int row, int from, int step) {
    int x = from;
    while ((image.getRGB(x, row) & 0xff) > 128) {
      x += step;
    }
    return x;
  }

  @Test
  void inksStandApartInGreyPrint() {
    Set<SectionStyle> seen = new HashSet<>();
    for (int section = 0; section < 56; section++) {
      SectionStyle style = SectionStyle.of(section);
      assertTrue(seen.add(style), "section " + section + " looks like another");
      assertTrue(style.tint().contrast(Ink.BLACK) >= 7, "number on foil " + section);
      assertTrue(
          style.tint().contrast(SheetInk.BACKGROUND) >= 1.4, "foil on background " + section);
      assertNotEquals(
          style.hatchDegrees(), SectionStyle.of(section + 1).hatchDegrees(), "hatch " + section);
    }
    assertEquals(
        8,
        IntStream.range(0, 8).mapToObj(i -> SectionStyle.of(i).hatchDegrees()).distinct().count());
    assertTrue(SheetInk.BACKGROUND.contrast(SheetInk.UNTOUCHED) >= 1.5);
    assertTrue(SheetInk.UNTOUCHED.contrast(SheetInk.SCALP) >= 1.2);
    assertTrue(SheetInk.BACKGROUND.contrast(Ink.PAPER) >= 2.2);
    for (Ink text : List.of(SheetInk.QUIET, SheetInk.ACCENT, Ink.BLACK)) {
      assertTrue(text.contrast(Ink.PAPER) >= 4.5);
    }
  }
}
