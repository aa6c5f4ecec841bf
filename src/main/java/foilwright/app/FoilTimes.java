package foilwright.app;

import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a list of times by the watch, one for each foil in working order: commas or line ends
 * between them. The unit may be written once for all, in a line of its own, or behind one of the
 * numbers.
 */
public final class FoilTimes {
  private static final Pattern ENTRY =
      Pattern.compile("((?:[+-]?(?:\\d+\\.?\\d*|\\.\\d+))?)\\s*(\\p{L}*)");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("(\\d+),(\\d+)(\\s*\\p{L}+)?");
  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private FoilTimes() {}

  /** A number or a unit or both, as written. */
  private record Entry(String text, String number, String unit) {}

  /**
   * The times.
   *
   * @throws IllegalArgumentException when there is none, or one that cannot be read
   */
  public static List<Minutes> parse(String text) {
    List<Entry> entries = entries(text.replace(BYTE_ORDER_MARK, ""));
    Set<String> units = new LinkedHashSet<>();
    for (Entry entry : entries) {
      if (!entry.unit().isEmpty()) {
        units.add(entry.unit());
      }
    }
    List<Minutes> times = new ArrayList<>();
    for (Entry entry : entries) {
      if (entry.number().isEmpty()) {
        Minutes.parse("1 " + entry.unit());
      } else if (!entry.unit().isEmpty()) {
        times.add(Minutes.parse(entry.text()));
      } else if (units.size() == 1) {
        times.add(Minutes.parse(entry.text() + " " + units.iterator().next()));
      } else {
        throw new IllegalArgumentException(
            units.isEmpty()
                ? "\"" + entry.text() + "\" has no unit; write min or s once, such as 1.1, 1.3 min"
                : "\""
                    + entry.text()
                    + "\" has no unit, and others have several; write each one's");
      }
    }
    if (times.isEmpty()) {
      throw new IllegalArgumentException("there is no time; write one for each foil");
    }
    return times;
  }

  private static List<Entry> entries(String text) {
    List<Entry> entries = new ArrayList<>();
    for (String part : text.split("[\\r\\n]+|,\\s+|,$", -1)) {
      Matcher comma = DECIMAL_COMMA.matcher(part.strip());
      if (comma.matches()) {
        throw new IllegalArgumentException(
            "\""
                + part.strip()
                + "\" may be one time or two; write "
                + comma.group(1)
                + "."
                + comma.group(2)
                + ", or a blank behind the comma");
      }
      for (String one : part.split(",", -1)) {
        String stripped = one.strip();
        Matcher entry = ENTRY.matcher(stripped);
        if (!entry.matches()) {
          throw new IllegalArgumentException(
              "\"" + shortened(stripped) + "\" is not a time; write a number and min or s");
        }
        if (!stripped.isEmpty()) {
          entries.add(new Entry(stripped, entry.group(1), entry.group(2)));
        }
      }
    }
    return entries;
  }

  private static String shortened(String text) {
    return text.length() <= 40 ? text : text.substring(0, 37) + "...";
  }
}
