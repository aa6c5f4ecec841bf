package foilwright.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ReducedMotion;
import foilwright.app.Workspace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/**
 * A page to be tried in a real Chromium, by role and label. Its tests are skipped where none is
 * installed. A message of the browser's console fails them. Pictures go to {@code target/screens},
 * to be looked at.
 */
abstract class PageTrial {
  /** One for all tests of a run; each test has a context of its own in it. */
  private static Browser browser;

  /** Each test has a folder of its own; heads and plans made for one serve the next. */
  static final Workspace MADE = Workspace.in(Path.of(""));

  @TempDir Path folder;
  PageServer server;
  BrowserContext context;
  final List<String> complaints = new ArrayList<>();

  @BeforeAll
  static void launch() {
    Optional<Path> chromium =
        Stream.of("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome")
            .map(Path::of)
            .filter(Files::isExecutable)
            .findFirst();
    assumeTrue(chromium.isPresent(), "no Chromium is installed, so the page is not looked at");
    // A busy machine draws a head to turn by software in many seconds.
    PlaywrightAssertions.setDefaultAssertionTimeout(30_000);
    if (browser != null) {
      return;
    }
    Playwright playwright =
        Playwright.create(
            new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    browser =
        playwright
            .chromium()
            .launch(new BrowserType.LaunchOptions().setExecutablePath(chromium.get()));
    Runtime.getRuntime().addShutdownHook(new Thread(playwright::close, "close the browser"));
  }

  @BeforeEach
  void start() {
    server = PageServer.start(MADE.elsewhere(folder), () -> LocalDate.of(2026, 12, 1), 0, hairs());
  }

  /** How many hairs a look follows: few, where it is not the look that is tried. */
  int hairs() {
    return 1_000;
  }

  /** Whether hair is followed at all: not, where no look is tried, for it takes most of a page. */
  boolean looks() {
    return false;
  }

  @AfterEach
  void stop() {
    if (context != null) {
      context.close();
    }
    server.stop();
    assertEquals(List.of(), complaints);
  }

  final Page open(int width, int height, ColorScheme scheme) {
    return open(width, height, scheme, "");
  }

  private Page open(int width, int height, ColorScheme scheme, String query) {
    context =
        browser.newContext(
            new Browser.NewContextOptions()
                .setViewportSize(width, height)
                .setColorScheme(scheme)
                .setReducedMotion(ReducedMotion.REDUCE)
                .setAcceptDownloads(true));
    if (!looks()) {
      context.route(
          Pattern.compile(".*/look\\?.*"),
          route -> route.fulfill(new Route.FulfillOptions().setStatus(204)));
    }
    return tab(query);
  }

  final Page open() {
    return open(1400, 1000, ColorScheme.LIGHT);
  }

  final Page tab(String query) {
    Page page = context.newPage();
    page.onConsoleMessage(
        message -> {
          // The browser says so of every answer that refuses what a person typed.
          boolean refusal = message.text().matches(".*status of (409|422).*");
          if (message.type().equals("error") && !refusal) {
            complaints.add(message.text() + " at " + message.location());
          }
        });
    page.onPageError(complaints::add);
    page.navigate(server.address() + query);
    return page;
  }

  static LocatorAssertions assertThat(Locator locator) {
    return Awaited.that(locator);
  }

  static Locator button(Page page, String name) {
    return page.getByRole(
        AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
  }

  static Locator field(Page page, String section, String label) {
    return page.getByRole(AriaRole.FORM, new Page.GetByRoleOptions().setName(section))
        .getByLabel(label, new Locator.GetByLabelOptions().setExact(true));
  }

  static void openCard(Page page, int index) {
    page.locator("#card-" + index + " > details > summary").click();
  }

  static Locator said(Page page) {
    return page.getByRole(AriaRole.STATUS);
  }

  static void shoot(Page page, String name) throws IOException {
    Path screens = Path.of("target", "screens");
    Files.createDirectories(screens);
    page.screenshot(
        new Page.ScreenshotOptions().setPath(screens.resolve(name + ".png")).setFullPage(true));
  }

  /**
   * Opens a page wide in light, makes it as narrow as a zoom to 200 % leaves it, and opens it
   * narrow in dark. It must fit each width, and have no barrier in the widest and the narrowest.
   *
   * @param query of the page
   * @param ready brings it to where it is looked at
   * @param parts that are looked at for barriers; the whole page where none is named
   */
  final void inEachDress(String name, String query, Consumer<Page> ready, String... parts)
      throws IOException {
    inEachDress(name, query, ready, page -> {}, parts);
  }

  /**
   * The same.
   *
   * @param look what else must be so at each width
   */
  final void inEachDress(
      String name, String query, Consumer<Page> ready, Consumer<Page> look, String... parts)
      throws IOException {
    for (Dress dress : List.of(Dress.WIDE, Dress.NARROW)) {
      Page page = open(dress.width, 900, dress.scheme, query);
      ready.accept(page);
      fits(page, name, dress, look);
      checkAccess(page, parts);
      if (dress == Dress.WIDE) {
        page.setViewportSize(Dress.ZOOMED.width, 900);
        fits(page, name, Dress.ZOOMED, look);
      }
      context.close();
    }
    context = null;
  }

  private static void fits(Page page, String name, Dress dress, Consumer<Page> look)
      throws IOException {
    look.accept(page);
    int over =
        (Integer)
            page.evaluate(
                "document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assertTrue(over <= 0, name + " is " + over + " px wider than " + dress.width);
    shoot(page, name + "-" + dress.width);
  }

  private enum Dress {
    WIDE(1280, ColorScheme.LIGHT),
    ZOOMED(640, ColorScheme.LIGHT),
    NARROW(360, ColorScheme.DARK);

    private final int width;
    private final ColorScheme scheme;

    Dress(int width, ColorScheme scheme) {
      this.width = width;
      this.scheme = scheme;
    }
  }

  /** Looks at parts of a page for barriers, or at the whole page where none is named. */
  static void checkAccess(Page page, String... parts) {
    AxeRunOptions options = new AxeRunOptions();
    // Reports of what is in order take long to make, and nobody reads them.
    options.setResultTypes(List.of("violations"));
    AxeBuilder axe =
        new AxeBuilder(page)
            .options(options)
            // The page has no frames, so that one run in it finds the same as one run in parts.
            .setLegacyMode(true)
            .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"));
    for (String part : parts) {
      axe = axe.include(part);
    }
    assertEquals(List.of(), axe.analyze().getViolations().stream().map(PageTrial::words).toList());
  }

  private static String words(Rule rule) {
    return rule.getId() + " at " + rule.getNodes().get(0).getHtml();
  }
}
