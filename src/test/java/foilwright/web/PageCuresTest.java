package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Problems at their place on the head, and what a press of a button cures. */
class PageCuresTest extends PageTrial {
  private static final Pattern LIT = Pattern.compile(".*\\blit\\b.*");

  @Test
  void aVisitThatCannotBeIsCuredByAButton() throws IOException {
    open(1280, 900, ColorScheme.LIGHT);
    context.pages().get(0).close();
    Page page = tab("?pattern=full-head-fine-weave&guest=guest-07&pace=apprentice&out=in-order");
    Locator failed =
        page.locator(".looks .look", new Page.LocatorOptions().setHasText("no plan for the visit"));
    assertThat(failed).hasCount(1);
    assertThat(page.locator(".clock svg")).hasCount(0);
    assertThat(failed).hasAttribute("data-pin", "a");
    assertThat(page.locator(".view svg [id$=problem-1]").first()).isAttached();
    shoot(page, "cures-1280-light");
    checkAccess(page, ".figures", ".looks", ".order");
    button(page, "Take foils out in waves").focus();
    page.keyboard().press("Enter");
    assertThat(failed).hasCount(0);
    assertThat(page.locator(".clock svg")).hasCount(1);
    assertThat(said(page)).containsText("Done: Take foils out in waves.");
    assertThat(page.locator("#to-look-at")).isFocused();
    assertTrue(page.url().contains("out=waves"), page.url());
    button(page, "Undo").click();
    assertThat(failed).hasCount(1);
    assertTrue(page.url().contains("out=in-order"), page.url());
  }

  /** Another pair of hands is a step; so is leaving out foils, which makes a copy of one's own. */
  @Test
  void handsAndFoilsLeftOutMakeTheVisitFit() {
    open(1280, 900, ColorScheme.LIGHT);
    context.pages().get(0).close();
    Page page = tab("?pattern=v-back&guest=guest-07&pace=apprentice&out=in-order");
    Locator failed =
        page.locator(".looks .look", new Page.LocatorOptions().setHasText("no plan for the visit"));
    button(page, "Work with two pairs of hands").click();
    assertThat(failed).hasCount(0);
    assertThat(page.locator("#pick-hands")).hasValue("2");
    button(page, "Undo").click();
    assertThat(page.locator("#pick-hands")).hasValue("1");
    button(page, "Leave out the foils that show least until the visit fits").click();
    assertThat(said(page)).containsText("by their numbers till now");
    assertThat(failed).hasCount(0);
    assertThat(page.locator(".notice")).containsText("v-back-own");
    page.getByText("Fit a time or a number of foils").click();
    page.getByLabel("At most so many foils").fill("8");
    button(page, "Leave out what shows least").click();
    assertThat(said(page)).containsText(Pattern.compile("\\. 8 foils"));
    page.getByLabel("Within, min").fill("soon");
    button(page, "Leave out what shows least").click();
    assertThat(page.locator(".notice")).containsText("Not changed");
  }

  @Test
  void aPinAndWhatIsSaidOfItPointToEachOther() throws IOException {
    Page page = open(360, 800, ColorScheme.DARK);
    openCard(page, 0);
    field(page, page.locator("#card-0 .card-name").textContent(), "Number of slices").fill("150");
    field(page, page.locator("#card-0 .card-name").textContent(), "Number of slices")
        .press("Enter");
    Locator inCard = page.locator("#card-0 .look[data-pin=a]");
    Locator inList = page.locator(".looks .look[data-pin=a]");
    assertThat(inList).hasCount(1);
    assertThat(inList).not().containsText("..");
    inList.getByText("Show pin a on the head").focus();
    page.keyboard().press("Enter");
    Locator pin = page.locator(".view.large svg [id$=problem-1]");
    assertThat(pin).isFocused();
    assertThat(pin).hasClass(LIT);
    assertThat(pin).isInViewport();
    shoot(page, "cures-360-dark");
    page.keyboard().press("Enter");
    assertThat(inCard).isFocused();
    assertThat(inCard).hasClass(LIT);
    assertThat(inList).hasClass(LIT);
    page.keyboard().press("Tab");
    page.keyboard().press("Tab");
    page.keyboard().press("Enter");
    assertThat(inList).hasCount(0);
    assertThat(said(page)).containsText("have as many slices as fit");
  }
}
