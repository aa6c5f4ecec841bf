package foilwright.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Measures the page in a real Chromium; no test of the usual run, for it says how fast the machine
 * is too. {@code mvn -q -Pmeasure test} prints the figures.
 */
class EditSpeed extends PageTrial {
  private static final int WARM_UP = 60;
  private static final int EDITS = 100;

  /** From the change of a field to the first picture that can be painted after the answer. */
  private static final String EDIT =
      "([id, value]) => new Promise((done) => {"
          + " const began = performance.now();"
          + " document.body.addEventListener('htmx:afterSettle', () => {"
          + "  const settled = performance.now();"
          + "  requestAnimationFrame(() => { document.body.getBoundingClientRect(); done({"
          + "   all: performance.now() - began, settled: settled - began,"
          + "   request: (() => { const r = performance.getEntriesByType('resource').at(-1);"
          + "    return { wait: r.responseStart - r.requestStart, load: r.responseEnd -"
          + "     r.responseStart, bytes: r.encodedBodySize }; })() }); });"
          + " }, { once: true });"
          + " performance.clearResourceTimings();"
          + " const field = document.getElementById(id);"
          + " field.value = value;"
          + " field.dispatchEvent(new Event('change', { bubbles: true })); })";

  @Test
  void anEditOfAFullHead() {
    Page page = open(1400, 1000, ColorScheme.LIGHT);
    page.navigate(server.address() + "?pattern=full-head-fine-weave");
    openCard(page, 0);
    int cards = page.locator(".card").count();
    double[] all = new double[EDITS];
    double[] wait = new double[EDITS];
    double[] load = new double[EDITS];
    double[] kilobytes = new double[EDITS];
    for (int i = 0; i < WARM_UP + EDITS; i++) {
      String id = "field-" + i % cards + "-slice";
      String value = Integer.toString(3 + (i / cards) % 3);
      Map<?, ?> took = (Map<?, ?>) page.evaluate(EDIT, List.of(id, value));
      // The next edit begins when nothing is under way, as a person's does.
      assertThat(page.locator("#part-clock[aria-busy]")).hasCount(0);
      if (i >= WARM_UP) {
        Map<?, ?> request = (Map<?, ?>) took.get("request");
        all[i - WARM_UP] = number(took.get("all"));
        wait[i - WARM_UP] = number(request.get("wait"));
        load[i - WARM_UP] = number(request.get("load"));
        kilobytes[i - WARM_UP] = number(request.get("bytes")) / 1000;
      }
    }
    assertEquals("Full head, fine weave", page.locator("h1").textContent());
    tell("edit to redrawn map and figures", all, "ms");
    tell("  of it until the answer begins", wait, "ms");
    tell("  of it while the answer comes", load, "ms");
    tell("  answer, compressed", kilobytes, "kB");
  }

  @Test
  void theFirstPage() {
    Page page = open(1400, 1000, ColorScheme.LIGHT);
    page.navigate("about:blank");
    double[] loaded = new double[20];
    double weight = 0;
    for (int i = 0; i < loaded.length; i++) {
      page.navigate(server.address() + "?pattern=full-head-fine-weave");
      Locator map = page.locator("#view-back");
      map.waitFor();
      loaded[i] =
          number(page.evaluate("performance.getEntriesByType('navigation')[0].loadEventEnd"));
      if (i == 0) {
        weight =
            number(
                page.evaluate(
                    "[...performance.getEntriesByType('navigation'),"
                        + " ...performance.getEntriesByType('resource')]"
                        + ".reduce((sum, r) => sum + r.encodedBodySize, 0) / 1000"));
      }
    }
    tell("page loaded, server warm", loaded, "ms");
    System.out.printf(Locale.ROOT, "weight of the page, compressed  %.0f kB%n", weight);
  }

  private static double number(Object value) {
    return ((Number) value).doubleValue();
  }

  private static void tell(String what, double[] values, String unit) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    System.out.printf(
        Locale.ROOT,
        "%-34s median %.0f, 95 %% under %.0f, most %.0f %s%n",
        what,
        sorted[sorted.length / 2],
        sorted[(int) Math.ceil(0.95 * sorted.length) - 1],
        sorted[sorted.length - 1],
        unit);
  }
}
