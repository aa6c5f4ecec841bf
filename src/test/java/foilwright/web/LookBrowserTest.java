package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The look's panel as a person uses it. */
class LookBrowserTest extends PageTrial {
  private static Locator panel(Page page) {
    return page.getByRole(
        AriaRole.REGION, new Page.GetByRoleOptions().setName("As the hair falls").setExact(true));
  }

  private static Locator picture(Page page, String side) {
    return page.getByAltText(Pattern.compile("^Hair from the " + side + ": .*")).first();
  }

  @Override
  int hairs() {
    return 15_000;
  }

  @Override
  boolean looks() {
    return true;
  }

  /** A busy machine takes its time. */
  private static final double PATIENCE_MS = 180_000;

  /** Waits for a picture of the plan as it is, of few hairs or of all. */
  private static void there(Page page) {
    assertThat(page.locator(".look-shown[data-fine]:not(.old)"))
        .isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(PATIENCE_MS));
  }

  /** Waits for the picture of all hairs. */
  private static void settled(Page page) {
    assertThat(page.locator(".look-shown[data-fine='true'][aria-busy='false']:not(.old)"))
        .isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(PATIENCE_MS));
  }

  private static void changed(Page page, String source) {
    assertThat(picture(page, "front"))
        .not()
        .hasAttribute(
            "src", source, new LocatorAssertions.HasAttributeOptions().setTimeout(PATIENCE_MS));
    there(page);
  }

  private static String source(Page page, String side) {
    return picture(page, side).getAttribute("src");
  }

  private static Locator big(Page page) {
    return page.locator(".fall.large");
  }

  @Test
  void hairIsShownFromFiveSidesAndItsPicturesTellTheFigures() throws IOException {
    Page page = open();
    settled(page);
    for (String side : List.of("front", "back", "left", "right", "top")) {
      assertThat(picture(page, side))
          .hasAttribute("alt", Pattern.compile(".*\\d %.*lightened, contrast \\d+\\.\\d.*"));
      Object width = picture(page, side).evaluate("image => image.naturalWidth");
      assertTrue(((Number) width).intValue() > 100, side + " is " + width + " px wide");
    }
    assertThat(big(page)).hasAttribute("data-side", "front");
    panel(page)
        .getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Hair from the back"))
        .press("Enter");
    assertThat(big(page)).hasAttribute("data-side", "back");
    assertThat(page.locator("#seen-figure dd")).containsText(Pattern.compile("\\d %.*front \\d"));
    page.getByText("Figures and advice").click();
    for (String label :
        List.of(
            "Lightened, of all hair", "Lightened, of what is seen", "Lightened hair never seen")) {
      assertThat(panel(page)).containsText(label);
    }
    assertThat(panel(page).locator(".words li").first()).isVisible();
    shoot(page, "look-wide");
  }

  @Test
  void theOtherPartShowsOtherHair() {
    Page page = open();
    there(page);
    String front = source(page, "front");
    String told = picture(page, "front").getAttribute("alt");
    Locator planned = panel(page).getByRole(AriaRole.RADIO, checked());
    String was = planned.inputValue();
    String other = was.equals("left") ? "right" : "left";
    panel(page).getByLabel(other, new Locator.GetByLabelOptions().setExact(true)).check();
    changed(page, front);
    assertNotEquals(told, picture(page, "front").getAttribute("alt"));
    assertThat(panel(page)).containsText("part " + other);
  }

  private static Locator.GetByRoleOptions checked() {
    return new Locator.GetByRoleOptions().setChecked(true);
  }

  @Test
  void monthsGoOnByKey() {
    Page page = open();
    there(page);
    String front = source(page, "front");
    Locator months = panel(page).getByLabel("Months since the visit");
    months.focus();
    for (int i = 0; i < 6; i++) {
      page.keyboard().press("ArrowRight");
    }
    assertThat(months).hasValue("6");
    changed(page, front);
    assertThat(panel(page)).containsText("6 months on");
    page.getByText("Figures and advice").click();
    settled(page);
    assertThat(panel(page)).containsText(Pattern.compile("6 months on, .* new at the root"));
  }

  /** The first look is held up, so that what is said meanwhile can be read. */
  @Test
  void nothingIsOfBeforeAChangeBeforeAnyChange() {
    open(1280, 900, ColorScheme.LIGHT);
    context.pages().get(0).close();
    AtomicInteger asked = new AtomicInteger();
    context.route(
        "**/look?*",
        route -> {
          if (asked.getAndIncrement() == 0) {
            Page page = route.request().frame().page();
            assertThat(page.locator("#seen-figure dd")).hasText("being worked out");
            assertThat(page.locator(".old")).hasCount(0);
            assertThat(page.locator(".look-state")).not().containsText("before");
          }
          route.resume();
        });
    Page page = tab("");
    there(page);
    assertThat(page.locator("#seen-figure dd")).containsText("%");
    Object over =
        page.locator(".figures").evaluate("figures => figures.scrollWidth - figures.clientWidth");
    assertEquals(0, ((Number) over).intValue(), "the figures do not fit 1280 px");
  }

  @Test
  void beforeIsWipedOverAfterByKey() throws IOException {
    Page page = open();
    there(page);
    Locator slider = panel(page).getByLabel("Before, from the left");
    assertThat(slider).hasAttribute("aria-valuetext", "after only");
    slider.focus();
    for (int i = 0; i < 10; i++) {
      page.keyboard().press("ArrowRight");
    }
    assertThat(slider).hasAttribute("aria-valuetext", "before on 50 % from the left");
    Locator before = big(page).getByAltText("The same before the visit");
    assertThat(before).isVisible();
    assertThat(before)
        .hasAttribute("alt", Pattern.compile(".*from the front: 0\\.0 % .*lightened, contrast .*"));
    assertNotEquals(source(page, "front"), before.getAttribute("src"));
    assertEquals(
        "inset(0px 50% 0px 0px)", before.evaluate("image => getComputedStyle(image).clipPath"));
    panel(page)
        .screenshot(
            new Locator.ScreenshotOptions()
                .setPath(Path.of("target", "screens", "look-wiped.png")));
    page.keyboard().press("End");
    assertThat(slider).hasAttribute("aria-valuetext", "before only");
  }

  @Test
  void tiedUpIsSeenOtherwise() {
    Page page = open();
    there(page);
    String back = source(page, "back");
    String front = source(page, "front");
    panel(page).getByLabel("Worn").selectOption("tied up");
    changed(page, front);
    assertNotEquals(back, source(page, "back"));
    assertThat(panel(page)).containsText("tied up, part");
  }

  @Test
  void anEditMarksThePictureAsOldUntilTheNewOneComes() {
    Page page = open();
    there(page);
    String back = source(page, "back");
    openCard(page, 0);
    Locator slice = field(page, "back left", "Slice, mm");
    slice.fill("6");
    // The first picture after the change is held up, so that the old one can be looked at.
    page.route(
        "**/look?*",
        route -> {
          if (!route.request().url().contains("fine=")) {
            assertThat(page.locator(".look-shown")).hasClass(Pattern.compile(".*\\bold\\b.*"));
            assertThat(page.locator("#seen-figure dd")).hasClass(Pattern.compile(".*\\bold\\b.*"));
          }
          route.resume();
        });
    slice.press("Enter");
    assertThat(said(page)).containsText("saved");
    there(page);
    assertThat(picture(page, "back")).not().hasAttribute("src", back);
    assertThat(page.locator("#seen-figure dd")).not().hasClass(Pattern.compile(".*\\bold\\b.*"));
  }

  @Test
  void twoPatternsStandSideBySide() throws IOException {
    Page page = open();
    page.getByText("Beside another pattern").click();
    Locator form = page.getByRole(AriaRole.FORM, new Page.GetByRoleOptions().setName("Compare"));
    form.getByLabel("Compare with").selectOption("v-back");
    button(page, "Compare").click();
    Locator table =
        page.getByRole(
            AriaRole.REGION, new Page.GetByRoleOptions().setName("Both patterns in figures"));
    assertThat(table).isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(PATIENCE_MS));
    assertThat(table.locator("tbody tr").first())
        .hasText(Pattern.compile("Foils\\s*11\\s*\\d+\\s*\\d+ more"));
    Locator pictures = page.locator(".halves img");
    assertThat(pictures).hasCount(10);
    assertNotEquals(pictures.nth(0).getAttribute("src"), pictures.nth(5).getAttribute("src"));
    checkAccess(page, "#beside-panel");
    shoot(page, "look-beside");
  }

  @Test
  void thePanelHasNoBarrierInAnyDress() throws IOException {
    inEachDress(
        "look",
        "",
        page -> {
          panel(page).scrollIntoViewIfNeeded();
          there(page);
          page.getByText("Figures and advice").click();
        },
        "#look-panel");
  }
}
