package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import foilwright.app.DocumentKind;
import foilwright.app.Draft;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The page without a mouse, and enlarged. */
class PageKeyboardTest extends PageTrial {
  @Override
  boolean looks() {
    return true;
  }

  private static final int MOST_STOPS = 400;
  private static final int INNER_STOPS = 8;

  /** Everything that a press of Tab must reach, a group of radio buttons once, in page order. */
  private static final String STOPS =
      """
      () => {
        const groups = new Set();
        return [...document.querySelectorAll(
            'a[href], button, select, input, summary, textarea, [tabindex="0"]')]
          .filter((e) => !e.disabled && e.type !== 'hidden' && e.tabIndex >= 0)
          .filter((e) => e.checkVisibility({ visibilityProperty: true }))
          .filter((e) => {
            if (e.type !== 'radio') return true;
            const first = !groups.has(e.name);
            groups.add(e.name);
            return first;
          })
          .map((e, i) => {
            e.dataset.stop = e.type === 'radio' ? e.name : String(i);
            return e.dataset.stop;
          });
      }
      """;

  /** Where the focus is, and what is wrong with how it shows; null when it has left the page. */
  private static final String FOCUS =
      """
      () => {
        const e = document.activeElement;
        if (!e || e === document.body) return null;
        const box = e.getBoundingClientRect();
        const style = getComputedStyle(e);
        const bar = document.querySelector('.figures');
        const covered = bar && !bar.contains(e) && getComputedStyle(bar).position === 'sticky'
          && bar.getBoundingClientRect().top <= 0 && box.bottom <= bar.getBoundingClientRect().bottom;
        const wrong = [];
        if (style.outlineStyle === 'none' || parseFloat(style.outlineWidth) < 2) wrong.push('no outline');
        if (covered) wrong.push('behind the figures');
        if (box.bottom <= 0 || box.top >= innerHeight) wrong.push('out of sight');
        return [e.type === 'radio' ? e.name : e.dataset.stop ?? '', wrong.join(', '),
          e.outerHTML.slice(0, 120)].join('|');
      }
      """;

  private static void tabTo(Page page, Locator wanted) {
    for (int i = 0; i < MOST_STOPS; i++) {
      if (wanted.evaluate("e => e === document.activeElement").equals(true)) {
        return;
      }
      page.keyboard().press("Tab");
    }
    throw new AssertionError("Tab does not reach " + wanted);
  }

