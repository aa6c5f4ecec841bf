package foilwright.web;

import foilwright.app.Drawings;
import foilwright.app.DrawnSheet;
import foilwright.app.Plan;
import foilwright.app.SheetFile;
import foilwright.app.SheetFormat;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.stream.IntStream;

/**
 * Draws sheets to be looked at, and keeps the last ones so that what is taken or printed is what
 * was looked at.
 */
public final class SheetDesk {
  private static final int KEPT = 12;

  private final SecureRandom random = new SecureRandom();

  private final Map<String, DrawnSheet> drawn =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, DrawnSheet> eldest) {
          return size() > KEPT;
        }
      };

  /**
   * A sheet that was drawn.
   *
   * @param ticket by which its files are found
   */
  public record Shown(SheetAsk wanted, String ticket, List<PageShown> pages) {}

  /**
   * One page of it.
   *
   * @param shape its paper and which way it lies, as the style sheet calls them
   */
  public record PageShown(int number, String description, String shape) {}

  Shown draw(Plan plan, SheetAsk wanted, LocalDate today) {
    DrawnSheet sheet = Drawings.sheets(plan, wanted.request(today)).get(0);
    byte[] bytes = new byte[12];
    random.nextBytes(bytes);
    String ticket = HexFormat.of().formatHex(bytes);
    synchronized (drawn) {
      drawn.put(ticket, sheet);
    }
    return new Shown(
        wanted,
        ticket,
        IntStream.rangeClosed(1, sheet.pages())
            .mapToObj(
                page ->
                    new PageShown(
                        page,
                        sheet.description(page),
                        wanted.paper().words() + (sheet.isWide(page) ? "-wide" : "-high")))
            .toList());
  }

  /**
   * A file of a sheet that was drawn.
   *
   * @param page from 1; a PDF holds all pages whatever page is named
   * @throws NoSuchElementException when it is not kept any more, or has no such page
   */
  SheetFile file(String ticket, int page, SheetFormat format) {
    DrawnSheet sheet;
    synchronized (drawn) {
      sheet = drawn.get(ticket);
    }
    if (sheet == null) {
      throw new NoSuchElementException(
          "This sheet is not kept any more. Go back to the sheets and look at it again.");
    }
    if (page < 1 || page > sheet.pages()) {
      throw new NoSuchElementException("This sheet has no page " + page + ".");
    }
    return format == SheetFormat.PDF ? sheet.files(format).get(0) : sheet.file(page, format);
  }
}
