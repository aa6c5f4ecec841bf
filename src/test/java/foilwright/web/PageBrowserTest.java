package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The page as a person uses it. */
class PageBrowserTest extends PageTrial {
  @Test
  void opensPlannedWithFiguresAndCautionsInSight() throws IOException {
    Page page = open();
    assertThat(page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setLevel(1)))
        .hasText("Bright inside, dark rim");
    Locator figures =
        page.getByRole(AriaRole.REGION, new Page.GetByRoleOptions().setName("Figures of the plan"));
    for (String label :
        List.of("Foils", "Placing", "Chair", "First due", "Last safe", "Mix", "Free gap")) {
      assertThat(figures).containsText(label);
    }
    assertThat(page.locator("tr[data-number]")).hasCount(11);
    assertThat(page.locator(".clock .cautions")).isVisible();
    assertThat(page.locator(".mix .cautions")).isVisible();
    page.mouse().wheel(0, 3000);
    assertThat(figures).isInViewport();
    shoot(page, "wide-light");
    assertThat(page.locator(".handle[data-key=part]")).hasCount(1);
    List<?> came =
        (List<?>)
            page.evaluate(
                "[...performance.getEntriesByType('navigation'),"
                    + " ...performance.getEntriesByType('resource')]"
                    + ".map(e => [e.encodedBodySize, e.name])");
    int weight = came.stream().mapToInt(e -> (Integer) ((List<?>) e).get(0)).sum();
    assertTrue(weight > 50_000 && weight < 400_000, weight + " bytes: " + came);
    assertFalse(came.toString().contains("three"), "3D comes when it is first used");
  }

  @Test
  void hasNoBarrierInAnyDress() throws IOException {
    inEachDress("page", "", page -> openCard(page, 0));
  }

  /** A box to tick or a choice to make is pressed by its whole label. */
  @Test
  void whatIsPressedIsLargeEnough() {
    Page page = open(360, 800, ColorScheme.LIGHT);
    openCard(page, 0);
    Object small =
        page.evaluate(
            "[...document.querySelectorAll('button, select, summary, input:not([type=hidden])')]"
                + ".map(e => [e.outerHTML.slice(0, 80), (e.closest('label') ?? e).getBoundingClientRect()])"
                + ".filter(([, r]) => r.width > 0 && (r.height < 44 || r.width < 44))"
                + ".map(([html, r]) => html + ' ' + r.width + ' x ' + r.height)");
    assertEquals(List.of(), small);
  }

  @Test
  void anyViewCanBeMadeLargeByMouseAndByKey() {
    Page page = open();
    Locator large = page.locator(".view.large");
    assertThat(large).hasAttribute("data-view", "view-back");
    page.locator("[data-view=view-top] svg").click();
    assertThat(large).hasAttribute("data-view", "view-top");
    button(page, "Front").focus();
    page.keyboard().press("Enter");
    assertThat(large).hasAttribute("data-view", "view-front");
    assertThat(button(page, "Front")).hasAttribute("aria-pressed", "true");
    page.getByLabel("Guest").selectOption("guest-12");
    assertThat(said(page)).containsText("foils");
    assertThat(large).hasAttribute("data-view", "view-front");
  }

  @Test
  void aFoilThatIsPointedAtLightsEverywhere() throws IOException {
    Page page = open();
    button(page, "Show foil 3").focus();
    for (String place : List.of("#view-back .foil.lit", "#clock .foil.lit", "tr.lit")) {
      assertThat(page.locator(place).first()).hasAttribute("data-number", "3");
    }
    assertThat(page.locator("#card-0")).hasClass(Pattern.compile("\\blit\\b"));
    assertThat(page.locator("#card-1")).not().hasClass(Pattern.compile("\\blit\\b"));
    page.locator("#view-back .number[data-number='5']").hover();
    assertThat(page.locator("tr.lit")).hasAttribute("data-number", "5");
    page.locator("#view-back .number[data-number='5']").click();
    page.mouse().move(2, 2);
    assertThat(button(page, "Show foil 5")).hasAttribute("aria-pressed", "true");
    assertThat(page.locator("tr.lit")).hasAttribute("data-number", "5");
    shoot(page, "pointed");
    page.keyboard().press("Escape");
    assertThat(page.locator("tr.lit")).hasCount(0);
  }

  @Test
  void anEditRedrawsIsSavedAndCanBeTakenBack() throws IOException {
    Page page = open();
    openCard(page, 0);
    Locator slice = field(page, "back left", "Slice, mm");
    assertThat(slice).hasValue("12");
    String before = page.locator("#view-back").innerHTML();
    slice.focus();
    page.keyboard().press("ArrowDown");
    assertThat(said(page)).containsText("Changed and saved.");
    assertThat(slice).hasValue("11");
    assertThat(slice).isFocused();
    assertTrue(!before.equals(page.locator("#view-back").innerHTML()), "the map was not redrawn");
    assertThat(page.locator("#card-0 .sentence")).containsText("2 slices of 11 mm");
    assertThat(page.getByRole(AriaRole.ALERT)).containsText("dark-rim-own");
    assertTrue(Files.exists(folder.resolve("patterns/dark-rim-own.json")));
    assertTrue(page.url().contains("pattern=dark-rim-own"), page.url());
    slice.press("ArrowDown");
    slice.press("ArrowDown");
    slice.press("ArrowDown");
    assertThat(page.locator("#card-0 .sentence")).containsText("2 slices of 8 mm");
    Locator sentence = page.locator("#card-0 .sentence");
    while (button(page, "Undo").isEnabled()) {
      String shown = sentence.textContent();
      button(page, "Undo").click();
      assertThat(sentence).not().hasText(shown);
    }
    assertThat(said(page)).containsText("Taken back.");
    assertThat(sentence).containsText("2 slices of 12 mm");
    button(page, "Redo").click();
    assertThat(page.locator("#card-0 .sentence")).containsText("2 slices of 11 mm");
    page.reload();
    assertThat(page.locator("#card-0 .sentence")).containsText("2 slices of 11 mm");
  }

  @Test
  void lengthsCanBeTypedInInches() {
    Page page = open();
    page.getByLabel("Lengths in").selectOption("in");
    openCard(page, 3);
    Locator slice = field(page, "joining row", "Slice, in");
    assertThat(slice).hasValue("0.47");
    slice.fill("0.5");
    slice.press("Tab");
    assertThat(page.locator("#card-3 .sentence")).containsText("1 slice of 0.5 in");
  }

  @Test
  void aWrongEntryIsToldAtItsField() throws IOException {
    Page page = open();
    openCard(page, 0);
    Locator angle = field(page, "back left", "Angle from level, degrees");
    angle.fill("200");
    angle.press("Tab");
    assertThat(angle).hasAttribute("aria-invalid", "true");
    assertThat(angle).hasValue("200");
    assertThat(angle).hasAccessibleDescription(Pattern.compile("90"));
    shoot(page, "wrong-entry");
    assertTrue(Files.notExists(folder.resolve("patterns")));
  }

  @Test
  void everyPickerPlansAnew() {
    Page page = open();
    page.getByLabel("Pattern", new Page.GetByLabelOptions().setExact(true)).selectOption("v-back");
    assertThat(page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setLevel(1)))
        .hasText("V back");
    page.getByLabel("Pace").selectOption("apprentice");
    assertThat(page.locator(".looks")).containsText("apprentice");
    assertTrue(page.url().contains("pace=apprentice"), page.url());
    page.getByLabel("Foils come out").selectOption("waves");
    page.getByLabel("Part", new Page.GetByLabelOptions().setExact(true)).selectOption("none");
    assertThat(page.locator("#view-top .part-line")).hasCount(0);
    page.goBack();
  }

  @Test
  void theSecondTabIsRefusedAndToldWhereItsChangeIs() throws IOException {
    Page first = open();
    openCard(first, 0);
    field(first, "back left", "Slice, mm").fill("11");
    first.keyboard().press("Tab");
    assertThat(said(first)).containsText("Changed and saved.");
    Page second = tab("?pattern=dark-rim-own");
    field(first, "back left", "Slice, mm").fill("10");
    first.keyboard().press("Tab");
    assertThat(first.locator("#card-0 .sentence")).containsText("2 slices of 10 mm");
    openCard(second, 0);
    field(second, "back left", "Slice, mm").fill("9");
    second.keyboard().press("Tab");
    assertThat(second.getByRole(AriaRole.ALERT)).containsText("dark-rim-own-other");
    assertThat(second.locator("#card-0 .sentence")).containsText("2 slices of 10 mm");
    second
        .getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Open dark-rim-own-other"))
        .click();
    assertThat(second.locator("#card-0 .sentence")).containsText("2 slices of 9 mm");
  }

  @Test
  void theKeyboardAloneReachesTheOrderOfWork() {
    Page page = open();
    page.keyboard().press("Tab");
    assertThat(
            page.getByRole(
                AriaRole.LINK, new Page.GetByRoleOptions().setName("Skip to the order of work")))
        .isFocused();
    page.keyboard().press("Enter");
    page.keyboard().press("Tab");
    page.keyboard().press("Enter");
    assertThat(page.locator("#card-0 > details")).hasAttribute("open", "");
    page.keyboard().press("Tab");
    assertThat(field(page, "back left", "Slice, mm")).isFocused();
  }

  @Test
  void theCalendarFileCanBeTaken() {
    Page page = open();
    page.getByLabel("Visit begins").fill("2026-12-02T09:30");
    Download entry = page.waitForDownload(() -> button(page, "Calendar file").click());
    assertEquals("dark-rim-guest-07.ics", entry.suggestedFilename());
  }

  @Test
  void aHeadCanBeTurnedByMouseAndByKeys() throws IOException {
    Page page = open();
    assertThat(page.locator("#turn-canvas")).isHidden();
    button(page, "A head to turn").click();
    Locator head = page.getByRole(AriaRole.APPLICATION);
    assertThat(page.locator("#turn-figure"))
        .hasAttribute("data-shown", Pattern.compile("dark-rim"));
    assertThat(head).isVisible();
    assertThat(head).hasAttribute("data-turn", "205 22");
    head.focus();
    page.keyboard().press("ArrowLeft");
    page.keyboard().press("ArrowUp");
    assertThat(head).hasAttribute("data-turn", "215 32");
    page.keyboard().press("Home");
    assertThat(head).hasAttribute("data-turn", "205 22");
    shoot(page, "head-to-turn");
    head.hover();
    page.mouse().down();
    page.mouse().move(300, 500);
    page.mouse().up();
    assertThat(head).not().hasAttribute("data-turn", "205 22");
    openCard(page, 0);
    field(page, "back left", "Slice, mm").fill("6");
    page.keyboard().press("Tab");
    assertThat(page.locator("#turn-figure"))
        .hasAttribute("data-shown", Pattern.compile("dark-rim-own"));
    assertThat(head).isVisible();
    shoot(page, "turning");
    checkAccess(page, "#turning");
  }
}