  /** Every stop is reached once, in page order, in sight and outlined, and Tab leads out again. */
  private static void walk(Page page) {
    List<String> expected = new ArrayList<>();
    for (Object stop : (List<?>) page.evaluate(STOPS)) {
      expected.add(stop.toString());
    }
    List<String> reached = new ArrayList<>();
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i <= expected.size() + INNER_STOPS; i++) {
      if (i > 0) {
        page.keyboard().press("Tab");
      }
      Object focus = page.evaluate(FOCUS);
      if (focus == null) {
        break;
      }
      String[] parts = focus.toString().split("\\|", 3);
      // A field for day and hour has a stop for each of its parts.
      if (!reached.isEmpty() && reached.get(reached.size() - 1).equals(parts[0])) {
        continue;
      }
      assertEquals(expected.get(reached.size()), parts[0], parts[2]);
      reached.add(parts[0]);
      if (!parts[1].isEmpty()) {
        wrong.add(parts[1] + ": " + parts[2]);
      }
    }
    assertEquals(expected, reached);
    assertEquals(List.of(), wrong);
  }

  @Test
  void tabReachesEverythingInOrderAndLeadsOutAgain() {
    Page page = open();
    assertThat(page.locator(".looked[data-fine=true]")).isVisible();
    assertThat(page.locator("#handle-part")).isAttached();
    for (String summary :
        List.of(
            "#more-new > summary",
            ".look-figures > summary",
            "#card-0 > details > summary",
            "#more-0 > summary",
            "#more-pattern > summary",
            "#more-fit > summary",
            ".look-beside > summary")) {
      page.locator(summary).press("Enter");
    }
    assertThat(page.locator(".handle")).not().hasCount(1);
    page.locator(".skip").focus();
    walk(page);
  }

  @Test
  void aPlanIsChangedWithoutAMouse() {
    Page page = open();
    tabTo(page, page.locator("#card-0 > details > summary"));
    page.keyboard().press("Enter");
    tabTo(page, page.locator("#field-0-slice"));
    page.keyboard().press("Control+A");
    page.keyboard().type("9");
    page.keyboard().press("Enter");
    assertThat(page.locator("#card-0 .sentence").first()).containsText("of 9 mm");
    assertThat(page.locator("#field-0-slice")).isFocused();
    Locator start = page.locator("#handle-offset");
    assertThat(start).isVisible();
    page.evaluate("document.activeElement.blur(); scrollTo(0, 0)");
    tabTo(page, start);
    page.keyboard().press("ArrowRight");
    assertThat(said(page)).containsText("Changed and saved.");
    assertThat(page.locator("#field-0-offset")).not().hasValue("0");
    Locator foil = page.locator("tr[data-number='3'] button");
    tabTo(page, foil);
    page.keyboard().press("Enter");
    assertThat(foil).hasAttribute("aria-pressed", "true");
    assertThat(page.locator("svg .foil.lit").first()).isAttached();
  }

  @Test
  void aPartIsFlippedPatternsComparedAndSheetsOpenedWithoutAMouse() {
    Page page = open();
    tabTo(page, page.locator("#pick-part"));
    page.keyboard().type("right");
    page.waitForURL(Pattern.compile("part=right").asPredicate());
    tabTo(page, page.locator(".look-beside > summary"));
    page.keyboard().press("Enter");
    tabTo(page, page.locator(".look-beside button"));
    page.keyboard().press("Enter");
    assertThat(page.locator(".halves img")).hasCount(10);
    tabTo(page, page.locator(".to-sheets"));
    page.keyboard().press("Enter");
    assertThat(page.locator(".leaf img").first()).isVisible();
  }

  @Test
  void aGuestIsMeasuredWithoutAMouse() throws IOException {
    open();
    Page page = tab("guest?guest=guest-07");
    tabTo(page, page.locator("#more-new > summary"));
    page.keyboard().press("Enter");
    tabTo(page, page.locator("#new-name"));
    page.keyboard().press("Control+A");
    page.keyboard().type("guest-44");
    tabTo(page, page.locator("#make"));
    page.keyboard().press("Enter");
    assertThat(page.locator("h1")).hasText("guest-44");
    for (Map.Entry<String, String> tape :
        Map.of("Around, mm", "548", "Ear to ear, mm", "340").entrySet()) {
      page.evaluate("document.activeElement.blur(); scrollTo(0, 0)");
      tabTo(page, page.getByLabel(tape.getKey(), new Page.GetByLabelOptions().setExact(true)));
      page.evaluate("document.getElementById('said').textContent = ''");
      page.keyboard().press("Control+A");
      page.keyboard().type(tape.getValue());
      page.keyboard().press("Tab");
      assertThat(said(page)).containsText("Changed and saved.");
    }
    Draft guest =
        Draft.of(
                DocumentKind.GUEST,
                Files.readAllBytes(folder.resolve("shared/guests/guest-44.json")))
            .orElseThrow();
    assertEquals("548 mm", guest.text("head.around"));
    assertEquals("340 mm", guest.text("head.earToEar"));
  }

  /** 1280 px at 200 %: 640 CSS px of two device pixels each (WCAG 2.2, 1.4.4 and 1.4.10). */
  @Test
  void atTwiceTheSizeNothingIsLost() throws IOException {
    Page page = open(1280, 900, ColorScheme.LIGHT);
    JsonObject metrics = new JsonObject();
    metrics.addProperty("width", 640);
    metrics.addProperty("height", 450);
    metrics.addProperty("deviceScaleFactor", 2);
    metrics.addProperty("mobile", false);
    context.newCDPSession(page).send("Emulation.setDeviceMetricsOverride", metrics);
    assertEquals(2, ((Number) page.evaluate("devicePixelRatio")).intValue());
    for (String view : List.of("", "guest?guest=guest-07", "house", "sheets")) {
      page.navigate(server.address() + view);
      double over =
          ((Number)
                  page.evaluate(
                      "document.documentElement.scrollWidth - document.documentElement.clientWidth"))
              .doubleValue();
      assertTrue(over <= 0, view + " is " + over + " px too wide");
      assertFalse(
          (boolean)
              page.evaluate(
                  "[...document.querySelectorAll('button, summary, label, h1, h2, dd')]"
                      + ".filter(e => e.checkVisibility() && !e.closest('.unseen, .first-look'))"
                      + ".some(e => e.scrollWidth > e.clientWidth + 1"
                      + " && getComputedStyle(e).overflow === 'hidden')"),
          view + " cuts words off");
      shoot(page, "twice-" + view.replaceAll("\\W.*", ""));
    }
    page.navigate(server.address());
    assertThat(page.locator("#handle-part")).isAttached();
    page.evaluate("scrollTo(0, 0)");
    for (int i = 0; i < 40; i++) {
      page.keyboard().press("Tab");
      String[] focus = page.evaluate(FOCUS).toString().split("\\|", 3);
      assertEquals("", focus[1], focus[2]);
    }
  }
}
