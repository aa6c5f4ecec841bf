package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.Media;
import java.io.IOException;
import java.nio.file.Files;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.Test;

/** Sheets are looked at, taken and printed. */
class PageSheetsTest extends PageTrial {
  private static Locator link(Page page, String name) {
    return page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private static void toSheets(Page page) {
    link(page, "Look at the sheets, take or print them").click();
    assertThat(page.locator("#drawn h2")).hasText("Map for the chair");
  }

  /** The paper's size is ISO 216's 297 by 210 mm, lying, here in points of 1/72 inch. */
  @Test
  void aFirstVisitLeadsToAPrintedMapInThreeActions() throws IOException {
    Page page = open();
    page.addInitScript("window.print = () => { document.documentElement.dataset.printed = 1; }");
    int actions = 1;
    toSheets(page);
    actions++;
    button(page, "Print").click();
    actions++;
    assertThat(page.locator("html")).hasAttribute("data-printed", "1");
    assertTrue(actions < 10);
    byte[] printed = page.pdf(new Page.PdfOptions().setPreferCSSPageSize(true));
    try (PDDocument document = Loader.loadPDF(printed)) {
      int pages = page.locator(".leaf").count();
      assertEquals(pages, document.getNumberOfPages());
      PDRectangle size = document.getPage(0).getMediaBox();
      assertEquals(297 * 72 / 25.4, size.getWidth(), 0.6);
      assertEquals(210 * 72 / 25.4, size.getHeight(), 0.6);
    }
  }

  /** True to size: the box that says so is as long as it says on the printed page. */
  @Test
  void aSheetIsPrintedTrueToSize() {
    Page page = open();
    toSheets(page);
    page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
    double width =
        ((Number)
                page.evaluate("document.querySelector('.leaf img').getBoundingClientRect().width"))
            .doubleValue();
    // CSS has 96 pixels to the inch.
    assertEquals(297 * 96 / 25.4, width, 0.5);
    assertThat(page.getByRole(AriaRole.FORM)).not().isVisible();
  }

  @Test
  void anySheetIsSeenAndTakenAsAFile() throws IOException {
    Page page = open();
    toSheets(page);
    page.getByLabel("Steps", new Page.GetByLabelOptions().setExact(true)).check();
    assertThat(page.locator("#drawn h2")).hasText("Steps");
    assertThat(said(page)).containsText("Steps is drawn");
    Download pdf = page.waitForDownload(() -> link(page, "PDF, all pages").click());
    assertEquals("dark-rim-guest-07-steps.pdf", pdf.suggestedFilename());
    try (PDDocument document = Loader.loadPDF(Files.readAllBytes(pdf.path()))) {
      assertEquals(page.locator(".leaf").count(), document.getNumberOfPages());
    }
    Download png = page.waitForDownload(() -> link(page, "PNG of page 2").click());
    assertEquals("dark-rim-guest-07-steps-2.png", png.suggestedFilename());
    assertEquals((byte) 'P', Files.readAllBytes(png.path())[1]);
    Download svg = page.waitForDownload(() -> link(page, "SVG of page 1").click());
    assertTrue(Files.readString(svg.path()).contains("<svg"));
    button(page, "Page 1, enlarge").press("Enter");
    assertThat(button(page, "Page 1, make smaller")).hasAttribute("aria-pressed", "true");
    page.getByLabel("Letter", new Page.GetByLabelOptions().setExact(true)).check();
    assertThat(page.locator(".leaf").first()).hasClass("leaf letter-high");
    page.reload();
    assertThat(page.locator("#drawn h2")).hasText("Steps");
    assertThat(page.locator(".leaf").first()).hasClass("leaf letter-high");
  }

  @Test
  void sheetsHaveNoBarrier() throws IOException {
    inEachDress("sheets", "", PageSheetsTest::toSheets);
  }
}
