package foilwright.cli;

import foilwright.app.Limits;
import foilwright.app.PlanRequest;
import foilwright.app.WayOut;
import foilwright.app.Working;
import foilwright.hair.Level;
import foilwright.service.schedule.OrderSearch.Aim;
import foilwright.units.Minutes;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** The options that say what is planned, for every command that plans. */
final class PlanOptions {
  /** What a search for a better order may look for, by the word on the command line. */
  private static final Map<String, Aim> AIMS = aims();

  private PlanOptions() {}

  private static Map<String, Aim> aims() {
    Map<String, Aim> aims = new LinkedHashMap<>();
    aims.put("clock", Aim.LARGEST_EXCESS);
    aims.put("walks", Aim.WALKS);
    aims.put("hairline", Aim.HAIRLINE_EARLY);
    return Collections.unmodifiableMap(aims);
  }

  private static List<Aim> aims(String text) {
    List<Aim> aims = new ArrayList<>();
    for (String word : text.split(",", -1)) {
      Aim aim = AIMS.get(word.strip());
      if (aim == null) {
        throw new UsageException(
            "--order: \"" + word + "\" is not one of " + String.join(", ", AIMS.keySet()));
      }
      if (!aims.contains(aim)) {
        aims.add(aim);
      }
    }
    return aims;
  }

  /** What is planned, and what is written of it. */
  static void add(CommandSpec spec) {
    addPlan(spec);
    spec.addOption(
        Options.text("--ics", "FILE", "Write the visit as a calendar file too; needs --at."));
    spec.addOption(Options.out());
    spec.addOption(Options.flag("--png", "Draw the sheet as a picture (PNG) too."));
    spec.addOption(Options.inches());
    spec.addOption(Options.flag("--json", "Print the whole plan as JSON."));
    spec.addOption(Options.flag("--csv", "Print a table with a row for each foil."));
  }

  /** What is planned: pattern, guest, house, and how the foils are worked. */
  static void addPlan(CommandSpec spec) {
    spec.addPositional(
        PositionalParamSpec.builder()
            .index("0")
            .required(true)
            .paramLabel("PATTERN")
            .type(String.class)
            .description("A pattern: its name as in 'foilwright patterns', or its file.")
            .build());
    spec.addOption(
        Options.text("--guest", "GUEST", "Whose head and hair: a guest's number, or a file."));
    spec.addOption(Options.text("--house", "HOUSE", "Paces, products and foils: a name or file."));
    spec.addOption(Options.text("--pace", "NAME", "One of the house's paces; else its first."));
    spec.addOption(Options.part());
    spec.addOption(
        Options.text(
            "--level", "1-10", "The level the foils are to reach; else the guest's wish."));
    spec.addOption(
        Options.text("--on", "DATE", "Day of the visit, such as 2026-12-01; else today."));
    spec.addOption(
        Options.text(
            "--out-by",
            "WAY",
            "How foils come out: " + words(WayOut.values(), WayOut::word) + "; else best."));
    spec.addOption(Options.text("--hands", "N", "Pairs of hands that work; else 1."));
    spec.addOption(
        Options.text(
            "--order",
            "AIMS",
            "Look for a better working order; any of "
                + String.join(", ", AIMS.keySet())
                + ", joined by commas, the most important first; else the pattern's own."));
    spec.addOption(
        Options.text(
            "--within",
            "TIME",
            "Give up foils until the last is out this long after the first parting, such as"
                + " 90min, on nine days in ten."));
    spec.addOption(Options.text("--at-most", "N", "Give up foils until no more than N are left."));
    spec.addOption(
        Options.text("--at", "TIME", "Hour of the visit, such as 09:30, for clock times."));
  }

  static PlanRequest request(ParseResult options, Terminal terminal) {
    if (options.hasMatchedOption("--json") && options.hasMatchedOption("--csv")) {
      throw new UsageException("Choose one of --json and --csv.");
    }
    return new PlanRequest(
        options.matchedPositionalValue(0, ""),
        Options.find(options, "--guest"),
        Options.find(options, "--house"),
        Options.find(options, "--pace"),
        Options.findPart(options),
        Options.find(options, "--level").map(PlanOptions::level),
        Optional.of(day(options, terminal)),
        working(options),
        limits(options),
        true);
  }

  private static Level level(String text) {
    try {
      return new Level(Integer.parseInt(text));
    } catch (IllegalArgumentException e) {
      throw new UsageException(
          "--level: \"" + text + "\" is not a level; write a whole number from 1 to 10");
    }
  }

  /** The day of the visit: as asked, else today. */
  static LocalDate day(ParseResult options, Terminal terminal) {
    return Options.find(options, "--on")
        .map(
            text -> {
              try {
                return LocalDate.parse(text);
              } catch (DateTimeParseException e) {
                throw new UsageException(
                    "--on: \""
                        + text
                        + "\" is not a date; write year-month-day, such as"
                        + " 2026-12-01");
              }
            })
        .orElse(terminal.today());
  }

  /** The hour of the visit, if it was told. */
  static Optional<LocalTime> hour(ParseResult options) {
    return Options.find(options, "--at")
        .map(
            text -> {
              try {
                return LocalTime.parse(text);
              } catch (DateTimeParseException e) {
                throw new UsageException(
                    "--at: \""
                        + text
                        + "\" is not a time of day; write hours and minutes, such as"
                        + " 09:30");
              }
            });
  }

  private static Working working(ParseResult options) {
    WayOut way =
        Options.find(options, "--out-by")
            .map(word -> choice("--out-by", word, WayOut.values(), WayOut::word))
            .orElse(WayOut.BEST);
    int hands =
        Options.find(options, "--hands")
            .map(text -> count("--hands", text, Working.MOST_HANDS))
            .orElse(1);
    return new Working(
        way, hands, Options.find(options, "--order").map(PlanOptions::aims).orElse(List.of()));
  }

  private static Limits limits(ParseResult options) {
    Optional<Minutes> within =
        Options.find(options, "--within")
            .map(
                text -> {
                  try {
                    Minutes time = Minutes.parse(text);
                    if (time.compareTo(Minutes.ZERO) > 0) {
                      return time;
                    }
                  } catch (IllegalArgumentException e) {
                    throw new UsageException("--within: " + e.getMessage());
                  }
                  throw new UsageException("--within: " + text + " must be more than 0 min");
                });
    return new Limits(
        within, Options.find(options, "--at-most").map(text -> count("--at-most", text, 10_000)));
  }

  private static int count(String option, String text, int most) {
    try {
      int count = Integer.parseInt(text);
      if (count >= 1 && count <= most) {
        return count;
      }
    } catch (NumberFormatException e) {
      // told below
    }
    throw new UsageException(option + ": \"" + text + "\" is not a whole number from 1 to " + most);
  }

  private static <T> T choice(String option, String word, T[] all, Function<T, String> words) {
    return Arrays.stream(all)
        .filter(one -> words.apply(one).equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new UsageException(
                    option + ": \"" + word + "\" is not one of " + words(all, words)));
  }

  private static <T> String words(T[] all, Function<T, String> words) {
    return Arrays.stream(all).map(words).collect(Collectors.joining(", "));
  }
}
