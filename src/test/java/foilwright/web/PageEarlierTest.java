package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Earlier states are looked at and brought back, and a damaged file is cured. */
class PageEarlierTest extends PageTrial {
  private static Locator link(Page page, String name) {
    return page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  private static void setSlice(Page page, String value) {
    field(page, "back left", "Slice, mm").fill(value);
    field(page, "back left", "Slice, mm").press("Enter");
    assertThat(page.locator("#card-0 .sentence").first()).containsText("of " + value + " mm");
  }

  private Path own() {
    return folder.resolve("patterns/dark-rim-own.json");
  }

  @Test
  void anEarlierStateIsLookedAtAndBroughtBack() throws IOException {
    Page page = open();
    openCard(page, 0);
    setSlice(page, "9");
    setSlice(page, "8");
    link(page, "earlier states").click();
    assertThat(page.getByRole(AriaRole.ROW)).hasCount(3);
    assertThat(page.getByRole(AriaRole.ROW).nth(1)).containsText("slice 9 mm \u2192 8 mm");
    link(page, "Look at it (state 1)").click();
    assertThat(page.locator("main")).containsText("slices of 9 mm");
    assertThat(page.locator("svg").first()).isVisible();
    assertTrue(Files.readString(own()).contains("8 mm"));
    checkAccess(page);
    shoot(page, "earlier");
    button(page, "Bring it back (state 1)").click();
    assertThat(page.getByRole(AriaRole.ROW)).hasCount(4);
    assertThat(page.getByRole(AriaRole.ROW).nth(1)).containsText("slice 8 mm \u2192 9 mm");
    link(page, "Back to the pattern").click();
    openCard(page, 0);
    assertThat(field(page, "back left", "Slice, mm")).hasValue("9");
  }

  @Test
  void aDamagedFileIsToldAndTheLastWholeStateBroughtBack() throws IOException {
    Page page = open();
    openCard(page, 0);
    setSlice(page, "9");
    String whole = Files.readString(own());
    setSlice(page, "8");
    String damaged = Files.readString(own()).replace("\"8 mm\"", "\"eight mm\"");
    Files.writeString(own(), damaged);
    page.reload();
    Locator told = page.getByRole(AriaRole.ALERT);
    assertThat(told).containsText("cannot be read");
    assertThat(told).containsText("eight mm");
    assertThat(told).containsText("Line ");
    told.getByRole(AriaRole.BUTTON).click();
    link(page, "Back to the pattern").click();
    openCard(page, 0);
    assertThat(field(page, "back left", "Slice, mm")).hasValue("9");
    assertEquals(whole, Files.readString(own()));
    // What follows a change may have been asked for while the file was damaged.
    complaints.removeIf(complaint -> complaint.matches(".*/(look\\?|later:).*"));
    try (Stream<Path> kept = Files.list(folder.resolve("patterns/.kept/dark-rim-own.json"))) {
      List<String> texts = kept.map(PageEarlierTest::read).toList();
      assertTrue(texts.contains(damaged), "what was damaged is kept too");
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
