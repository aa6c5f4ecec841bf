package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.BoundingBox;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Handles on the head and the head that is turned, as a person uses them in a real Chromium. */
class PageStageTest extends PageTrial {

  private static Locator handle(Page page, String name) {
    return page.getByRole(
        AriaRole.SLIDER, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private static Locator figure(Page page, String label) {
    return page.locator(".figures dl > div")
        .filter(
            new Locator.FilterOptions()
                .setHas(
                    page.locator(
                        "dt",
                        new Page.LocatorOptions().setHasText(Pattern.compile("^" + label + "$")))))
        .locator("dd");
  }

  /** Presses the mouse on a handle and moves it without letting go. */
  private static void drag(Page page, Locator handle, double right, double down) {
    handle.scrollIntoViewIfNeeded();
    BoundingBox box = handle.boundingBox();
    double x = box.x + box.width / 2;
    double y = box.y + box.height / 2;
    page.mouse().move(x, y);
    page.mouse().down();
    for (int i = 1; i <= 5; i++) {
      page.mouse().move(x + right * i / 5, y + down * i / 5);
    }
  }

  /** What the view from the back shows, whatever is lit up on it. */
  private static String drawn(Page page) {
    return (String)
        page.evaluate(
            "[...document.querySelectorAll('#view-back path')].map(p => p.getAttribute('d')).join()");
  }

  @Test
  void hasNoBarrierWithHandlesInAnyDress() throws IOException {
    inEachDress(
        "handles",
        "",
        page -> {
          openCard(page, 0);
          Locator slice = handle(page, "back left: slice");
          assertThat(slice).isVisible();
          slice.focus();
        },
        page -> {
          BoundingBox box = handle(page, "back left: slice").boundingBox();
          assertTrue(box.width >= 44 && box.height >= 44, box.width + " x " + box.height);
        },
        ".view.large");
  }

  @Test
  void aHandleIsDraggedByMouseAndOneStepTakesItBack() throws IOException {
    Page page = open();
    openCard(page, 0);
    Locator slice = handle(page, "back left: slice");
    assertThat(slice).hasAttribute("aria-valuetext", "12 mm");
    String before = drawn(page);
    String minutes = page.locator("#card-0 > details > summary").textContent();
    drag(page, slice, 12, -24);
    assertThat(slice).not().hasAttribute("aria-valuetext", "12 mm");
    Locator typed = field(page, "back left", "Slice, mm");
    String tried = slice.getAttribute("aria-valuenow");
    assertThat(typed).hasValue(tried);
    assertThat(page.locator("#card-0 .sentence")).containsText("slices of " + tried + " mm");
    assertTrue(!before.equals(drawn(page)), "the map was not redrawn");
    assertTrue(Files.notExists(folder.resolve("patterns")), "saved while still dragged");
    shoot(page, "handle-dragged");
    page.mouse().up();
    assertThat(said(page)).containsText("Changed and saved.");
    assertThat(slice).hasAttribute("aria-valuenow", tried);
    assertThat(slice).isFocused();
    assertThat(typed).hasValue(tried);
    assertTrue(
        Files.readString(folder.resolve("patterns/dark-rim-own.json"))
            .contains("\"slice\": \"" + tried + " mm\""));
    button(page, "Undo").click();
    assertThat(said(page)).containsText("Taken back.");
    assertThat(typed).hasValue("12");
    assertThat(slice).hasAttribute("aria-valuetext", "12 mm");
    assertThat(button(page, "Undo")).isDisabled();
    assertThat(page.locator("#card-0 > details > summary")).hasText(minutes);
  }

  @Test
  void draggingChangesFoilsAndMinutes() {
    Page page = open();
    page.locator("#pick-pattern").selectOption("v-back");
    openCard(page, 0);
    Locator background = handle(page, "V from the nape: background");
    assertThat(background).isVisible();
    String foils = figure(page, "Foils").textContent();
    String placing = figure(page, "Placing").textContent();
    drag(page, background, 0, -60);
    assertThat(figure(page, "Foils")).not().hasText(foils);
    assertThat(figure(page, "Placing")).not().hasText(placing);
    assertThat(page.locator("#card-0 .sentence"))
        .containsText("background " + background.getAttribute("aria-valuenow") + " mm");
    String tried = figure(page, "Foils").textContent();
    page.mouse().up();
    assertThat(said(page)).containsText("Changed and saved.");
    assertThat(figure(page, "Foils")).hasText(tried);
  }

  @Test
  void escapePutsADragBack() {
    Page page = open();
    openCard(page, 0);
    Locator start = handle(page, "back left: before the first slice");
    assertThat(start).hasAttribute("aria-valuetext", "18 mm");
    String before = drawn(page);
    drag(page, start, 15, -45);
    assertThat(page.locator("#card-0 .sentence")).isVisible();
    page.waitForCondition(() -> !before.equals(drawn(page)));
    page.keyboard().press("Escape");
    assertThat(start).hasAttribute("aria-valuetext", "18 mm");
    assertThat(field(page, "back left", "Before the first slice, mm")).hasValue("18");
    assertEquals(before, drawn(page));
    page.mouse().up();
    page.waitForTimeout(1500);
    assertEquals(before, drawn(page));
    assertTrue(Files.notExists(folder.resolve("patterns")));
  }

  @Test
  void aHandleIsMovedByKeys() {
    Page page = open();
    openCard(page, 0);
    Locator slice = handle(page, "back left: slice");
    assertThat(slice).isVisible();
    slice.focus();
    String before = drawn(page);
    page.keyboard().press("ArrowUp");
    assertThat(slice).hasAttribute("aria-valuetext", "13 mm");
    page.keyboard().press("Shift+ArrowRight");
    assertThat(slice).hasAttribute("aria-valuetext", "23 mm");
    page.keyboard().press("ArrowLeft");
    assertThat(said(page)).containsText("Changed and saved.");
    assertThat(field(page, "back left", "Slice, mm")).hasValue("22");
    assertThat(slice).isFocused();
    assertTrue(!before.equals(drawn(page)), "the map was not redrawn");
    page.keyboard().press("Home");
    assertThat(slice).hasAttribute("aria-valuetext", "1 mm");
    page.keyboard().press("Escape");
    assertThat(slice).hasAttribute("aria-valuetext", "22 mm");
    button(page, "Undo").click();
    assertThat(field(page, "back left", "Slice, mm")).hasValue("12");
    assertThat(button(page, "Undo")).isDisabled();
  }

  @Test
  void aPartingIsTurned() {
    Page page = open();
    openCard(page, 0);
    Locator angle = handle(page, "back left: angle from level");
    assertThat(angle).hasAttribute("aria-valuetext", "30\u00b0");
    drag(page, angle, -20, 30);
    page.mouse().up();
    assertThat(said(page)).containsText("Changed and saved.");
    assertThat(angle).not().hasAttribute("aria-valuetext", "30\u00b0");
    assertThat(field(page, "back left", "Angle from level, degrees"))
        .hasValue(angle.getAttribute("aria-valuenow"));
  }

  @Test
  void aValueIsInInchesWhereThePageIs() {
    Page page = open();
    page.getByLabel("Lengths in").selectOption("in");
    openCard(page, 3);
    Locator slice = handle(page, "joining row: slice");
    assertThat(slice).hasAttribute("aria-valuetext", "0.47 in");
    slice.focus();
    page.keyboard().press("ArrowUp");
    assertThat(slice).hasAttribute("aria-valuetext", "0.5 in");
    assertThat(page.locator("#card-3 .sentence")).containsText("1 slice of 0.5 in");
    assertThat(said(page)).containsText("Changed and saved.");
  }

  @Test
  void thePartLineIsDragged() throws IOException {
    Page page = open();
    button(page, "Top").click();
    Locator part = handle(page, "Part line, from the centre line");
    assertThat(part).isVisible();
    String worn = part.getAttribute("aria-valuetext");
    assertTrue(worn.matches("\\d+ mm to the client\u2019s left"), worn);
    String before = page.locator("#view-top .part-line").first().innerHTML();
    drag(page, part, 90, 0);
    assertThat(part).hasAttribute("aria-valuetext", Pattern.compile("client\u2019s right"));
    page.waitForCondition(
        () -> !before.equals(page.locator("#view-top .part-line").first().innerHTML()));
    page.mouse().up();
    page.waitForURL(Pattern.compile("part=right").asPredicate());
    assertThat(page.getByLabel("Part", new Page.GetByLabelOptions().setExact(true)))
        .hasValue(Pattern.compile("right \\d+ mm"));
    assertThat(part).hasAttribute("aria-valuetext", Pattern.compile("client\u2019s right"));
    shoot(page, "part-dragged");
    button(page, "Undo").click();
    assertThat(part).hasAttribute("aria-valuetext", worn);
    assertThat(button(page, "Undo")).isDisabled();
    button(page, "Redo").click();
    assertThat(part).hasAttribute("aria-valuetext", Pattern.compile("client\u2019s right"));
  }

  @Test
  void pressingAFoilPicksItsSectionAndTurnsToIt() throws IOException {
    Page page = open();
    page.locator("#view-back .number[data-number='5']").click();
    assertThat(page.locator("#card-1")).hasClass(Pattern.compile("picked"));
    assertThat(handle(page, "inside V: slice")).isVisible();
    openCard(page, 2);
    assertThat(page.locator("#card-2")).hasClass(Pattern.compile("picked"));
    assertThat(page.locator(".view.large")).hasAttribute("data-view", "view-left");
    assertThat(handle(page, "left side: slice")).isVisible();
    assertThat(handle(page, "inside V: slice")).hasCount(0);
    shoot(page, "handles-left");
  }

  @Test
  void theHeadIsTurnedByItsButtonsAndShowsThePickedSectionsPlane() throws IOException {
    Page page = open();
    button(page, "A head to turn").click();
    Locator head = page.getByRole(AriaRole.APPLICATION);
    assertThat(page.locator("#turn-figure"))
        .hasAttribute("data-shown", Pattern.compile("dark-rim"));
    for (String[] side :
        new String[][] {
          {"Turn to the front", "0 8"},
          {"Turn to the left side", "-90 8"},
          {"Turn to the right side", "90 8"},
          {"Turn to the top", "180 89"},
          {"Turn to the back", "180 8"}
        }) {
      button(page, side[0]).click();
      assertThat(head).hasAttribute("data-turn", side[1]);
      head.screenshot(
          new Locator.ScreenshotOptions()
              .setPath(
                  Path.of("target", "screens", "turned-" + side[1].replace(' ', '-') + ".png")));
    }
    openCard(page, 0);
    assertThat(head).hasAttribute("data-planes", "2");
    head.screenshot(
        new Locator.ScreenshotOptions().setPath(Path.of("target", "screens", "turned-plane.png")));
    head.scrollIntoViewIfNeeded();
    BoundingBox box = head.boundingBox();
    page.mouse().click(box.x + box.width / 2, box.y + box.height * 0.3);
    checkAccess(page, "#turning");
  }

  private static final double FAR_MM = 560;
  private static final double FIELD_OF_VIEW_DEG = 26;

  /**
   * Where a point of the head lies on the canvas, as a share of its half height from its middle,
   * right and up, seen level from straight behind: by the pinhole rule, from 560 mm before a point
   * 5 mm in front of and 25 mm above the head's middle, which is where the page says it looks from.
   */
  private static double[] seenFromBehind(JsonArray at) {
    double x = at.get(0).getAsDouble();
    double y = at.get(1).getAsDouble() - 5;
    double z = at.get(2).getAsDouble() - 25;
    double rise = Math.toRadians(8);
    double away = FAR_MM + y * Math.cos(rise) - z * Math.sin(rise);
    double up = y * Math.sin(rise) + z * Math.cos(rise);
    double half = Math.tan(Math.toRadians(FIELD_OF_VIEW_DEG / 2));
    return new double[] {x / away / half, up / away / half};
  }

  @Test
  void aPressOnTheTurningHeadPinsTheFoilThatTheListNames() {
    Page page = open();
    button(page, "A head to turn").click();
    Locator head = page.locator("#turn-canvas");
    assertThat(page.locator("#turn-figure"))
        .hasAttribute("data-shown", Pattern.compile("dark-rim"));
    button(page, "Turn to the back").click();
    assertThat(head).hasAttribute("data-turn", "180 8");
    JsonArray foils =
        JsonParser.parseString(
                page.evaluate(
                        "fetch('/head.json?' + document.getElementById('now').dataset.query)"
                            + ".then(answer => answer.text())")
                    .toString())
            .getAsJsonObject()
            .getAsJsonArray("foils");
    for (String number : List.of("1", "3", "5")) {
      JsonObject foil =
          foils.asList().stream()
              .map(JsonElement::getAsJsonObject)
              .filter(f -> f.get("number").getAsString().equals(number))
              .findFirst()
              .orElseThrow();
      double[] place = seenFromBehind(foil.getAsJsonArray("centre"));
      head.scrollIntoViewIfNeeded();
      BoundingBox box = head.boundingBox();
      page.mouse()
          .click(
              box.x + box.width / 2 + place[0] * box.height / 2,
              box.y + box.height / 2 - place[1] * box.height / 2);
      assertThat(page.locator("tr[data-number='" + number + "'] button"))
          .hasAttribute("aria-pressed", "true");
      assertThat(page.locator("button.pin[aria-pressed='true']")).hasCount(1);
      int hue = Integer.parseInt(foil.get("colour").getAsString().substring(1), 16);
      assertThat(page.locator("#back-foil-" + number + " > path").first())
          .hasAttribute(
              "fill", "rgb(" + (hue >> 16) + "," + (hue >> 8 & 255) + "," + (hue & 255) + ")");
    }
  }
}
