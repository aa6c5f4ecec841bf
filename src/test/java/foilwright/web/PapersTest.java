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
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Guests and the house on the page: measured, told, changed, weighed back. */
class PapersTest extends PageTrial {
  private static Locator label(Page page, String label) {
    return page.getByLabel(label, new Page.GetByLabelOptions().setExact(true));
  }

  private static Locator in(Page page, String group, String label) {
    Locator summary =
        page.locator("details.more > summary")
            .filter(new Locator.FilterOptions().setHasText(Pattern.compile("^" + group + "$")));
    Locator details = summary.locator("..");
    if (!details.evaluate("d => d.open").equals(true)) {
      summary.click();
    }
    return page.getByRole(AriaRole.FORM, new Page.GetByRoleOptions().setName(group).setExact(true))
        .getByLabel(label, new Locator.GetByLabelOptions().setExact(true));
  }

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

  private Draft read(String file, DocumentKind kind) throws IOException {
    return Draft.of(kind, Files.readAllBytes(folder.resolve(file))).orElseThrow();
  }

  @Test
  void aNewGuestIsMeasuredByTapeAndPlanned() throws IOException {
    Page page = open();
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Guest:")).click();
    page.getByText("New guest", new Page.GetByTextOptions().setExact(true)).click();
    label(page, "Number").fill("Anna");
    button(page, "Make guest").click();
    assertThat(page.getByRole(AriaRole.ALERT)).containsText("never by name");
    label(page, "Number").fill("guest-31");
    button(page, "Make guest").click();
    assertThat(page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setLevel(1)))
        .hasText("guest-31");
    label(page, "Lengths in").selectOption("in");
    Locator around = in(page, "Head by tape", "Around, in");
    assertThat(around).isVisible();
    assertThat(page.locator("#tape-around-figure")).isVisible();
    Locator empty = page.getByLabel(Pattern.compile("^Around"));
    empty.focus();
    assertThat(page.locator("#tape-around-figure")).hasClass(Pattern.compile("\\blit\\b"));
    assertThat(page.locator("#tape-nape-depth-figure"))
        .not()
        .hasClass(Pattern.compile("\\blit\\b"));
    put(page, around, "21 1/2");
    assertEquals(
        "546.1 mm", read("shared/guests/guest-31.json", DocumentKind.GUEST).text("head.around"));
    put(page, page.getByLabel(Pattern.compile("^Ear to ear")), "34.2 cm");
    assertEquals(
        "342 mm", read("shared/guests/guest-31.json", DocumentKind.GUEST).text("head.earToEar"));
    label(page, "Lengths in").selectOption("mm");
    put(page, in(page, "Haircut", "How it is cut"), "graduated");
    put(page, in(page, "Haircut", "How it is cut: at the nape, mm"), "90");
    put(page, in(page, "Haircut", "Face frame or fringe"), "yes");
    put(page, in(page, "Hair", "Natural level"), "5");
    put(page, in(page, "Hair", "Level wished for"), "8");
    put(page, in(page, "In the zone crown", "Porosity here"), "high");
    put(page, in(page, "Scalp condition", "Result"), "clear");
    Draft guest = read("shared/guests/guest-31.json", DocumentKind.GUEST);
    assertEquals("90 mm", guest.text("hair.cut.shape.graduated.atNape"));
    assertEquals("high", guest.text("hair.zones.crown.porosity"));
    assertThat(page.locator(".cautions .missing")).not().containsText("scalp condition");
    assertThat(page.locator(".cautions .missing")).containsText("elasticity");
    button(page, "Undo").click();
    assertThat(page.locator(".cautions .missing")).containsText("scalp condition");
    button(page, "Redo").click();
    assertThat(page.locator(".cautions .missing")).not().containsText("scalp condition");
    shoot(page, "guest-new");
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Back to the head")).click();
    assertThat(page.locator("#pick-guest")).hasValue("guest-31");
    assertThat(page.locator("tr[data-number]").first()).isVisible();
  }

  @Test
  void anOddMeasurementIsToldAndAnImpossibleOneRefused() {
    open();
    Page page = tab("guest?guest=guest-07");
    Locator around = in(page, "Head by tape", "Around, mm");
    around.fill("56");
    around.press("Tab");
    assertThat(around).hasAttribute("aria-invalid", "true");
    assertThat(around).hasAccessibleDescription(Pattern.compile("300"));
    assertTrue(Files.notExists(folder.resolve("shared/guests")));
    put(page, in(page, "Head by tape", "Over the top, front to back, mm"), "460");
    assertThat(page.locator(".look.warning").first()).isVisible();
  }

  @Test
  void aShippedGuestIsNeverWrittenOver() throws IOException {
    open();
    Page page = tab("guest?guest=guest-07");
    put(page, in(page, "Hair", "Length in general, mm"), "300");
    assertThat(page.getByRole(AriaRole.ALERT)).containsText("guest-31");
    assertTrue(page.url().contains("guest=guest-31"), page.url());
    assertFalse(Files.exists(folder.resolve("shared/guests/guest-07.json")));
    assertEquals(
        "guest-31", read("shared/guests/guest-31.json", DocumentKind.GUEST).text("number"));
  }

  @Test
  void theHouseIsChangedAndWeighedBack() throws IOException {
    Page page = open();
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("House:")).click();
    put(page, in(page, "Pace: lead", "One foil, whatever its size: usual, min"), "0.35");
    put(page, in(page, "Prices", "A foil, EUR"), "3.50");
    put(page, in(page, "Product: powder lightener, entry 1", "A foil stays at most, min"), "50");
    put(
        page,
        in(page, "Product: powder lightener, entry 1", "Name of the entry"),
        "powder, entry 1");
    Draft house = read("shared/house/practice-room.json", DocumentKind.HOUSE);
    assertEquals("0.35 min", house.text("paces[0].times.foil.usual"));
    assertEquals("3.50 EUR", house.text("prices.perFoil"));
    assertEquals("powder, entry 1", house.text("slots.A"));
    Locator slow = in(page, "Pace: lead", "One foil, whatever its size: slow, min");
    slow.fill("0.1");
    slow.press("Tab");
    assertThat(slow).hasAttribute("aria-invalid", "true");
    page.getByText("After a visit: weigh back and time").click();
    label(page, "Left of mix A, g").fill("1");
    label(page, "Placing took, min").fill("24");
    button(page, "Take in").click();
    assertThat(said(page)).containsText("Taken in and saved.");
    assertEquals(
        1,
        read("shared/house/practice-room.json", DocumentKind.HOUSE)
            .count("products[0].takeUp.weighBacks"));
    button(page, "Undo").click();
    assertThat(said(page)).containsText("Taken back.");
    assertEquals(
        0,
        read("shared/house/practice-room.json", DocumentKind.HOUSE)
            .count("products[0].takeUp.weighBacks"));
  }

  @Test
  void papersHaveNoBarrierAndFit() throws IOException {
    for (String paper : List.of("guest", "house")) {
      inEachDress(
          paper,
          paper + "?guest=guest-07",
          page -> page.locator("#more-product-0 > summary, #more-zone-crown > summary").click());
    }
  }

  /** Every number of a shipped house and every value of a shipped guest is in some field. */
  @Test
  void everyFieldOfAFormShowsWhatTheDocumentSays() throws IOException {
    Draft house =
        Draft.of(DocumentKind.HOUSE, Files.readAllBytes(Path.of("shared/house/practice-room.json")))
            .orElseThrow();
    Form form = HouseForm.of(house, LengthUnit.MM);
    assertEquals(
        Map.of(), form.send(Map.of()).why(), "a form that is sent as it is changes nothing");
    assertTrue(
        form.groups().stream()
                .flatMap(g -> g.fields().stream())
                .filter(f -> !f.value().isEmpty())
                .count()
            > 200);
  }
}
