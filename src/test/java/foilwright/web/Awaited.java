package foilwright.web;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.time.Duration;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Waits until an assertion can hold before it is made.
 *
 * <p>Playwright tells with every try of an assertion that fails what the page would say to a screen
 * reader. On a page with thousands of elements that takes a second of the processor each time,
 * while the page is wanted to go on. So the state is asked for first, which costs nearly nothing;
 * whether the assertion holds is still Playwright's to say.
 */
final class Awaited implements InvocationHandler {
  private static final int FIRST_MS = 20;
  private static final int MOST_MS = 200;
  private static final Duration PATIENCE = Duration.ofSeconds(30);

  /** What the first of the elements is like. */
  private static final String STATE =
      """
      (elements, name) => {
        const e = elements[0];
        return {
          count: elements.length,
          seen: elements.some((e) => e.checkVisibility({ visibilityProperty: true })
            && e.getBoundingClientRect().width > 0),
          text: e ? e.textContent : '',
          value: e && 'value' in e ? String(e.value) : null,
          attribute: e && name ? e.getAttribute(name) : null,
          focused: !!e && e === document.activeElement,
          enabled: !!e && !e.disabled,
        };
      }
      """;

  private final Locator locator;
  private final LocatorAssertions assertions;
  private final boolean wanted;

  private Awaited(Locator locator, LocatorAssertions assertions, boolean wanted) {
    this.locator = locator;
    this.assertions = assertions;
    this.wanted = wanted;
  }

  static LocatorAssertions that(Locator locator) {
    return proxy(new Awaited(locator, PlaywrightAssertions.assertThat(locator), true));
  }

  private static LocatorAssertions proxy(Awaited awaited) {
    return (LocatorAssertions)
        Proxy.newProxyInstance(
            Awaited.class.getClassLoader(), new Class<?>[] {LocatorAssertions.class}, awaited);
  }

  @Override
  public Object invoke(Object self, Method assertion, Object[] values) throws Throwable {
    try {
      if (assertion.getName().equals("not")) {
        return proxy(new Awaited(locator, assertions.not(), !wanted));
      }
      long until = System.nanoTime() + PATIENCE.toNanos();
      int pause = FIRST_MS;
      while (!mayHold(assertion.getName(), values) && System.nanoTime() < until) {
        locator.page().waitForTimeout(pause);
        pause = Math.min(MOST_MS, 2 * pause);
      }
      return assertion.invoke(assertions, values);
    } catch (InvocationTargetException e) {
      throw e.getCause();
    }
  }

  private boolean mayHold(String assertion, Object[] values) {
    Object first = values == null || values.length == 0 ? null : values[0];
    Map<?, ?> state;
    try {
      Object name = assertion.equals("hasClass") ? "class" : first instanceof String ? first : null;
      state = (Map<?, ?>) locator.evaluateAll(STATE, name);
    } catch (PlaywrightException e) {
      // Another page is on its way.
      return false;
    }
    int count = ((Number) state.get("count")).intValue();
    return switch (assertion) {
      case "isVisible" -> wanted == (boolean) state.get("seen");
      case "isHidden" -> wanted != (boolean) state.get("seen");
      case "isAttached" -> wanted == count > 0;
      case "hasCount" -> wanted == (count == (int) first);
      case "containsText" -> count > 0 && wanted == says(state.get("text"), first, false);
      case "hasText" -> count > 0 && wanted == says(state.get("text"), first, true);
      case "isEmpty" -> count > 0 && wanted == says(state.get("text"), "", true);
      case "hasValue" -> count > 0 && wanted == says(state.get("value"), first, true);
      case "hasAttribute" ->
          count > 0
              && wanted
                  == says(
                      state.get("attribute"),
                      values.length > 1 ? values[1] : "",
                      values.length > 1);
      case "isFocused" -> wanted == (boolean) state.get("focused");
      case "isEnabled" -> count > 0 && wanted == (boolean) state.get("enabled");
      case "isDisabled" -> count > 0 && wanted != (boolean) state.get("enabled");
      default -> count > 0;
    };
  }

  private static boolean says(Object said, Object expected, boolean all) {
    if (said == null) {
      return false;
    }
    String words = plain(said);
    if (expected instanceof Pattern pattern) {
      return pattern.matcher(words).find() || pattern.matcher(said.toString()).find();
    }
    return all ? words.equals(plain(expected)) : words.contains(plain(expected));
  }

  private static String plain(Object words) {
    return words.toString().replaceAll("[\u200b\u00ad]", "").replaceAll("\\s+", " ").strip();
  }
}
