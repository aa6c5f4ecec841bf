package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import foilwright.app.DocumentKind;
import foilwright.app.Draft;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Patterns made and changed from their first section to their last on the page. */
class PatternMakingTest extends PageTrial {
  private static Locator form(Page page, String name) {
    return page.getByRole(AriaRole.FORM, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private static Locator in(Locator form, String label) {
    return form.getByLabel(label, new Locator.GetByLabelOptions().setExact(true));
  }

  private static void make(Page page, String title, String begin) {
    page.getByText("New pattern", new Page.GetByTextOptions().setExact(true)).click();
    page.getByLabel("Title", new Page.GetByLabelOptions().setExact(true)).first().fill(title);
    page.getByLabel("Begin with").selectOption(begin);
    button(page, "Make pattern").click();
    assertThat(page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setLevel(1)))
        .hasText(title);
  }

  /** Opens everything that a section says. */
  private static Locator all(Page page, int section, String name) {
    if (!page.locator("#card-" + section + " > details").evaluate("d => d.open").equals(true)) {
      openCard(page, section);
    }
    if (!page.locator("#more-" + section).evaluate("d => d.open").equals(true)) {
      page.locator("#more-" + section + " > summary").click();
    }
    return form(page, "All of " + name);
  }

  /** Types or chooses, and waits until the page says that it is saved. */
  private static void put(Page page, Locator field, String value) {
    page.evaluate("document.getElementById('said').textContent = ''");
    if (field.evaluate("f => f.tagName").equals("SELECT")) {
      field.selectOption(value);
    } else {
      field.fill(value);
      field.press("Tab");
    }
    assertThat(said(page)).containsText("Changed and saved.");
  }

  private static void press(Page page, Locator button) {
    page.evaluate("document.getElementById('said').textContent = ''");
    button.click();
    assertThat(said(page)).not().isEmpty();
  }

  private static int foils(Page page) {
    return page.locator("tr[data-number]").count();
  }

  private void addSection(Page page, String shape, String place) {
    page.getByLabel("New section").selectOption(shape);
    page.getByLabel("where", new Page.GetByLabelOptions().setExact(true)).selectOption(place);
    press(page, button(page, "Add section"));
  }

  private static void tick(Page page, Locator form, String label) {
    page.evaluate("document.getElementById('said').textContent = ''");
    in(form, label).check();
    assertThat(said(page)).containsText("Changed and saved.");
  }

  private static void card(Page page, String section, String label, String value) {
    put(page, field(page, section, label), value);
  }

  @Test
  void everyShapeCanBeginAPattern() {
    Page page = open();
    for (String shape : PatternForm.SHAPES) {
      make(page, "Begun with " + shape, shape);
      assertThat(page.locator(".card")).hasCount(1);
      assertTrue(foils(page) > 0, shape + " gives no foil");
      assertThat(page.locator(".card")).hasCount(1);
    }
  }

  @Test
  void aShippedPatternCanBeBegunFromAndStaysAsItIs() {
    Page page = open();
    int shipped = foils(page);
    make(page, "My own rim", "dark-rim");
    assertEquals(shipped, foils(page));
    assertTrue(page.url().contains("pattern=my-own-rim"), page.url());
    assertTrue(Files.exists(folder.resolve("patterns/my-own-rim.json")));
    assertFalse(Files.exists(folder.resolve("patterns/dark-rim.json")));
  }

  /** The interior halo with a dark rim, built section by section as a person would. */
  @Test
  void theInteriorHaloCanBeBuiltFromNothing() throws IOException {
    Page page = open();
    int shipped = foils(page);
    make(page, "Bright inside", "diagonal");
    Locator back = all(page, 0, "whole scalp");
    tick(page, back, "back upper left");
    put(page, in(back, "Name"), "back left");
    back = all(page, 0, "back left");
    put(page, in(back, "Above"), "occipital line");
    tick(page, back, "The same on the other side");
    put(page, in(back, "Kind of background"), "wedge");
    put(page, in(back, "Foils in a slice"), "one, centred");
    card(page, "back left", "Number of slices", "2");
    card(page, "back left", "Slice, mm", "12");
    card(page, "back left", "Background, mm", "22");
    card(page, "back left", "Lower end", "centre");
    card(page, "back left", "Inset from hairline, mm", "32");
    card(page, "back left", "Before the first slice, mm", "18");
    press(page, back.getByText("Zigzag before it"));
    put(page, in(back, "Pick 1: depth, mm"), "12");
    put(page, in(back, "Product begins from the scalp, mm"), "10");
    shoot(page, "making-section");

    addSection(page, "V", "crown");
    Locator crown = all(page, 1, "crown");
    put(page, in(crown, "Work starts at"), "back");
    tick(page, crown, "back left");
    put(page, in(crown, "Foils in a slice"), "one, centred");
    card(page, "crown", "Number of slices", "1");
    card(page, "crown", "Slice, mm", "12");
    card(page, "crown", "Inset from hairline, mm", "32");
    card(page, "crown", "Before the first slice, mm", "14");

    addSection(page, "diagonal", "front side left");
    Locator side = all(page, 2, "front side left");
    put(page, in(side, "Above"), "start of back left");
    tick(page, side, "The same on the other side");
    put(page, in(side, "Foils in a slice"), "one, centred");
    put(page, in(side, "Short ends are"), "drop");
    put(page, in(side, "Short is below, mm"), "15");
    card(page, "front side left", "Number of slices", "1");
    card(page, "front side left", "Slice, mm", "12");
    card(page, "front side left", "Angle from level, degrees", "25");
    card(page, "front side left", "Inset from hairline, mm", "32");

    addSection(page, "horizontal", "top");
    Locator top = all(page, 3, "top");
    put(page, in(top, "Work starts at"), "back");
    put(page, in(top, "Foils in a slice"), "one, centred");
    card(page, "top", "Number of slices", "1");
    card(page, "top", "Slice, mm", "12");
    card(page, "top", "Inset from hairline, mm", "32");
    card(page, "top", "Before the first slice, mm", "10");

    addSection(page, "horizontal", "fringe");
    Locator fringe = all(page, 4, "fringe");
    tick(page, fringe, "top left");
    tick(page, fringe, "top right");
    put(page, in(fringe, "Within a shape"), "box");
    put(page, in(fringe, "Box: width, mm"), "112");
    put(page, in(fringe, "Work starts at"), "front");
    put(page, in(fringe, "Kept cover at the hairline, mm"), "27");
    put(page, in(fringe, "Foils in a slice"), "2");
    card(page, "fringe", "Number of slices", "1");
    card(page, "fringe", "Slice, mm", "10");
    card(page, "fringe", "Before the first slice, mm", "10");

    assertThat(page.locator("tr[data-number]")).hasCount(shipped);
    assertThat(page.locator(".look.error")).hasCount(0);
    checkAccess(page, ".order");
    shoot(page, "making-halo");
  }

  @Test
  void sectionsAreMovedDoubledRenamedAndTakenOutAndAllOfItBack() {
    Page page = open();
    Locator names = page.locator(".card-name");
    List<String> before = names.allTextContents();
    Locator form = all(page, 3, "joining row");
    press(page, form.getByText("Move up"));
    assertThat(names.nth(2)).hasText("joining row");
    assertThat(page.locator("#do-up-2")).isFocused();
    press(page, page.locator("#do-down-2"));
    assertEquals(before, names.allTextContents());
    press(page, page.locator("#do-copy-3"));
    assertThat(names.nth(4)).hasText("joining row 2");
    press(page, page.locator("#do-remove-3"));
    assertThat(names).hasCount(before.size());
    Locator first = all(page, 0, "back left");
    put(page, in(first, "Name"), "low left");
    assertThat(page.locator("#card-2 > details #" + "more-2")).hasCount(1);
    Locator third = all(page, 2, "left side");
    assertThat(in(third, "Above")).hasValue("start of low left");
    while (button(page, "Undo").isEnabled()) {
      press(page, button(page, "Undo"));
    }
    assertEquals(before, names.allTextContents());
  }

  @Test
  void whatOthersReferToIsNotTakenOut() {
    Page page = open();
    all(page, 0, "back left");
    press(page, page.locator("#do-remove-0"));
    assertThat(page.getByRole(AriaRole.ALERT).first())
        .containsText(Pattern.compile("Not changed.*back left"));
    assertThat(page.locator(".card")).hasCount(5);
  }

  @Test
  void aFieldThatCannotStandIsToldAtItsPlaceAndTheRestIsSaved() {
    Page page = open();
    Locator form = all(page, 0, "back left");
    in(form, "Mix").fill("Q");
    in(form, "Mix").press("Tab");
    assertThat(in(form, "Mix")).hasAttribute("aria-invalid", "true");
    assertThat(in(form, "Mix")).hasValue("Q");
    assertThat(in(form, "Mix")).hasAccessibleDescription(Pattern.compile("A, B"));
  }

  @Test
  void lengthsAreTakenAsFractionsOfAnInchAndInCentimetres() {
    assertEquals("21.5 in", LengthUnit.INCH.withUnit("21 1/2"));
    assertEquals("21.5 in", LengthUnit.MM.withUnit("21 1/2 in"));
    assertEquals("0.125 in", LengthUnit.INCH.withUnit("1/8"));
    assertEquals("3.75 in", LengthUnit.INCH.withUnit("3\u00be"));
    assertEquals("54.5 cm", LengthUnit.CM.withUnit("54,5"));
    assertEquals("540 mm", LengthUnit.CM.withUnit("540 mm"));
  }

  @Test
  void everythingOfASectionHasAFieldAndNoBarrier() throws IOException {
    inEachDress(
        "making",
        "",
        page -> {
          page.getByText("New pattern", new Page.GetByTextOptions().setExact(true)).click();
          all(page, 0, "back left");
        },
        ".top",
        ".order");
  }

  /** Whatever a shipped pattern says is shown by some field with its own value. */
  @Test
  void everyValueOfAShippedPatternIsInAField() throws IOException {
    Map<String, String> onCards =
        Map.of("slices", "", "offset", "", "insetFromHairline", "", "angle", "", "lowerEnd", "");
    for (Path file : patterns()) {
      Draft draft = Draft.of(DocumentKind.PATTERN, Files.readAllBytes(file)).orElseThrow();
      Draft tidy = Draft.of(draft.pattern().orElseThrow());
      List<String> keys =
          PatternForm.of(tidy, LengthUnit.MM).groups().stream()
              .flatMap(g -> g.fields().stream())
              .map(FormField::key)
              .toList();
      for (String leaf : leaves(tidy, "")) {
        String last = leaf.substring(leaf.lastIndexOf('.') + 1).replaceAll("\\[\\d+\\]", "");
        boolean shown =
            onCards.containsKey(last)
                || leaf.equals("format")
                || keys.stream()
                    .anyMatch(
                        k ->
                            k.equals(leaf)
                                || k.startsWith(leaf + " ")
                                || leaf.startsWith(k + "[")
                                || k.startsWith(leaf.replaceAll("\\[\\d+\\]$", "") + " "))
                || last.equals("inFrontOf")
                || last.equals("behind")
                || last.equals("slice")
                || last.equals("background")
                || last.equals("wedge");
        assertTrue(shown, file + ": no field for " + leaf);
      }
    }
  }

  private static List<Path> patterns() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("patterns"))) {
      return files.filter(f -> f.toString().endsWith(".json")).toList();
    }
  }

  private static List<String> leaves(Draft draft, String path) {
    List<String> leaves = new ArrayList<>();
    for (String key : draft.keys(path)) {
      String at = path.isEmpty() ? key : path + "." + key;
      Object value = draft.find(at).orElseThrow();
      if (value instanceof Map<?, ?>) {
        leaves.addAll(leaves(draft, at));
      } else if (value instanceof List<?> list && list.stream().anyMatch(Map.class::isInstance)) {
        for (int i = 0; i < list.size(); i++) {
          String item = at + "[" + i + "]";
          leaves.addAll(list.get(i) instanceof Map<?, ?> ? leaves(draft, item) : List.of(item));
        }
      } else {
        leaves.add(at);
      }
    }
    return leaves;
  }
}
